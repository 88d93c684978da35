import { kinds } from '../../casefile/kinds/kinds.ts';
import { keywords } from '../../expression/scan.ts';
import { signalOf } from '../../signals/lookup.ts';
import type { Span } from '../../text/span.ts';
import type { Standing } from '../standing.ts';
import type { CodeFix } from '../types.ts';
import { lineBreakIn, lineEndAt, rewrite } from './rewrite.ts';

/** Gives a cell the name that expressions call it by, offered at its first line. */
export function addAs(standing: Standing, span: Span): readonly CodeFix[] {
  const { cell, text, index } = standing;
  if (cell === undefined || cell.node.flow || !('as' in kinds[cell.kind].keys)) return [];
  if (cell.node.entries.some((each) => each.key.text === 'as')) return [];
  const [first] = cell.node.entries;
  if (first === undefined || span.start > lineEndAt(text, first.value.span.end)) return [];
  const name = nameFor(standing, cell.title.text);
  const lineBreak = lineBreakIn(text, standing.typed.slice(text.length));
  const at = lineEndAt(text, Math.max(first.key.span.end, first.value.span.end));
  const edit = { span: { start: at, end: at }, newText: `${lineBreak}as: ${name}` };
  return [rewrite(`Name the cell: \`as: ${name}\``, index, [edit])];
}

/** The title's first telling word, made free with a number where it is taken. */
function nameFor({ names }: Standing, title: string): string {
  const words = title.toLowerCase().match(/\p{L}[\p{L}\p{M}\p{N}]*/gu) ?? [];
  const taken = (name: string): boolean =>
    keywords.has(name) ||
    ['engine', 'site', 'vehicle'].includes(name) ||
    names.prefixes.has(name) ||
    names.bare.has(name) ||
    names.ownSignals.has(name) ||
    signalOf(name) !== undefined;
  const wanted = words.find((word) => word.length > 2 && !emptyWords.has(word) && !taken(word));
  if (wanted !== undefined) return wanted;
  const base = words.find((word) => word.length > 2 && !emptyWords.has(word)) ?? 'cell';
  let count = 2;
  while (taken(`${base}_${count}`)) count++;
  return `${base}_${count}`;
}

const emptyWords: ReadonlySet<string> = new Set(
  'the and for with does did was are can what how why when where which this that its has have'.split(' '),
);

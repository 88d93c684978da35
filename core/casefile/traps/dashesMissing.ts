import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { TextEdit } from '../../text/edits.ts';
import type { Holds, Keys } from '../kinds/key.ts';
import { kindOf } from '../kinds/kinds.ts';
import { lineBreakOf } from '../stream.ts';
import type { Entry, MapNode, TextNode } from '../tree.ts';

export interface DashesMissing {
  readonly diagnostic: Diagnostic;
  readonly entry: Entry;
}

/** Statements one below the other without their dashes, which read as one text: `expect` with two comparisons. */
export function dashesMissing(tree: MapNode, text: string): readonly DashesMissing[] {
  const keys: Keys | undefined = kindOf(tree.entries[0]?.key.text ?? '')?.keys;
  if (keys === undefined || tree.flow) return [];
  return tree.entries.flatMap((entry) => {
    const { key, value } = entry;
    if (value.kind !== 'text' || value.style !== 'plain' || !isSeveralLines(text, value)) return [];
    if (!Object.hasOwn(keys, key.text) || !holdsStatements(keys[key.text]?.holds)) return [];
    const lines = linesWithin(text, value);
    if (lines.length < 2 || !lines.every(isWhole)) return [];
    const edits = [firstEdit(entry, lines, text), ...lines.slice(1).map(({ start }) => dashAt(start))];
    const title = 'Start each with a dash';
    const facts = { key: key.text, statements: lines.length };
    return [{ entry, diagnostic: diagnose('dashes-missing', value.span, facts, [{ title, edits }]) }];
  });
}

function isSeveralLines(text: string, { span }: TextNode): boolean {
  return /[\r\n]/.test(text.slice(span.start, span.end));
}

/** A list of statements, alone or with what is said beside them. */
function holdsStatements(holds: Holds | undefined): boolean {
  if (typeof holds !== 'object' || !('list' in holds)) return false;
  const { list } = holds;
  if (typeof list !== 'object') return list === 'expression';
  return 'keys' in list && list.short !== undefined && list.keys[list.short]?.holds === 'expression';
}

interface Line {
  readonly start: number;
  readonly words: string;
}

function linesWithin(text: string, { span }: TextNode): readonly Line[] {
  return [...text.slice(span.start, span.end).matchAll(/[^\s][^\r\n]*/g)].map(({ 0: line, index }) => ({
    start: span.start + index,
    words: line.trimEnd(),
  }));
}

/** A statement that needs no other line: it compares, and neither starts nor ends in the middle of something. */
function isWhole({ words }: Line): boolean {
  const compares = /[<>]|\s(?:is|in|between|within)\s/.test(words);
  const goesOn = /(?:[-+*/^<>=(,[]|(?:^|\s)(?:and|or|not|is|in|between|within|of|if|then|else))$/.test(words);
  const joins = /^(?:[-+*/^<>=),\]]|(?:and|or|is|in|between|within|of|then|else|where|from|to)\s)/.test(
    words,
  );
  return compares && !goesOn && !joins;
}

/** The first may stand beside its key: it goes to a line of its own, below which the others stand. */
function firstEdit({ key, value }: Entry, [first, second]: readonly Line[], text: string): TextEdit {
  const start = first?.start ?? value.span.start;
  const between = text.slice(key.span.end, start);
  if (/[\r\n]/.test(between)) return dashAt(start);
  const at = second?.start ?? start;
  const indent = at - 1 - Math.max(text.lastIndexOf('\n', at - 1), text.lastIndexOf('\r', at - 1));
  return {
    span: { start: key.span.end + between.trimEnd().length, end: start },
    newText: `${lineBreakOf(text)}${' '.repeat(indent)}- `,
  };
}

const dashAt = (start: number): TextEdit => ({ span: { start, end: start }, newText: '- ' });

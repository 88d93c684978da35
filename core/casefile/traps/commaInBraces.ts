import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { shortened } from '../shortened.ts';
import type { Entry, ListNode, MapNode, Node } from '../tree.ts';
import { quoteFix } from './quoted.ts';

/** Commas between brackets that split what was meant as one: a text, a number, an expression. */
export interface CommaTraps {
  readonly diagnostics: readonly Diagnostic[];
  /** What only the comma made: keys, and the pieces of a number or an expression that it split. */
  readonly made: readonly (Entry | Node)[];
}

/** `{description: island fleet, van 14}`, `{value: 13,1 inHg}`, `{expect: min(a, b) > 2}` */
export function commaInMap(map: MapNode, text: string): CommaTraps {
  const diagnostics: Diagnostic[] = [];
  const made: (Entry | Node)[] = [];
  for (let i = 1; i < map.entries.length; i++) {
    const before = map.entries[i - 1];
    if (before?.value.kind !== 'text' || before.value.style !== 'plain' || before.value.text === '') continue;
    const lost: Entry[] = [];
    for (let next = map.entries[i]; next !== undefined && isMade(next, text); next = map.entries[++i]) {
      lost.push(next);
    }
    const first = lost[0];
    const last = lost.at(-1);
    if (first === undefined || last === undefined) continue;
    made.push(...lost);
    // Half a number or half an expression would be misread; a sentence cut short is still one.
    if (isSplitNumber(before.value, first.key, text) || opens(before.value.text) > 0) made.push(before);
    const { start } = before.value.span;
    diagnostics.push(split(text, start, before.value, first.key, last.key.span.end));
  }
  return { diagnostics, made };
}

/** `[[0,4 V, 2 g/s]]`, `[min(a, b) > 2]` */
export function commaInList(list: ListNode, text: string): CommaTraps {
  const found: Diagnostic[] = [];
  const made: Node[] = [];
  for (let i = 1; i < list.items.length; i++) {
    const before = list.items[i - 1];
    const item = list.items[i];
    if (before?.kind !== 'text' || item?.kind !== 'text') continue;
    if (before.style !== 'plain' || item.style !== 'plain') continue;
    const closes =
      opens(before.text) > 0 ? list.items.slice(i).find((each) => opens(textOf(each)) < 0) : undefined;
    const number = isSplitNumber(before, item, text) && hasWideComma(list, text);
    if (closes === undefined && !number) continue;
    const last = closes ?? item;
    found.push(split(text, before.span.start, before, item, last.span.end));
    // A pair with half a number left would be a pair of something else.
    if (closes === undefined) made.push(list);
    else made.push(...list.items.slice(i - 1, list.items.indexOf(last) + 1));
    if (closes !== undefined) i = list.items.indexOf(closes);
  }
  return { diagnostics: found, made };
}

function split(text: string, start: number, before: Node, after: Node, end: number): Diagnostic {
  const span = { start, end };
  const words = text.slice(start, end);
  if (before.kind === 'text' && isSplitNumber(before, after, text)) {
    const comma = { start: before.span.end, end: after.span.start };
    const instead = shortened(`${text.slice(start, comma.start)}.${text.slice(comma.end, end)}`);
    return diagnose('comma-splits-number', span, { text: shortened(words), instead }, [
      { title: `Write \`${instead}\` with a point`, edits: [{ span: comma, newText: '.' }] },
    ]);
  }
  if (opens(textOf(before)) > 0) {
    const fix = { ...quoteFix(text, span), title: 'Put the expression in quotes' };
    return diagnose('comma-splits-expression', span, { text: shortened(words) }, [fix]);
  }
  const lost = shortened(textOf(after));
  return diagnose('comma-makes-key', span, { text: shortened(words), lost }, [quoteFix(text, span)]);
}

/** A key between braces with neither colon nor value. */
function isMade(entry: Entry, text: string): boolean {
  const { key, value } = entry;
  return (
    key.style === 'plain' &&
    value.kind === 'text' &&
    value.text === '' &&
    value.span.end === key.span.end &&
    text[key.span.end] !== ':'
  );
}

function isSplitNumber(before: Node, after: Node, text: string): boolean {
  return (
    /^[-+]?[0-9]+$/.test(textOf(before)) &&
    /^[0-9]/.test(textOf(after)) &&
    text.slice(before.span.end, after.span.start) === ','
  );
}

/** A list whose author puts a space after its commas elsewhere. */
function hasWideComma(list: ListNode, text: string): boolean {
  return /,[ \t\r\n]/.test(text.slice(list.span.start, list.span.end));
}

function opens(text: string): number {
  let depth = 0;
  for (const unit of text) depth += unit === '(' ? 1 : unit === ')' ? -1 : 0;
  return depth;
}

const textOf = (node: Node): string => (node.kind === 'text' ? node.text : '');

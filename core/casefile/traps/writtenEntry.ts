import type { Span } from '../../text/span.ts';

/** A value as a person wrote it: what stands after a key or a dash, on its line and on deeper lines below. */
export interface WrittenEntry {
  /** The key as written; empty for an item of a list. */
  readonly key: string;
  /** From the first to the last character of the value. */
  readonly value: Span;
  /** The column of the key, or of the item's content. */
  readonly column: number;
  /** Lines below that belong to the value. */
  readonly below: readonly Line[];
}

export interface Line extends Span {
  /** The column of the first character that is neither space nor tab; the line's length when it is blank. */
  readonly column: number;
}

/** The lines of a text without their breaks. */
export function linesOf(text: string): Line[] {
  const lines: Line[] = [];
  let start = 0;
  while (start <= text.length) {
    let end = start;
    while (end < text.length && text[end] !== '\n' && text[end] !== '\r') end++;
    let first = start;
    while (first < end && (text[first] === ' ' || text[first] === '\t')) first++;
    lines.push({ start, end, column: first - start });
    start = end + (text[end] === '\r' && text[end + 1] === '\n' ? 2 : 1);
  }
  return lines;
}

export const isBlank = (line: Line): boolean => line.start + line.column >= line.end;

/** The entry that a place belongs to: the nearest line above or at it that starts one. */
export function writtenEntryAt(
  text: string,
  lines: readonly Line[],
  offset: number,
): WrittenEntry | undefined {
  let at = lines.findIndex((line) => offset <= line.end);
  if (at < 0) at = lines.length - 1;
  let within = Number.POSITIVE_INFINITY;
  for (let index = at; index >= 0 && index > at - mostLines; index--) {
    const line = lines[index];
    if (line === undefined || isBlank(line)) continue;
    if (line.column >= within && index !== at) continue;
    const head = headOf(text, line);
    if (head !== undefined && head.valueStart < line.end) return entryFrom(text, lines, index, head);
    within = line.column;
  }
  return undefined;
}

const mostLines = 200;

interface Head {
  readonly key: string;
  readonly column: number;
  readonly valueStart: number;
}

/** `key: `, `- ` or `- key: ` at the start of a line. */
function headOf(text: string, line: Line): Head | undefined {
  const match =
    /^([ \t]*(?:-[ \t]+)*)(?:("[^"]*"|'[^']*'|[^\s"'[{#&*!|>%@`,?-][^:]*?|[?-][^\s:][^:]*?)[ \t]*:(?:[ \t]+|$))?/.exec(
      text.slice(line.start, line.end),
    );
  const lead = match?.[1] ?? '';
  const key = match?.[2];
  if (match === null || (key === undefined && !lead.includes('-'))) return undefined;
  return { key: key ?? '', column: lead.length, valueStart: line.start + match[0].length };
}

function entryFrom(text: string, lines: readonly Line[], index: number, head: Head): WrittenEntry {
  const below: Line[] = [];
  let end = lines[index]?.end ?? head.valueStart;
  const floor = head.key === '' ? head.column - 2 : head.column;
  for (const line of lines.slice(index + 1, index + 1 + mostLines)) {
    if (isBlank(line)) continue;
    if (line.column <= floor) break;
    below.push(line);
    end = line.end;
  }
  while (end > head.valueStart && ' \t'.includes(text[end - 1] ?? '')) end--;
  return { key: head.key, value: { start: head.valueStart, end }, column: head.column, below };
}

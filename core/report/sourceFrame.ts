import { type LineIndex, positionAt } from '../text/lines.ts';
import type { Span } from '../text/span.ts';

/** The line that a finding starts on, cut in three at its span. */
export interface SourceFrame {
  readonly line: number;
  readonly column: number;
  readonly before: string;
  readonly marked: string;
  readonly after: string;
}

/** Longer lines are shown around the span only. In UTF-16 units. */
const longest = 160;
const aside = 60;

/**
 * The line of a span of a file's text. A span over several lines is marked to the end of its first line
 * (without the line's end); an empty one marks nothing, and stands between `before` and `after`.
 */
export function sourceFrame(text: string, lines: LineIndex, span: Span): SourceFrame {
  const { line, column } = positionAt(lines, span.start);
  const start = lines.starts[line - 1] ?? 0;
  const end = endOfLine(text, start, lines.starts[line] ?? text.length);
  const from = Math.min(start + column - 1, end);
  const to = Math.max(from, Math.min(span.end, end));
  let before = text.slice(start, from);
  let marked = text.slice(from, to);
  let after = text.slice(to, end);
  if (end - start > longest) {
    if (before.length > aside) before = `…${whole(before.slice(-aside))}`;
    if (marked.length > aside) marked = `${whole(marked.slice(0, aside))}…`;
    if (after.length > aside) after = `${whole(after.slice(0, aside))}…`;
  }
  return { line, column, before, marked, after };
}

/** Half a character at either end is left out. */
function whole(text: string): string {
  return text.replace(/^[\uDC00-\uDFFF]/, '').replace(/[\uD800-\uDBFF]$/, '');
}

function endOfLine(text: string, start: number, next: number): number {
  let end = next;
  while (end > start && (text.charCodeAt(end - 1) === 10 || text.charCodeAt(end - 1) === 13)) end--;
  return end;
}

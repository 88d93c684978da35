import type { TextEdit } from '../../text/edits.ts';
import type { CodeFix } from '../types.ts';

/** A change that is offered where nothing is wrong. */
export function rewrite(
  title: string,
  cell: number,
  edits: readonly TextEdit[],
  kind: CodeFix['kind'] = 'rewrite',
): CodeFix {
  return { title, kind, edits: [{ cell, edits }], diagnostics: [], preferred: false };
}

/** The line break that a cell has; that of its file, when it stands on one line. */
export function lineBreakIn(text: string, ending: string): string {
  return /\r\n|\r|\n/.exec(text)?.[0] ?? (ending === '' ? '\n' : ending);
}

/** The end of the line that an offset stands in. */
export function lineEndAt(text: string, offset: number): number {
  let end = offset;
  while (end < text.length && text[end] !== '\n' && text[end] !== '\r') end++;
  return end;
}

/** The white space that a line starts with. */
export function indentAt(text: string, offset: number): string {
  const start = Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1;
  return /^ */.exec(text.slice(start, offset))?.[0] ?? '';
}

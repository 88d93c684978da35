import { nearest } from '../text/nearest.ts';
import { breakOff, type Cursor, lastText, nextText, peek, take } from './cursor.ts';
import { reportForeign } from './foreignMarks.ts';
import type { Mark } from './scan.ts';
import type { Expression } from './tree.ts';

export function closeBracket(cursor: Cursor, open: number, close: ')' | ']'): void {
  if (peek(cursor) === close) {
    take(cursor);
    return;
  }
  if (cursor.mark !== 'end') unexpected(cursor);
  const bracket = close === ')' ? '(' : '[';
  breakOff(cursor, 'unclosed-bracket', open, open + 1, { open: bracket, close });
}

/** Takes the mark if it is the one expected. */
export function takeIf(cursor: Cursor, mark: Mark): boolean {
  if (peek(cursor) !== mark) return false;
  if (cursor.foreign !== undefined) reportForeign(cursor, cursor.foreign);
  take(cursor);
  return true;
}

export function takeWord(cursor: Cursor, word: 'and' | 'of' | 'to' | 'then' | 'else', form: string): boolean {
  if (takeIf(cursor, word)) return true;
  missingWord(cursor, word, form);
  return false;
}

export function missingWord(cursor: Cursor, word: string, form: string): void {
  if (peek(cursor) === 'end')
    breakOff(cursor, 'missing-word', cursor.lastStart, cursor.lastEnd, { word, form });
  else breakOff(cursor, 'missing-word', cursor.at, cursor.markEnd, { word, form });
}

export function hole(cursor: Cursor): Expression {
  cursor.depth = 1;
  return { kind: 'hole', span: { start: cursor.at, end: cursor.at } };
}

/** Nothing that an operator could work on stands here. */
export function missing(cursor: Cursor): Expression {
  const before = nextText(cursor);
  const after = cursor.lastEnd > 0 ? lastText(cursor) : '';
  if (before === '') breakOff(cursor, 'missing-operand', cursor.lastStart, cursor.lastEnd, { after, before });
  else breakOff(cursor, 'missing-operand', cursor.at, cursor.markEnd, { after, before });
  return hole(cursor);
}

/** What stands here cannot follow what stands before it. */
export function unexpected(cursor: Cursor): void {
  const text = nextText(cursor);
  const span = { start: cursor.at, end: cursor.markEnd };
  // A shorter word is a slip of too many others.
  const meant = text.length < 5 ? [] : nearest(text, ['between', 'within', 'where'], 1);
  const fixes = meant.map((word) => ({ title: `Write \`${word}\``, edits: [{ span, newText: word }] }));
  breakOff(cursor, 'unexpected-text', span.start, span.end, { text, meant }, fixes);
}

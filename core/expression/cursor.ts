import { type Code, type Diagnostic, diagnose, type Facts, type Fix } from '../diagnostics/diagnostic.ts';
import { type ForeignMark, foreignMarkAt, type Mark, markAt, skipSpace, wordEnd } from './scan.ts';

/** No longer expression is read, in UTF-16 units. */
export const mostLong = 5000;
/** No tree is deeper: whoever walks it may recurse without a limit of their own. */
const mostDeep = 200;

/** A reader's place in an expression. Only one hard error is told: what follows it is guessing. */
export interface Cursor {
  readonly text: string;
  at: number;
  /** The operator or bracket at `at`, once `peek` has looked there. */
  mark: Mark;
  markEnd: number;
  peekedAt: number;
  /** Set when the mark was written as in another language. */
  foreign: ForeignMark | undefined;
  /** The token taken last. */
  lastStart: number;
  lastEnd: number;
  /** The depth of the tree that was read last. */
  depth: number;
  /** How many levels are open around `at`. */
  nest: number;
  /** A comma here ends an argument of a call; elsewhere one inside a number is a slip. */
  amongArguments: boolean;
  broken: boolean;
  tooDeep: boolean;
  diagnostics: readonly Diagnostic[];
}

const none: readonly Diagnostic[] = [];

export function cursorOn(text: string): Cursor {
  return {
    text,
    at: 0,
    mark: 'end',
    markEnd: 0,
    peekedAt: -1,
    foreign: undefined,
    lastStart: 0,
    lastEnd: 0,
    depth: 0,
    nest: 0,
    amongArguments: false,
    broken: false,
    tooDeep: false,
    diagnostics: none,
  };
}

/** What stands next, where an operator, a bracket or the end is due. */
export function peek(cursor: Cursor): Mark {
  const at = skipSpace(cursor.text, cursor.at);
  cursor.at = at;
  if (cursor.peekedAt === at) return cursor.mark;
  cursor.peekedAt = at;
  let mark = markAt(cursor.text, at);
  cursor.foreign = undefined;
  if (mark === 'other' || mark === '=') {
    const foreign = foreignMarkAt(cursor.text, at);
    if (foreign !== undefined) {
      cursor.foreign = foreign;
      cursor.markEnd = at + foreign.written.length;
      mark = native(foreign);
    } else cursor.markEnd = Math.max(wordEnd(cursor.text, at), at + 1);
  } else cursor.markEnd = mark === 'end' ? at : at + mark.length;
  cursor.mark = mark;
  return mark;
}

function native(foreign: ForeignMark): Mark {
  switch (foreign.means) {
    case 'equal':
    case 'unequal':
      return 'is';
    case 'square':
    case 'cube':
      return '^';
    default:
      return foreign.means;
  }
}

/** Takes the mark that `peek` saw. */
export function take(cursor: Cursor): void {
  took(cursor, cursor.at, cursor.markEnd);
}

export function took(cursor: Cursor, start: number, end: number): void {
  cursor.lastStart = start;
  cursor.lastEnd = end;
  cursor.at = end;
}

/** A finding that does not hide what follows. */
export function report(cursor: Cursor, diagnostic: Diagnostic): void {
  if (cursor.tooDeep) return;
  if (cursor.diagnostics === none) cursor.diagnostics = [diagnostic];
  else cursor.diagnostics = [...cursor.diagnostics, diagnostic];
}

/** A finding after which the rest is guessing: only the first is told. */
export function breakOff<C extends Code>(
  cursor: Cursor,
  code: C,
  start: number,
  end: number,
  facts: Facts[C],
  fixes: readonly Fix[] = [],
): void {
  if (cursor.broken) return;
  cursor.broken = true;
  report(cursor, diagnose(code, { start, end }, facts, fixes));
}

/** Notes the depth of the tree just built; beyond the limit reading ends. */
export function deep(cursor: Cursor, depth: number): void {
  cursor.depth = depth;
  if (depth > mostDeep) tooDeep(cursor);
}

/** Opens a level; false when there are too many and reading ends. Each one opened is closed by `leave`. */
export function enter(cursor: Cursor): boolean {
  cursor.nest++;
  if (cursor.nest <= mostDeep) return true;
  tooDeep(cursor);
  return false;
}

export function leave(cursor: Cursor): void {
  cursor.nest--;
}

function tooDeep(cursor: Cursor): void {
  if (!cursor.tooDeep) {
    const at = { start: cursor.at, end: Math.min(cursor.at + 1, cursor.text.length) };
    cursor.diagnostics = [diagnose('expression-too-deep', at, { most: mostDeep })];
  }
  cursor.broken = true;
  cursor.tooDeep = true;
  cursor.at = cursor.text.length;
  cursor.depth = 1;
}

/** The token at the cursor, for messages; at most 24 characters. */
export function nextText(cursor: Cursor): string {
  peek(cursor);
  return cursor.text.slice(cursor.at, Math.min(cursor.markEnd, cursor.at + 24));
}

export function lastText(cursor: Cursor): string {
  return cursor.text.slice(cursor.lastStart, Math.min(cursor.lastEnd, cursor.lastStart + 24));
}

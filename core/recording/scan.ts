import { utf8Pieces } from './encoding.ts';
import type { FileBytes } from './files.ts';
import { exactTens } from './numbers.ts';
import { QuotedLines } from './quotedLines.ts';
import { Rows } from './rows.ts';

/** How the lines of a file are scanned; marks are single bytes. */
export interface Plan {
  readonly delimiter: number;
  readonly decimal: number;
  /** Fields of a line. */
  readonly width: number;
  /** The first line with samples, counted from 1. */
  readonly firstLine: number;
  /** The columns that are kept, each once; the time first. */
  readonly columns: readonly number[];
  /** A time that goes back by more has passed midnight. */
  readonly turnsBack: number;
  readonly clocks: Clocks;
  /** The time is a clock's: a plain number is none. */
  readonly isClock: boolean;
  /** Fields in quotes may go over several lines. */
  readonly hasQuotes: boolean;
  /** Reads what is no plain number: NaN where there is nothing, undefined where it is refused. */
  readonly odd: (text: string, column: number) => number | undefined;
}

/**
 * Whether the file has one time for all its channels, or several, whose channels are read one time after the other:
 * a line that has nothing for this one is then as it should be.
 */
export type Clocks = 'one' | 'first of several' | 'later of several';

const lineFeed = 10;
const carriageReturn = 13;
const tab = 9;
const space = 32;
const quote = 34;
const hash = 35;
const slash = 47;
const plus = 43;
const minus = 45;
const zero = 48;
const capitalE = 69;
const smallE = 101;

/**
 * Reads the columns of a file into numbers, each to the last bit what `Number()` gives.
 * Up to 15 digits and a power of ten up to 10²² are exact in a double, so one multiplication or division rounds once
 * (Clinger, "How to read floating point numbers accurately", PLDI 1990). Everything else is read by `Number()`.
 * A row that is refused leaves no trace in the columns.
 */
export function scan(content: FileBytes, plan: Plan, most: number): Rows {
  const quoted = plan.hasQuotes ? new QuotedLines(plan.delimiter, plan.firstLine) : undefined;
  const rows = new Rows(plan, content.size, most, quoted?.joins ?? []);
  let rest = new Uint8Array(0);
  let toSkip = plan.firstLine - 1;
  const pieces = utf8Pieces(content);
  let next = pieces.next();
  for (; next.done !== true; next = pieces.next()) {
    const piece = quoted?.take(next.value, rows.line) ?? next.value;
    let from = 0;
    if (rest.length > 0) {
      // The line that the last piece broke off is put together with its end.
      const end = lineEnd(piece, 0);
      const line = joined(rest, piece.subarray(0, end));
      if (end === 0 || !isWhole(line)) {
        rest = line.length === rest.length ? joined(rest, piece) : line;
        continue;
      }
      toSkip = scanLines(line, 0, line.length, toSkip, plan, rows);
      from = end;
    }
    const end = lastLineEnd(piece);
    if (end > from) toSkip = scanLines(piece, from, end, toSkip, plan, rows);
    rest = piece.slice(Math.max(end, from));
  }
  rows.lost = next.value;
  if (quoted !== undefined) rest = joined(rest, quoted.rest());
  if (rest.length > 0) {
    const line = joined(rest, new Uint8Array([lineFeed]));
    scanLines(line, 0, line.length, toSkip, plan, rows);
  }
  return rows;
}

function joined(a: Uint8Array, b: Uint8Array): Uint8Array<ArrayBuffer> {
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}

const isWhole = (line: Uint8Array): boolean => {
  const last = line[line.length - 1];
  return last === lineFeed || last === carriageReturn;
};

/** Past the first line's end; 0 when none ends here. A carriage return at the very end may be half of an end. */
function lineEnd(piece: Uint8Array, from: number): number {
  for (let at = from; at < piece.length; at++) {
    if (piece[at] === lineFeed) return at + 1;
    if (piece[at] === carriageReturn && at + 1 < piece.length)
      return piece[at + 1] === lineFeed ? at + 2 : at + 1;
  }
  return 0;
}

/** Past the last line's end; 0 when none ends here. */
function lastLineEnd(piece: Uint8Array): number {
  const feed = piece.lastIndexOf(lineFeed);
  if (feed >= 0) return feed + 1;
  return piece.lastIndexOf(carriageReturn, -2) + 1;
}

/**
 * Scans whole lines: the last byte before `end` ends a line, so that no look at a byte needs a look at the end.
 * Up to nine digits are added up as an integer of 32 bits, which is quicker; longer numbers are gone over again.
 */
function scanLines(
  bytes: Uint8Array,
  start: number,
  end: number,
  skip: number,
  plan: Plan,
  rows: Rows,
): number {
  const { delimiter, decimal, width, turnsBack } = plan;
  const spaces = delimiter === space;
  const slots = rows.slots;
  let data = rows.data;
  let capacity = rows.capacity;
  let row = rows.count;
  let before = rows.before;
  let line = rows.line;
  let at = start;
  while (at < end) {
    line++;
    let c = bytes[at] as number;
    if (skip > 0 || c === hash || c <= carriageReturn || (c === slash && bytes[at + 1] === slash)) {
      if (skip > 0 || c === hash || c === slash || c === lineFeed || c === carriageReturn) {
        if (skip > 0) skip--;
        at = pastLine(bytes, at);
        continue;
      }
    }
    if (row === capacity) {
      rows.grow(row, at - start);
      data = rows.data;
      capacity = rows.capacity;
      row = rows.count;
    }
    const lineStart = at;
    if (spaces) while (c === space || c === tab) c = bytes[++at] as number;
    let column = 0;
    let isEmpty = false;
    let isOdd = false;
    for (;;) {
      const slot = column < width ? (slots[column] as number) : -1;
      const from = at;
      c = bytes[at] as number;
      isEmpty = c === lineFeed || c === carriageReturn;
      if (slot >= 0) {
        if (c === space && !spaces) while (c === space) c = bytes[++at] as number;
        let negative = false;
        if (c === minus) {
          negative = true;
          c = bytes[++at] as number;
        } else if (c === plus) c = bytes[++at] as number;
        const first = at;
        let sum = 0;
        while ((c - zero) >>> 0 <= 9) {
          sum = (Math.imul(sum, 10) + (c - zero)) | 0;
          c = bytes[++at] as number;
        }
        let digits = at - first;
        let scale = 0;
        if (c === decimal) {
          const point = ++at;
          c = bytes[at] as number;
          while ((c - zero) >>> 0 <= 9) {
            sum = (Math.imul(sum, 10) + (c - zero)) | 0;
            c = bytes[++at] as number;
          }
          scale = at - point;
          digits += scale;
        }
        if ((c === delimiter || c === lineFeed) && digits > 0 && digits <= 9) {
          // What most fields are: up to nine digits, nothing behind them.
          const value = scale === 0 ? sum : sum / (exactTens[scale] as number);
          data[slot * capacity + row] = negative ? -value : value;
        } else {
          const mantissa = digits <= 9 ? sum : longMantissa(bytes, first, at);
          if (digits > 0 && (c === smallE || c === capitalE)) {
            let shrinks = false;
            c = bytes[++at] as number;
            if (c === minus || c === plus) {
              shrinks = c === minus;
              c = bytes[++at] as number;
            }
            const power = at;
            let exponent = 0;
            while ((c - zero) >>> 0 <= 9) {
              if (exponent < 1000) exponent = exponent * 10 + (c - zero);
              c = bytes[++at] as number;
            }
            if (at === power) digits = 0;
            scale += shrinks ? exponent : -exponent;
          }
          if (!spaces) while (c === space) c = bytes[++at] as number;
          const ends = c === delimiter || c === lineFeed || c === carriageReturn || (spaces && c === tab);
          if (ends && digits > 0 && digits <= 15 && scale <= 22 && scale >= -22) {
            const value =
              scale > 0
                ? mantissa / (exactTens[scale] as number)
                : scale === 0
                  ? mantissa
                  : mantissa * (exactTens[-scale] as number);
            data[slot * capacity + row] = negative ? -value : value;
          } else if (ends && at === from) {
            data[slot * capacity + row] = Number.NaN;
          } else {
            isOdd = true;
            at = rows.odd(bytes, from, column, slot, row, line);
            c = bytes[at] as number;
          }
        }
      } else if (c === quote) {
        at = pastField(bytes, at, delimiter);
        c = bytes[at] as number;
      } else {
        while (c !== delimiter && c !== lineFeed && c !== carriageReturn && !(spaces && c === tab))
          c = bytes[++at] as number;
      }
      column++;
      if (c === lineFeed || c === carriageReturn) break;
      at++;
      if (spaces) {
        c = bytes[at] as number;
        while (c === space || c === tab) c = bytes[++at] as number;
        if (c === lineFeed || c === carriageReturn) break;
      }
    }
    if (isEmpty && column === width + 1) column = width;
    const now = data[row] as number;
    if (column !== width || Number.isNaN(now)) rows.refuse(column, bytes, lineStart, at, line);
    else {
      if (now < before && before - now <= turnsBack) rows.turnBack(bytes, lineStart, line);
      if (isOdd) rows.accept();
      before = now;
      row++;
    }
    if (c === carriageReturn && bytes[at + 1] === lineFeed) at++;
    at++;
  }
  rows.line = line;
  rows.count = row;
  rows.before = before;
  rows.scanned += end - start;
  return skip;
}

/** The digits between two places as one number, exact up to 15 of them; the decimal mark among them is passed over. */
function longMantissa(bytes: Uint8Array, from: number, to: number): number {
  let sum = 0;
  for (let at = from; at < to; at++) {
    const digit = (bytes[at] as number) - zero;
    if (digit >>> 0 <= 9) sum = sum * 10 + digit;
  }
  return sum;
}

function pastLine(bytes: Uint8Array, from: number): number {
  let at = from;
  let c = bytes[at] as number;
  while (c !== lineFeed && c !== carriageReturn) c = bytes[++at] as number;
  return c === carriageReturn && bytes[at + 1] === lineFeed ? at + 2 : at + 1;
}

/** Where a field ends: at its delimiter or the line's end. In quotes a delimiter is a letter; a quote ends with its line. */
export function pastField(bytes: Uint8Array, from: number, delimiter: number): number {
  let at = from;
  let quoted = false;
  for (;;) {
    const c = bytes[at] as number;
    if (c === lineFeed || c === carriageReturn) return at;
    if (c === quote) quoted = !quoted;
    else if (!quoted && (c === delimiter || (delimiter === space && c === tab))) return at;
    at++;
  }
}

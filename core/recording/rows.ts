import { ClockRows } from './clockRows.ts';
import { textOf } from './encoding.ts';
import type { WhyNoFile } from './files.ts';
import { isMissing } from './numbers.ts';
import { type Plan, pastField } from './scan.ts';

/** A line that was left out, or a field that is no number. */
export interface Refusal {
  readonly line: number;
  /** The column of a single field; undefined when the whole line was left out. */
  readonly column: number | undefined;
  readonly text: string;
  readonly why: 'no number' | 'width' | 'no time' | 'no clock';
  /** Fields of the line. */
  readonly width: number;
}

/** The first line whose time is earlier than the one before. */
export interface Back {
  readonly line: number;
  /** Its time as it is written. */
  readonly text: string;
}

/** How many refusals are kept with their words; all are counted. */
const told = 5;
const longestTold = 60;

/** The rows of a file while they are scanned: columns that grow, and what was refused. */
export class Rows {
  /** Whole rows so far, and the time of the last one. */
  count = 0;
  before = Number.NEGATIVE_INFINITY;
  /** Lines and bytes gone over. */
  line = 0;
  scanned = 0;
  readonly slots: Int32Array;
  /** The columns one behind the other, each with room for `capacity` rows; the time first. */
  data: Float64Array;
  capacity: number;
  /** Lines left out, and fields of other lines that are no number. */
  refusedLines = 0;
  refusedFields = 0;
  readonly refusals: Refusal[] = [];
  back: Back | undefined;
  /** A line was left out that has a quote in it. */
  hasOddQuote = false;
  /** More rows than may be kept; those after that are left out. */
  isFull = false;
  /** Why the host could not read to the end. */
  lost: WhyNoFile | undefined;
  /** Which rows have their time from a clock. */
  readonly clockRows: ClockRows | undefined;
  readonly #plan: Plan;
  readonly #most: number;
  readonly #bytes: number;
  /** Lines that are made of several of the file, once for each end of a line in them; ascending. */
  readonly #joins: readonly number[];
  /** Fields of this line that are no number. */
  #fieldsHere = 0;
  #toldHere = 0;

  constructor(plan: Plan, bytes: number, most: number, joins: readonly number[]) {
    this.#joins = joins;
    this.clockRows = plan.isClock ? new ClockRows(plan.firstLine) : undefined;
    this.#plan = plan;
    this.#most = most;
    this.#bytes = bytes;
    this.slots = new Int32Array(plan.width).fill(-1);
    plan.columns.forEach((column, slot) => {
      this.slots[column] = slot;
    });
    this.capacity = Math.min(most, firstRows);
    this.data = new Float64Array(plan.columns.length * this.capacity);
  }

  /**
   * Makes room for another row; `row` are there, and `more` bytes gone over beyond those that are counted.
   * The rows that a file has are foreseen from the length of those so far, so that it is copied seldom.
   */
  grow(row: number, more: number): void {
    this.count = row;
    if (row >= this.#most) {
      this.isFull = true;
      this.count--;
      return;
    }
    const perRow = Math.max(1, (this.scanned + more) / row);
    const foreseen = Math.ceil((this.#bytes / perRow) * 1.02) + 16;
    const wanted = this.capacity === firstRows ? foreseen : Math.ceil(this.capacity * 1.5);
    const before = this.columns(row);
    this.capacity = Math.min(this.#most, Math.max(wanted, this.capacity + firstRows));
    this.data = new Float64Array(before.length * this.capacity);
    before.forEach((column, slot) => {
      this.data.set(column, slot * this.capacity);
    });
  }

  /** Reads a field that is no plain number, and gives where it ends. */
  odd(bytes: Uint8Array, from: number, column: number, slot: number, row: number, line: number): number {
    const end = pastField(bytes, from, this.#plan.delimiter);
    const written = textOf(bytes, from, end).trim();
    const text =
      written.startsWith('"') && written.endsWith('"') && written.length > 1
        ? written.slice(1, -1).replaceAll('""', '"')
        : written;
    const value = this.#plan.odd(text, column);
    if (slot === 0 && value !== undefined) this.clockRows?.read(row, line);
    this.data[slot * this.capacity + row] = value ?? Number.NaN;
    if (value === undefined) {
      if (this.#fieldsHere === 0) this.#toldHere = this.refusals.length;
      this.#fieldsHere++;
      this.#tell({ line, column, text, why: 'no number', width: 0 });
    }
    return end;
  }

  /** The row is kept. */
  accept(): void {
    if (this.#fieldsHere === 0) return;
    this.refusedFields += this.#fieldsHere;
    this.#fieldsHere = 0;
  }

  /** The line is left out; one that holds nothing but delimiters is not worth a word. */
  refuse(width: number, bytes: Uint8Array, from: number, to: number, line: number): void {
    this.clockRows?.refuse(line);
    // What was said of its fields is said of the line.
    if (this.#fieldsHere > 0) this.refusals.length = this.#toldHere;
    this.#fieldsHere = 0;
    const text = textOf(bytes, from, Math.min(to, from + longestTold));
    if (!this.hasOddQuote) this.hasOddQuote = bytes.subarray(from, to).includes(quote);
    if (/^[\s,;|"]*$/.test(text) && to - from <= longestTold) return;
    if (this.#plan.clocks !== 'one' && this.#isToldOtherwise(width, bytes, from, line)) return;
    this.refusedLines++;
    const why = width === this.#plan.width ? 'no time' : 'width';
    this.#tell({ line, column: undefined, text, why, width });
  }

  /** Of several clocks: lines that have nothing for this one, and lines of another width, which the first clock tells. */
  #isToldOtherwise(width: number, bytes: Uint8Array, from: number, line: number): boolean {
    const { clocks, columns, delimiter } = this.#plan;
    if (width !== this.#plan.width) return clocks === 'later of several';
    let at = from;
    let values = 0;
    for (let column = 0; column < width; column++) {
      const end = pastField(bytes, at, delimiter);
      if (columns.includes(column) && !isMissing(textOf(bytes, at, end).replaceAll('"', ''))) values++;
      at = end + 1;
    }
    if (values === 0) return true;
    this.refusedFields += values;
    this.#tell({ line, column: columns[0], text: '', why: 'no time', width });
    return true;
  }

  /** Leaves out the rows whose time is a plain number among a clock's, and tells them. */
  leaveOutPlainTimes(): void {
    const plain = this.clockRows?.plainOf(this.count, this.line) ?? [];
    let to = plain[0]?.row ?? this.count;
    for (const [i, { row, count, line }] of plain.entries()) {
      this.refusedLines += count;
      if (line !== undefined)
        this.#tell({ line, column: this.#plan.columns[0], text: '', why: 'no clock', width: 0 });
      const from = row + count;
      const end = plain[i + 1]?.row ?? this.count;
      for (let slot = 0; slot < this.#plan.columns.length; slot++)
        this.data.copyWithin(
          slot * this.capacity + to,
          slot * this.capacity + from,
          slot * this.capacity + end,
        );
      to += end - from;
    }
    this.count = to;
    const [first] = plain;
    if (first === undefined) return;
    // What went back was mostly one of those; where the others do as well, they hid it.
    if (!this.#goesBack()) this.back = undefined;
    else this.back ??= { line: this.#lineOfFile(first.line ?? this.line), text: 'a plain number' };
  }

  #goesBack(): boolean {
    for (let row = 1; row < this.count; row++) {
      const [before, now] = [this.data[row - 1] ?? 0, this.data[row] ?? 0];
      if (now < before && before - now <= this.#plan.turnsBack) return true;
    }
    return false;
  }

  turnBack(bytes: Uint8Array, from: number, line: number): void {
    if (this.back !== undefined) return;
    const { delimiter, columns } = this.#plan;
    let at = from;
    for (let column = 0; column < (columns[0] ?? 0); column++) at = pastField(bytes, at, delimiter) + 1;
    const text = textOf(bytes, at, pastField(bytes, at, delimiter)).trim();
    this.back = { line: this.#lineOfFile(line), text: text.slice(0, longestTold) };
  }

  #tell(refusal: Refusal): void {
    if (this.refusals.length >= told) return;
    const line = this.#lineOfFile(refusal.line);
    this.refusals.push({ ...refusal, line, text: refusal.text.slice(0, longestTold) });
  }

  /** As an editor counts: a line of several lines is the first of them. */
  #lineOfFile(line: number): number {
    const after = this.#joins.findIndex((each) => each >= line);
    return line + (after < 0 ? this.#joins.length : after);
  }

  /** The columns, as long as there are rows; they share their memory unless much of it would be wasted. */
  columns(rows = this.count): readonly Float64Array[] {
    const wasted = this.capacity - rows > this.capacity / 8;
    return this.#plan.columns.map((_, slot) => {
      const from = slot * this.capacity;
      return wasted ? this.data.slice(from, from + rows) : this.data.subarray(from, from + rows);
    });
  }
}

const quote = 34;

/** Rows that there is room for from the start. */
const firstRows = 4096;

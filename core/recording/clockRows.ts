/** Rows that stand among those of a clock and have a plain number for their time: no clock shows it. */
export interface PlainTimes {
  /** The first row, and how many there are. */
  readonly row: number;
  readonly count: number;
  /** The line of the first; undefined where other lines stand between. */
  readonly line: number | undefined;
}

/** Keeps which rows have their time from a clock. A row that is refused gives its place to the next. */
export class ClockRows {
  readonly #plain: PlainTimes[] = [];
  /** The last row that was read from a clock and kept, and the one that may still be refused. */
  #last = { row: -1, line: 0 };
  #pending = { row: -1, line: 0 };

  constructor(firstLine: number) {
    this.#last = { row: -1, line: firstLine - 1 };
    this.#pending = this.#last;
  }

  read(row: number, line: number): void {
    this.#keep();
    this.#pending = { row, line };
  }

  refuse(line: number): void {
    if (line === this.#pending.line) this.#pending = this.#last;
  }

  /** What lies between the clock's rows; `count`: how many rows there are. */
  plainOf(count: number, line: number): readonly PlainTimes[] {
    this.#keep();
    this.#between(count, line + 1);
    return this.#plain;
  }

  #keep(): void {
    const { row, line } = this.#pending;
    if (row <= this.#last.row) return;
    this.#between(row, line);
    this.#last = this.#pending;
  }

  #between(row: number, line: number): void {
    const count = row - this.#last.row - 1;
    if (count <= 0) return;
    const isExact = line - this.#last.line - 1 === count;
    this.#plain.push({ row: this.#last.row + 1, count, line: isExact ? this.#last.line + 1 : undefined });
  }
}

import type { Outcome } from './outcome.ts';

/** The cells that read from a cell. */
export type Readers = (cell: number) => readonly number[];

/** Found when they are first asked for. They outlast the study that they were found in, and hold nothing of it then. */
export function readersIn(outcomes: readonly Outcome[]): Readers {
  let from: readonly Outcome[] | undefined = outcomes;
  let readers: ReadonlyMap<number, readonly number[]> = new Map();
  return (cell) => {
    if (from !== undefined) readers = collect(from);
    from = undefined;
    return readers.get(cell) ?? none;
  };
}

function collect(outcomes: readonly Outcome[]): Map<number, number[]> {
  const readers = new Map<number, number[]>();
  for (const [reader, { reads }] of outcomes.entries()) {
    for (const cell of reads) {
      const list = readers.get(cell);
      if (list === undefined) readers.set(cell, [reader]);
      else list.push(reader);
    }
  }
  return readers;
}

const none: readonly number[] = [];

/** Whether a cell still reads from the same cells. */
export function readsTheSame(a: Outcome | undefined, b: Outcome): boolean {
  return a?.reads.length === b.reads.length && b.reads.every((cell, index) => cell === a.reads[index]);
}

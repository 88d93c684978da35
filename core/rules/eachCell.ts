import type { Moment } from './moments.ts';
import type { RuledCase } from './rule.ts';

/** What was made of the moments of a cell, with what they were set against. */
export interface Kept<T> {
  readonly moments: readonly Moment[];
  readonly against: unknown;
  readonly made: T;
}

/** By the numbers of cells. */
export type KeptCells<T> = readonly (Kept<T> | undefined)[];

/**
 * Makes something of each cell that holds one of the moments. After a change it is taken over where the moments of the cell,
 * and what they are set against, are the very same. What is set against nothing lasting is made anew.
 */
export function eachCell<T>(
  on: readonly Moment[],
  { inCell }: RuledCase,
  before: KeptCells<T> | undefined,
  against: (cell: number) => unknown,
  make: (moments: readonly Moment[]) => T,
): KeptCells<T> {
  const all: (Kept<T> | undefined)[] = [];
  let last = -1;
  for (const { cell } of on) {
    if (cell === last) continue;
    last = cell;
    const moments = inCell(cell);
    const now = against(cell);
    const known = now === undefined ? undefined : before?.[cell];
    all[cell] =
      known?.moments === moments && known.against === now
        ? known
        : { moments, against: now, made: make(moments) };
  }
  return all;
}

import type { ReadCell } from '../casefile/readCase.ts';
import type { CellFacts } from '../study/cellFacts.ts';
import type { Header } from '../study/header.ts';
import type { Moment } from './moments.ts';
import type { RuledCase } from './rule.ts';

/** What rules compare across cells, with the ways to find a moment's company without walking the case. */
export function ruledCase(
  header: Header,
  moments: readonly Moment[],
  given: readonly CellFacts[],
  read: readonly ReadCell[],
): RuledCase {
  const cells = new Map<number, Moment[]>();
  for (const moment of moments) {
    const list = cells.get(moment.cell);
    if (list === undefined) cells.set(moment.cell, [moment]);
    else list.push(moment);
  }
  const company = new Map<string, Moment[]>();
  for (const moment of moments) {
    const { likeness } = moment;
    if (likeness === undefined) continue;
    const list = company.get(likeness);
    if (list === undefined) company.set(likeness, [moment]);
    else list.push(moment);
  }
  const made = new Map<unknown, unknown>();
  const ruled: RuledCase = {
    once: <T>(make: (ruled: RuledCase) => T): T => {
      if (!made.has(make)) made.set(make, make(ruled));
      return made.get(make) as T;
    },
    header,
    moments,
    given,
    read: (cell) => read[cell],
    inCell: (cell) => cells.get(cell) ?? none,
    alike: (moment, signal) => {
      const { likeness, values } = moment;
      if (likeness === undefined) return values.has(signal) ? [moment] : none;
      return (company.get(likeness) ?? none).filter((each) => each.values.has(signal));
    },
  };
  return ruled;
}

const none: readonly Moment[] = [];

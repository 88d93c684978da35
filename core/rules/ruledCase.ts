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
  const alike = new Map<string, Map<string, Moment[]>>();
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
      const key = moment.likeness;
      if (key === undefined) return moment.values.has(signal) ? [moment] : none;
      let lists = alike.get(signal);
      if (lists === undefined) {
        lists = new Map();
        for (const each of moments) {
          const its = each.values.has(signal) ? each.likeness : undefined;
          if (its === undefined) continue;
          const list = lists.get(its);
          if (list === undefined) lists.set(its, [each]);
          else list.push(each);
        }
        alike.set(signal, lists);
      }
      return lists.get(key) ?? none;
    },
  };
  return ruled;
}

const none: readonly Moment[] = [];

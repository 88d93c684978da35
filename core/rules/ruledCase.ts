import type { ReadCell } from '../casefile/readCase.ts';
import type { CellFacts } from '../study/cellFacts.ts';
import type { Header } from '../study/header.ts';
import { isSameList, keeping } from './kept.ts';
import type { Moment, Taken } from './moments.ts';
import type { RuledCase } from './rule.ts';

/** Lists that were made of a case, by their names. */
export type Lists = ReadonlyMap<string, readonly unknown[]>;

/** What rules compare across cells, with the ways to find a moment's company without walking the case. */
export function ruledCase(
  header: Header,
  taken: readonly Taken[],
  moments: readonly Moment[],
  given: readonly CellFacts[],
  read: readonly ReadCell[],
  before: Lists | undefined,
): { readonly ruled: RuledCase; readonly lists: Lists } {
  const made = new Map<unknown, unknown>();
  const lists = new Map<string, readonly unknown[]>();
  const holding = new Map<string, readonly Moment[]>();
  const ruled: RuledCase = {
    once: <T>(make: (ruled: RuledCase) => T): T => {
      if (!made.has(make)) made.set(make, make(ruled));
      return made.get(make) as T;
    },
    lasting: (name, list) => {
      const old = before?.get(name);
      const kept = old !== undefined && isSameList(old, list) ? old : list;
      lists.set(name, kept);
      return kept;
    },
    header,
    moments,
    given,
    read: (cell) => read[cell],
    inCell: (cell) => taken[cell]?.moments ?? none,
    holding: (signal) => {
      let all = holding.get(signal);
      if (all === undefined) {
        all = ruled.lasting(
          signal,
          moments.filter(({ values }) => values.has(signal)),
        );
        holding.set(signal, all);
      }
      return all;
    },
    alike: (moment, signal) => {
      const { likeness, values } = moment;
      if (likeness === undefined) return values.has(signal) ? [moment] : none;
      const holders = ruled.holding(signal);
      return keptByLikeness(holders, [], () => byLikeness(holders)).get(likeness) ?? none;
    },
  };
  return { ruled, lists };
}

const keptByLikeness = keeping<readonly Moment[], ReadonlyMap<string, readonly Moment[]>>();

function byLikeness(moments: readonly Moment[]): ReadonlyMap<string, readonly Moment[]> {
  const groups = new Map<string, Moment[]>();
  for (const moment of moments) {
    const { likeness } = moment;
    if (likeness === undefined) continue;
    const group = groups.get(likeness);
    if (group === undefined) groups.set(likeness, [moment]);
    else group.push(moment);
  }
  return groups;
}

const none: readonly Moment[] = [];

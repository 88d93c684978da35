import type { ReadCell } from '../casefile/readCase.ts';
import type { CellFacts } from '../study/cellFacts.ts';
import type { Reading } from '../study/types.ts';
import type { Car } from './car.ts';
import type { Moment, Taken } from './moments.ts';
import type { RuledCase } from './rule.ts';
import type { RuledSignal } from './values.ts';

/** What was worked out of a case: by the function that did it, and the moments that hold a signal. */
export interface Made {
  readonly by: ReadonlyMap<unknown, unknown>;
  readonly holding: ReadonlyMap<RuledSignal, readonly Moment[]>;
  readonly moments: readonly Moment[];
}

/** What rules compare across cells, with the ways to find a moment's company without walking the case. */
export function ruledCase(
  car: Car,
  taken: readonly Taken[],
  moments: readonly Moment[],
  given: readonly CellFacts[],
  repairs: readonly boolean[],
  read: readonly ReadCell[],
  before: Made | undefined,
): { readonly ruled: RuledCase; readonly made: Made } {
  const by = new Map<unknown, unknown>();
  const holding = new Map<RuledSignal, readonly Moment[]>();
  const changed = before === undefined ? undefined : changedIn(before.moments, moments);
  const heldBefore = (signal: RuledSignal): readonly Moment[] | undefined => {
    const all = before?.holding.get(signal);
    return all === undefined || changed === undefined ? undefined : replaced(all, changed, signal);
  };
  let sets: readonly Reading[] | undefined;
  const companies = new Map<RuledSignal, ReadonlyMap<unknown, readonly Moment[]>>();
  const ruled: RuledCase = {
    car,
    moments,
    given,
    isRepair: (cell) => repairs[cell] === true,
    read: (cell) => read[cell],
    once: <T>(make: (ruled: RuledCase, before: T | undefined) => T): T => {
      const known = by.get(make) as T | undefined;
      if (known !== undefined) return known;
      const made = make(ruled, before?.by.get(make) as T | undefined);
      by.set(make, made);
      return made;
    },
    sets: () => {
      sets ??= setsIn(taken);
      return sets;
    },
    inCell: (cell) => taken[cell]?.moments ?? none,
    holding: (signal) => {
      let all = holding.get(signal);
      if (all === undefined) {
        all = heldBefore(signal) ?? holders(moments, signal);
        holding.set(signal, all);
      }
      return all;
    },
    alike: (moment, signal) => {
      const { likeness, values } = moment;
      if (likeness === undefined) return values[signal] === undefined ? none : [moment];
      let company = companies.get(signal);
      if (company === undefined) {
        company = byLikeness(ruled.holding(signal));
        companies.set(signal, company);
      }
      return company.get(likeness) ?? none;
    },
  };
  return { ruled, made: { by, holding, moments } };
}

function setsIn(taken: readonly Taken[]): readonly Reading[] {
  const all: Reading[] = [];
  for (const { sets } of taken) for (const set of sets) all.push(set);
  return all;
}

/** A moment that is another than before, in the place of that one. */
interface Changed {
  readonly old: Moment;
  readonly now: Moment;
}

/** A few moments that changed while all others stayed where they are; undefined where more did. */
function changedIn(before: readonly Moment[], now: readonly Moment[]): readonly Changed[] | undefined {
  if (before.length !== now.length) return undefined;
  const changed: Changed[] = [];
  for (let at = 0; at < now.length; at++) {
    const [one, other] = [before[at], now[at]];
    if (one === other || one === undefined || other === undefined) continue;
    if (changed.length === few) return undefined;
    changed.push({ old: one, now: other });
  }
  return changed;
}

const few = 8;

/** The list of those that hold a signal with the changed ones replaced; undefined where one got it or lost it. */
function replaced(
  list: readonly Moment[],
  changed: readonly Changed[],
  signal: RuledSignal,
): readonly Moment[] | undefined {
  let all: Moment[] | undefined;
  for (const { old, now } of changed) {
    const holds = now.values[signal] !== undefined;
    if (holds !== (old.values[signal] !== undefined)) return undefined;
    if (!holds) continue;
    all ??= [...list];
    all[all.indexOf(old)] = now;
  }
  return all ?? list;
}

function holders(moments: readonly Moment[], signal: RuledSignal): readonly Moment[] {
  let all: Moment[] | undefined;
  for (const moment of moments) {
    if (moment.values[signal] === undefined) continue;
    all ??= [];
    all.push(moment);
  }
  return all ?? none;
}

function byLikeness(moments: readonly Moment[]): ReadonlyMap<unknown, readonly Moment[]> {
  const groups = new Map<unknown, Moment[]>();
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

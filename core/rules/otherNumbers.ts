import { sameState } from '../study/keepValues.ts';
import type { Moment, Taken } from './moments.ts';
import { noValues, type RuledSignal } from './values.ts';

/**
 * The signals of which some moment holds another number than before; undefined where moments came or went, or were taken
 * in another state. A number is the same only if its reading is: its place, what is written there, and all that is said of it.
 */
export function otherNumbers(
  before: readonly Taken[],
  now: readonly Taken[],
): ReadonlySet<RuledSignal> | undefined {
  if (before.length !== now.length) return undefined;
  const others = new Set<RuledSignal>();
  for (let cell = 0; cell < now.length; cell++) {
    if (before[cell] === now[cell]) continue;
    const [old, here] = [before[cell]?.moments, now[cell]?.moments];
    if (old === undefined || here === undefined || old.length !== here.length) return undefined;
    for (const [at, moment] of here.entries()) {
      const last = old[at];
      if (last === undefined || !isSameMoment(last, moment)) return undefined;
      for (const signal of signals) if (last.values[signal] !== moment.values[signal]) others.add(signal);
    }
  }
  return others;
}

const signals = Object.keys(noValues()) as readonly RuledSignal[];

function isSameMoment(a: Moment, b: Moment): boolean {
  return (
    a.cell === b.cell &&
    a.when === b.when &&
    a.column === b.column &&
    a.loop === b.loop &&
    a.likeness === b.likeness &&
    sameState(a.state, b.state)
  );
}

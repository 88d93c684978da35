import { remade } from '../text/remade.ts';
import type { Moment, Taken } from './moments.ts';

/** The moments of a case in the order of the text. */
export interface AllMoments {
  readonly taken: readonly Taken[];
  /** How many each cell has, and the bits of the rules that its readings ask for. */
  readonly counts: readonly number[];
  readonly asked: readonly number[];
  readonly moments: readonly Moment[];
}

/** Put together from what each cell holds. Given those of before, only cells that hold something else are touched. */
export function allMoments(taken: readonly Taken[], before: AllMoments | undefined): AllMoments {
  const of = before?.taken ?? [];
  const counts = remade(taken, before && { of, made: before.counts }, ({ moments }) => moments.length);
  const asked = remade(taken, before && { of, made: before.asked }, (each) => each.asked);
  const isSameCount = before !== undefined && counts === before.counts;
  const moments = isSameCount ? replaced(taken, before) : inOrder(taken);
  return { taken, counts, asked, moments };
}

function inOrder(taken: readonly Taken[]): readonly Moment[] {
  const all: Moment[] = [];
  for (const { moments } of taken) for (const moment of moments) all.push(moment);
  return all;
}

/** While each cell has as many as before, those of the others stand where they stood. */
function replaced(taken: readonly Taken[], { taken: of, counts, moments }: AllMoments): readonly Moment[] {
  const now = [...moments];
  let place = 0;
  for (let cell = 0; cell < taken.length; cell++) {
    const here = taken[cell];
    if (here !== undefined && here !== of[cell]) {
      for (let at = 0; at < here.moments.length; at++) now[place + at] = here.moments[at] as Moment;
    }
    place += counts[cell] ?? 0;
  }
  return now;
}

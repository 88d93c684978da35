import { cannotCompute } from '../../expression/absent.ts';
import { firstAtOrAfter } from '../../expression/series.ts';
import type { Absent } from '../../expression/value.ts';
import { smooth } from '../smooth.ts';
import type { Load } from './cranking.ts';
import { evenly } from './evenly.ts';
import { cycleOf, type Pace } from './rhythm.ts';

/** One compression after the other, in time. */
export interface Humps {
  /** The middle of each, s, at the engine's own pace: also of one that is missing. */
  readonly centres: readonly number[];
  /** How far each rises above the mean of the valleys on both sides, in the load's unit; not below 0. */
  readonly heights: readonly number[];
  /** The usual time from one to the next, s. */
  readonly spacing: number;
}

/**
 * Finds the humps that the compressions of an engine of so many cylinders leave in the load of a starter, or the pulls
 * that its intake strokes leave in the manifold. A hump that does not stand out (a cylinder without compression) has its
 * place all the same: the places follow the pace of all humps together.
 */
export function humpsOf(load: Load, cylinders: number, pace: Pace): Humps | Absent {
  const cycle = cycleOf(load.time, load.samples, cylinders, pace);
  if (cycle === undefined) return cannotCompute('no humps of compression that repeat are found in it');
  const spacing = cycle / cylinders;
  const centres = placesOf(load, spacing, cycle);
  if (centres.length < 2 * cylinders + 1)
    return cannotCompute(`there are not two whole engine cycles of ${cylinders} humps in it`);
  return { centres, heights: heightsOf(load, centres, spacing), spacing };
}

/** Steps of a hump that its pace is read from. */
const fine = 16;

/**
 * The moments of the tops of the slow sine that goes with the humps: the load times a turning pointer, averaged over a
 * cycle, says by how much the humps are ahead of an even pace or behind it (complex demodulation).
 */
function placesOf({ time, samples }: Load, spacing: number, cycle: number): readonly number[] {
  const step = spacing / fine;
  const load = evenly(time, samples, step);
  const moments = load.map((_, i) => (i + 0.5) * step);
  const level = smooth(moments, load, cycle);
  const turning = (part: (angle: number) => number): Float64Array =>
    smooth(
      moments,
      load.map((each, i) => (each - (level[i] ?? 0)) * part((2 * Math.PI * (i + 0.5)) / fine)),
      cycle,
    );
  const cosine = turning(Math.cos);
  const sine = turning(Math.sin);
  const centres: number[] = [];
  const first = time[0] ?? 0;
  let ahead = 0;
  let before = Number.NaN;
  for (let i = 0; i < load.length; i++) {
    const raw = Math.atan2(-(sine[i] ?? 0), cosine[i] ?? 0) / (2 * Math.PI);
    ahead = i === 0 ? raw : raw + Math.round(ahead - raw);
    const turns = (i + 0.5) / fine + ahead;
    if (Math.floor(turns) > Math.floor(before)) {
      const part = (Math.floor(turns) - before) / (turns - before);
      centres.push(first + (i - 0.5 + part) * step);
    }
    before = turns;
  }
  const last = time[time.length - 1] ?? 0;
  return centres.filter((each) => each - first > spacing / 2 && last - each > spacing / 2);
}

/** How far from its place a top may stand, as a share of the way to the next: others' flanks are farther. */
const near = 0.25;

function heightsOf({ time, samples }: Load, centres: readonly number[], spacing: number): readonly number[] {
  const even = smooth(time, samples, spacing / 4);
  const valleys: number[] = [];
  for (let k = 0; k <= centres.length; k++) {
    const from = centres[k - 1] ?? (centres[k] ?? 0) - spacing;
    const to = centres[k] ?? from + spacing;
    valleys.push(extreme(time, even, from, to, Math.min, Number.POSITIVE_INFINITY));
  }
  return centres.map((centre, k) => {
    const [from, to] = [centre - near * spacing, centre + near * spacing];
    const top = extreme(time, even, from, to, Math.max, Number.NEGATIVE_INFINITY);
    return Math.max(0, top - ((valleys[k] ?? 0) + (valleys[k + 1] ?? 0)) / 2);
  });
}

function extreme(
  time: Float64Array,
  samples: Float64Array,
  from: number,
  to: number,
  better: (a: number, b: number) => number,
  start: number,
): number {
  let found = start;
  for (let i = firstAtOrAfter(time, from); i < time.length && (time[i] ?? 0) <= to; i++) {
    found = better(found, samples[i] ?? found);
  }
  return found;
}

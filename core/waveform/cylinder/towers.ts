import { cannotCompute } from '../../expression/absent.ts';
import type { Absent } from '../../expression/value.ts';
import { peaksOf } from '../peaks.ts';
import { quantile } from '../quantile.ts';
import { type Recorded, swingOf } from '../recorded.ts';
import { leastSquares } from './leastSquares.ts';

/** The compressions of one cylinder. */
export interface Towers {
  /** The moments of the tops, s: top dead centre, two turns apart. */
  readonly tops: readonly number[];
  /** The pressure there, in the samples' unit. */
  readonly heights: readonly number[];
}

/** A tower stands out of the whole swing by at least this share; the step from exhaust to intake does not. */
const leastProminence = 0.25;
/** Where a parabola is laid through the top: above this share of the tower's height. */
const crown = 0.85;
/** A tower lasts this share of the cycle at half its height at most: a sine half of it, a compression a tenth. */
const broadest = 0.25;
/** From one tower to the next a cycle may become this much longer or shorter: more, and one was missed. */
const mostUneven = 1.6;

/**
 * Finds the compression towers in the pressure of a cylinder that does not fire. The top is that of a parabola through
 * the crown, so noise and the sample rate matter little. Heat and leakage move it some tenths of a degree before the
 * true dead centre (the loss angle), which is not corrected.
 */
export function towersOf(record: Recorded): Towers | Absent {
  const { time, samples } = record;
  const { low, high } = swingOf(samples);
  if (!(high > low)) return cannotCompute('it does not change: every sample is the same');
  const base = quantile(samples.slice(), 0.5);
  const places = peaksOf(samples, leastProminence * (high - low));
  const tops: number[] = [];
  const heights: number[] = [];
  for (const place of places) {
    const height = (samples[place] ?? base) - base;
    if (!(height > leastProminence * (high - base))) continue;
    const top = crownOf(record, place, base + crown * height);
    if (top === undefined) continue;
    tops.push(top.at);
    heights.push(top.height);
  }
  if (tops.length < 2)
    return cannotCompute(
      'fewer than two compression towers are found in it: is it the pressure in a cylinder?',
    );
  const cycles = tops.slice(1).map((top, k) => top - (tops[k] ?? 0));
  if (!(shareAbove(samples, base + (high - base) / 2) < broadest))
    return cannotCompute('its peaks are as broad as its valleys: it is not the pressure in one cylinder');
  const uneven = cycles.some((cycle, k) => {
    const before = cycles[k - 1] ?? cycle;
    return cycle > mostUneven * before || before > mostUneven * cycle;
  });
  if (uneven) return cannotCompute('its towers do not follow each other evenly: one is missing, or it fired');
  return { tops: tops.map((top) => top + (time[0] ?? 0)), heights };
}

function shareAbove(samples: Float64Array, level: number): number {
  let count = 0;
  for (let i = 0; i < samples.length; i++) if ((samples[i] ?? 0) > level) count++;
  return count / samples.length;
}

/** The vertex of a parabola through what stands above a level around a peak; seconds since the record's first sample. */
function crownOf(
  { time, samples }: Recorded,
  place: number,
  level: number,
): { readonly at: number; readonly height: number } | undefined {
  let [from, to] = [place, place + 1];
  while (from > 0 && (samples[from - 1] ?? 0) > level) from--;
  while (to < samples.length && (samples[to] ?? 0) > level) to++;
  const zero = time[place] ?? 0;
  if (to - from < 4) {
    from = Math.max(0, place - 2);
    to = Math.min(samples.length, place + 3);
  }
  const wide = Math.max((time[to - 1] ?? 0) - (time[from] ?? 0), 1e-12);
  const t = time.slice(from, to).map((each) => (each - zero) / wide);
  const fit = leastSquares([t.map(() => 1), t, t.map((each) => each * each)], samples.slice(from, to));
  const [a = 0, b = 0, c = 0] = fit?.weights ?? [];
  if (!(c < 0)) return undefined;
  const vertex = -b / (2 * c);
  if (Math.abs(vertex) > 1) return undefined;
  return { at: zero + vertex * wide - (time[0] ?? 0), height: a - (b * b) / (4 * c) };
}

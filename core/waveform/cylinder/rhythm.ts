import { smooth } from '../smooth.ts';
import { evenly } from './evenly.ts';

/** How long two turns may take, s. */
export interface Pace {
  readonly shortest: number;
  readonly longest: number;
}

/** Of a cranked engine: 420 to 90 rpm; of one that runs or is cranked: 1500 to 90 rpm. */
export const crankingPace: Pace = { shortest: 120 / 420, longest: 120 / 90 };
export const anyPace: Pace = { shortest: 120 / 1500, longest: 120 / 90 };

/** What changes over a longer time than this, s, is the starter's, not the compressions'. */
const slow = 0.5;

/** So near to the best a shorter time is taken: twice a cycle repeats as well as one. */
const nearly = 0.9;

/** Below this, of 3 where the load repeats exactly, nothing repeats. */
const leastLikeness = 0.5;

/**
 * How long two turns take, s, of an engine of so many cylinders whose compressions load the starter: the time at
 * whose whole parts the load is like itself, and half a part further is not. Undefined where nothing repeats.
 */
export function cycleOf(
  time: Float64Array,
  samples: Float64Array,
  cylinders: number,
  { shortest, longest }: Pace,
): number | undefined {
  const step = Math.max(
    shortest / (16 * cylinders),
    ((time[time.length - 1] ?? 0) - (time[0] ?? 0)) / 20_000,
  );
  const load = evenly(time, samples, step);
  const moments = load.map((_, i) => i * step);
  const level = smooth(moments, load, slow);
  const swing = load.map((each, i) => each - (level[i] ?? 0));
  const lags = Math.min(Math.ceil(longest / step) + 2, swing.length >> 1);
  const likeness = Float64Array.from({ length: lags }, (_, lag) => likenessAt(swing, lag));
  const at = (seconds: number): number => {
    const place = seconds / step;
    const low = Math.floor(place);
    const part = place - low;
    return (likeness[low] ?? 0) * (1 - part) + (likeness[low + 1] ?? 0) * part;
  };
  const cycles: number[] = [];
  const scores: number[] = [];
  for (let cycle = shortest; cycle < Math.min(longest, (lags - 2) * step); cycle *= 1.005) {
    let score = at(cycle);
    for (let k = 1; k <= cylinders; k++) {
      score += (at((k * cycle) / cylinders) - at(((k - 0.5) * cycle) / cylinders)) / cylinders;
    }
    cycles.push(cycle);
    scores.push(score);
  }
  const most = Math.max(...scores);
  if (!(most > leastLikeness)) return undefined;
  let best = scores.findIndex((score) => score >= nearly * most);
  while ((scores[best + 1] ?? 0) > (scores[best] ?? 0)) best++;
  return cycles[best];
}

/** Of a signal and itself that much later: 1 where they are the same. */
function likenessAt(swing: Float64Array, lag: number): number {
  let product = 0;
  let [left, right] = [0, 0];
  for (let i = lag; i < swing.length; i++) {
    const [a, b] = [swing[i - lag] ?? 0, swing[i] ?? 0];
    product += a * b;
    left += a * a;
    right += b * b;
  }
  return left > 0 && right > 0 ? product / Math.sqrt(left * right) : 0;
}

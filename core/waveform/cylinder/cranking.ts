import { cannotCompute } from '../../expression/absent.ts';
import type { Absent } from '../../expression/value.ts';
import { quantile } from '../quantile.ts';
import type { Recorded } from '../recorded.ts';

/** What the starter has to do over time: starter current, or the battery's voltage turned upside down, above its rest. */
export interface Load {
  readonly time: Float64Array;
  readonly samples: Float64Array;
}

/** A pause of the load this long, s, ends a stretch of cranking: a dead cylinder's is shorter. */
const longestPause = 0.35;

/**
 * The stretch in which the starter turns the engine steadily: the longest one under load, from where the inrush has
 * fallen to the usual load. `sign` is 1 for a current and -1 for a voltage, which dips.
 */
export function steadyCranking({ time, samples }: Recorded, sign: 1 | -1): Load | Absent {
  const upright = samples.map((each) => sign * each);
  const rest = quantile(upright.slice(), 0.02);
  const high = quantile(upright.slice(), 0.98) - rest;
  if (!(high > 0)) return cannotCompute('it does not change: every sample is the same');
  const { start, end } = longestUnder(time, upright, rest + 0.25 * high);
  const usual = quantile(upright.slice(start, end), 0.5);
  let from = start;
  while (from < end && (upright[from] ?? 0) <= usual) from++;
  while (from < end && (upright[from] ?? 0) > usual) from++;
  // Behind the last sample under load the starter is being released.
  let to = end;
  while (to > from && (upright[to - 1] ?? 0) < usual) to--;
  if (to - from < 16) return cannotCompute('no stretch of cranking is found in it');
  return {
    time: time.subarray(from, to),
    samples: upright.subarray(from, to).map((each) => each - rest),
  };
}

function longestUnder(
  time: Float64Array,
  samples: Float64Array,
  level: number,
): { readonly start: number; readonly end: number } {
  let best = { start: 0, end: 0 };
  let length = -1;
  let start = -1;
  let last = -1;
  const close = (): void => {
    const lasts = (time[last] ?? 0) - (time[start] ?? 0);
    if (start >= 0 && lasts > length) {
      length = lasts;
      best = { start, end: last + 1 };
    }
  };
  for (let i = 0; i < samples.length; i++) {
    if ((samples[i] ?? 0) < level) continue;
    if (start < 0 || (time[i] ?? 0) - (time[last] ?? 0) > longestPause) {
      close();
      start = i;
    }
    last = i;
  }
  close();
  return best;
}

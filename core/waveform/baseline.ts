import { quantile } from './quantile.ts';

/**
 * The level that a signal stands on: the share-quantile (0 to 1; the median is 0.5) of each window (s), straight
 * between the windows' middles and level before the first and behind the last. Pulses and spikes that last less than
 * their share of a window do not lift it. Missing samples are passed over; a window without samples is bridged.
 * O(n). `time` ascends; the window is above 0. NaN throughout where there is no sample.
 */
export function baseline(
  time: Float64Array,
  samples: Float64Array,
  window: number,
  share: number,
): Float64Array {
  const { moments, levels } = levelsOf(time, samples, window, share);
  const out = new Float64Array(samples.length);
  let after = 0;
  for (let i = 0; i < out.length; i++) {
    const now = time[i] ?? Number.NaN;
    while (after < moments.length && (moments[after] ?? 0) < now) after++;
    const end = levels[after];
    const start = levels[after - 1];
    if (start === undefined || end === undefined) out[i] = end ?? start ?? Number.NaN;
    else {
      const [left = 0, right = 0] = [moments[after - 1], moments[after]];
      out[i] = start + ((now - left) / (right - left)) * (end - start);
    }
  }
  return out;
}

interface Levels {
  /** The windows' middles, s, ascending. */
  readonly moments: readonly number[];
  readonly levels: readonly number[];
}

/** The record is cut into whole windows as nearly as long as asked for. */
function levelsOf(time: Float64Array, samples: Float64Array, window: number, share: number): Levels {
  const first = time[0] ?? 0;
  const whole = (time[time.length - 1] ?? 0) - first;
  const count = Math.max(1, Math.round(whole / window));
  const length = whole / count;
  const moments: number[] = [];
  const levels: number[] = [];
  let next = 0;
  const held = new Float64Array(samples.length);
  for (let k = 0; k < count; k++) {
    const end = k === count - 1 ? Number.POSITIVE_INFINITY : first + (k + 1) * length;
    let there = 0;
    for (; next < samples.length && (time[next] ?? 0) < end; next++) {
      const sample = samples[next] ?? Number.NaN;
      if (Number.isFinite(sample)) held[there++] = sample;
    }
    if (there === 0) continue;
    moments.push(first + (k + 0.5) * length);
    levels.push(quantile(held.subarray(0, there), share));
  }
  return { moments, levels };
}

import { quantile } from '../quantile.ts';

/** Where the ramp's slope drops and comes back: an armature has moved and stopped. */
export interface Notch {
  /** s */
  readonly time: number;
  /** The current there. */
  readonly current: number;
  /** Its place among the samples. */
  readonly place: number;
}

/** The slope must come back by this many times its noise, and by this share of the ramp's first slope. */
const aboveNoise = 10;
const aboveSlope = 0.12;

/**
 * Finds the notch in a ramp between two places. A moving armature lowers the slope, since it raises the inductance;
 * when it stops, the slope comes back at once. Slopes are least-squares lines through a window of samples,
 * so that the moment is where the slope is half back: there the window is centred on the stop.
 * Undefined where the slope only falls, as that of a coil without a moving part does. O(n).
 */
export function notchIn(
  time: Float64Array,
  samples: Float64Array,
  first: number,
  last: number,
): Notch | undefined {
  // A short window sees a short notch; noise needs a longer one.
  for (const parts of [80, 40, 20]) {
    const half = Math.max(2, Math.round((last - first) / parts));
    const found = last - first > 8 * half ? notchWith(time, samples, first, last, half) : undefined;
    if (found !== undefined) return found;
  }
  return undefined;
}

function notchWith(
  time: Float64Array,
  samples: Float64Array,
  first: number,
  last: number,
  half: number,
): Notch | undefined {
  const slopes = slopesOf(time, samples, first, last, half);
  const at = (i: number): number => slopes[i] ?? Number.NaN;
  const end = slopes.length;
  let steepest = 0;
  for (let i = 1; i < end / 2; i++) if (at(i) > at(steepest)) steepest = i;
  // From the end: how far the slope will still rise above each place.
  let highest = Number.NEGATIVE_INFINITY;
  let rise = 0;
  let lowest = -1;
  for (let i = end - 1; i > steepest; i--) {
    if (at(i) > highest) highest = at(i);
    if (highest - at(i) > rise) {
      rise = highest - at(i);
      lowest = i;
    }
  }
  const least = Math.max(
    aboveSlope * at(steepest),
    aboveNoise * slopeNoise(time, samples, first, last, half),
  );
  if (lowest < 0 || !(rise > least)) return undefined;
  let back = lowest;
  while (back + 1 < end && at(back) < at(lowest) + rise / 2) back++;
  // Straight between the two places between which the slope is half back.
  const share = (at(lowest) + rise / 2 - at(back - 1)) / (at(back) - at(back - 1));
  const place = first + half + back - 1 + share;
  const whole = Math.floor(place);
  const part = place - whole;
  const between = (of: Float64Array): number => (of[whole] ?? 0) * (1 - part) + (of[whole + 1] ?? 0) * part;
  return { time: between(time), current: between(samples), place: whole };
}

/** The least-squares slope through 2·half + 1 samples about each place that has them, evenly stepped; by sums that move along. */
function slopesOf(
  time: Float64Array,
  samples: Float64Array,
  first: number,
  last: number,
  half: number,
): Float64Array {
  const window = 2 * half + 1;
  const count = last - first + 1;
  const step = ((time[last] ?? 0) - (time[first] ?? 0)) / (count - 1);
  const divisor = (step * (window * (window * window - 1))) / 12;
  const slopes = new Float64Array(Math.max(0, count - window + 1));
  for (let i = 0; i < slopes.length; i++) {
    let sum = 0;
    for (let k = 0; k < window; k++) sum += (k - half) * (samples[first + i + k] ?? 0);
    slopes[i] = sum / divisor;
  }
  return slopes;
}

/** The noise of those slopes: that of single samples, from their second differences' median, carried through the line. */
function slopeNoise(
  time: Float64Array,
  samples: Float64Array,
  first: number,
  last: number,
  half: number,
): number {
  const count = last - first + 1;
  const bends = new Float64Array(count - 2);
  for (let i = 0; i < bends.length; i++) {
    const here = first + i + 1;
    bends[i] = Math.abs((samples[here - 1] ?? 0) - 2 * (samples[here] ?? 0) + (samples[here + 1] ?? 0));
  }
  // The median of |N(0, σ√6)| is 0.6745·√6·σ.
  const sigma = quantile(bends, 0.5) / (0.6745 * Math.sqrt(6));
  const window = 2 * half + 1;
  const step = ((time[last] ?? 0) - (time[first] ?? 0)) / (count - 1);
  return (sigma / step) * Math.sqrt(12 / (window * (window * window - 1)));
}

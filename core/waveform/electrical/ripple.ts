import { cannotCompute } from '../../expression/absent.ts';
import type { Absent } from '../../expression/value.ts';
import { transform } from '../fourier.ts';
import { median } from '../quantile.ts';
import { type Recorded, swingOf } from '../recorded.ts';
import { along } from '../resample.ts';

/** The part of a signal that comes and goes in a steady rhythm, on what it stands on. */
export interface Ripple {
  readonly mean: number;
  /** Hz */
  readonly frequency: number;
  /** From bottom to top of one hump, the median of all. */
  readonly height: number;
  /** The height of the humps `first`, `first + every`, … laid over each other; undefined where there are fewer than three. */
  readonly heightOf: (first: number, every: number) => number | undefined;
}

/** As many samples as are looked at at once: a second of 100 kHz. */
const most = 2 ** 17;

/**
 * Finds the strongest rhythm between two frequencies by the spectrum of the evenly spaced samples
 * (Hann's window; between the lines by a parabola through the logarithms), and the height of its humps, laid over each other
 * so that noise does not lift it.
 * The record's first 131,072 samples are read. It must hold eight humps or more, and more than four samples of each.
 */
export function rippleOf(record: Recorded, lowest: number, highest: number): Ripple | Absent {
  if (!(record.step > 0)) return cannotCompute('a ripple needs samples at two moments and more');
  if (record.starts.length > 1)
    return cannotCompute('the record has a gap: cut one stretch out with `from … to`');
  const { step, time } = record;
  const begin = time[0] ?? 0;
  const count = Math.min(most, Math.floor((record.duration / step) * (1 + 1e-9)) + 1);
  const even = Float64Array.from({ length: count }, (_, i) => begin + i * step);
  const samples = along(time, record.samples, new Set(), even);
  for (let i = count - 1; i > 0 && Number.isNaN(samples[i]); i--) samples[i] = record.samples.at(-1) ?? 0;
  const line = strongestLine(samples, step, lowest, highest);
  if (typeof line !== 'number') return line;
  const perHump = 1 / (line * step);
  if (perHump < 4) return cannotCompute('the samples are too sparse for its ripple: record faster');
  const humps = Math.floor(samples.length / perHump);
  if (humps < 8) return cannotCompute('there are fewer than eight humps in it: record longer');
  let sum = 0;
  for (const each of record.samples) sum += each;
  const heightOf = (first: number, every: number): number | undefined =>
    foldedHeight(samples, perHump, first, every);
  const blocks = Array.from({ length: Math.max(1, Math.floor(humps / block)) }, (_, k) =>
    foldedHeight(samples.subarray(Math.round(k * block * perHump)), perHump, 0, 1),
  );
  const height = median(blocks.filter((each) => each !== undefined));
  return { mean: sum / record.samples.length, frequency: line, height, heightOf };
}

/** A line must stand out of the median of the lines beside it this many times. */
const standsOut = 6;

function strongestLine(
  samples: Float64Array,
  step: number,
  lowest: number,
  highest: number,
): number | Absent {
  const count = samples.length;
  let size = 16;
  while (size < 2 * count) size *= 2;
  const re = new Float64Array(size);
  const im = new Float64Array(size);
  const { low, high } = swingOf(samples);
  if (!(high > low)) return cannotCompute('no rhythm stands out of its noise: it does not change');
  let mean = 0;
  for (const each of samples) mean += each / count;
  for (let i = 0; i < count; i++)
    re[i] = ((samples[i] ?? 0) - mean) * (0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / count));
  transform(re, im);
  const resolution = 1 / (size * step);
  const from = Math.max(4, Math.ceil(lowest / resolution));
  const to = Math.min((size >> 1) - 2, Math.floor(highest / resolution));
  if (!(to > from)) return cannotCompute('the samples are too sparse for its ripple: record faster');
  const strength = Float64Array.from({ length: to - from + 1 }, (_, k) =>
    Math.hypot(re[from + k] ?? 0, im[from + k] ?? 0),
  );
  let best = 0;
  for (let k = 1; k < strength.length; k++) if ((strength[k] ?? 0) > (strength[best] ?? 0)) best = k;
  if (!((strength[best] ?? 0) > standsOut * median(strength)))
    return cannotCompute('no rhythm stands out of its noise');
  if (best === 0 || best === strength.length - 1) return (from + best) * resolution;
  const [a, b, c] = [-1, 0, 1].map((by) => Math.log(strength[best + by] ?? 0));
  const bend = (a ?? 0) - 2 * (b ?? 0) + (c ?? 0);
  const between = bend < 0 ? ((a ?? 0) - (c ?? 0)) / (2 * bend) : 0;
  return (from + best + between) * resolution;
}

/** So many humps are laid over each other: enough against noise, few enough for a speed that drifts. */
const block = 24;

/** Greatest minus least of the mean of several humps, by their phase. */
function foldedHeight(
  samples: Float64Array,
  perHump: number,
  first: number,
  every: number,
): number | undefined {
  const bins = Math.max(4, Math.min(24, Math.floor(perHump)));
  const sums = new Float64Array(bins);
  const counts = new Uint32Array(bins);
  let humps = 0;
  for (let k = first; humps < block && (k + 1) * perHump <= samples.length; k += every, humps++) {
    for (let i = Math.ceil(k * perHump); i < (k + 1) * perHump; i++) {
      const bin = Math.min(bins - 1, Math.floor((i / perHump - k) * bins));
      sums[bin] = (sums[bin] ?? 0) + (samples[i] ?? 0);
      counts[bin] = (counts[bin] ?? 0) + 1;
    }
  }
  if (humps < 3) return undefined;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let bin = 0; bin < bins; bin++) {
    if ((counts[bin] ?? 0) === 0) continue;
    const mean = (sums[bin] ?? 0) / (counts[bin] ?? 1);
    low = Math.min(low, mean);
    high = Math.max(high, mean);
  }
  return high - low;
}

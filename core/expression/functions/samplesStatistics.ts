import { exact, subtract } from '../../quantity/amount.ts';
import type { Amount } from '../../quantity/types.ts';
import { cannotCompute } from '../absent.ts';
import { sampleAt } from '../series.ts';
import type { Absent, Series } from '../value.ts';

/**
 * Statistics of one series, over its samples as they stand: a million of them are never a million amounts.
 * Missing samples are left out; with no sample there is no answer.
 */
export type OfSamples = (series: Series) => Amount | Absent;

const noValues: Absent = cannotCompute('there are no values in it');

/** The sample at the index that a choice gives. */
const sampleOf =
  (choose: (samples: Float64Array) => number): OfSamples =>
  (series) => {
    const index = choose(series.samples);
    return index < 0 ? noValues : sampleAt(series, index);
  };

export const leastSample = sampleOf((samples) => {
  let index = -1;
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < samples.length; i++) {
    const sample = samples[i] as number;
    if (sample < best || (index < 0 && !Number.isNaN(sample))) {
      best = sample;
      index = i;
    }
  }
  return index;
});

export const greatestSample = sampleOf((samples) => {
  let index = -1;
  let best = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < samples.length; i++) {
    const sample = samples[i] as number;
    if (sample > best || (index < 0 && !Number.isNaN(sample))) {
      best = sample;
      index = i;
    }
  }
  return index;
});

export const firstSample = sampleOf((samples) => samples.findIndex((each) => !Number.isNaN(each)));
export const lastSample = sampleOf((samples) => samples.findLastIndex((each) => !Number.isNaN(each)));

export const meanOfSamples: OfSamples = (series) => {
  const { samples } = series;
  let sum = 0;
  let count = 0;
  for (let i = 0; i < samples.length; i++) {
    const sample = samples[i] as number;
    if (Number.isNaN(sample)) continue;
    sum += sample;
    count++;
  }
  const share = 1 / count;
  return count === 0 ? noValues : weighed(series, sum * share, () => share);
};

/** The middle sample; of an even number the mean of the two in the middle. */
export const medianOfSamples: OfSamples = (series) => {
  const { samples } = series;
  const order = new Float64Array(samples.length);
  let count = 0;
  for (let i = 0; i < samples.length; i++) {
    const sample = samples[i] as number;
    if (!Number.isNaN(sample)) order[count++] = sample;
  }
  if (count === 0) return noValues;
  const sorted = order.subarray(0, count).sort();
  const high = samples.indexOf(sorted[count >> 1] as number);
  if (count % 2 === 1) return sampleAt(series, high);
  const lowValue = sorted[(count >> 1) - 1] as number;
  const low =
    lowValue === sorted[count >> 1] ? samples.indexOf(lowValue, high + 1) : samples.indexOf(lowValue);
  const pair = new Set([low, high]);
  return weighed(series, (lowValue + (sorted[count >> 1] as number)) / 2, (_, i) => (pair.has(i) ? 0.5 : 0));
};

export const spreadOfSamples: OfSamples = (series) => {
  const [high, low] = [greatestSample(series), leastSample(series)];
  return 'si' in high && 'si' in low ? subtract(high, low) : noValues;
};

/** With n − 1 (JCGM 100:2008, 4.2.2); at 0 its slope has no value and no uncertainty is carried. */
export const deviationOfSamples: OfSamples = (series) => {
  const { samples } = series;
  // About the first of them, so that equal samples have themselves as their mean, to the last bit.
  let zero = Number.NaN;
  let sum = 0;
  let count = 0;
  for (let i = 0; i < samples.length; i++) {
    const sample = samples[i] as number;
    if (Number.isNaN(sample)) continue;
    if (count++ === 0) zero = sample;
    sum += sample - zero;
  }
  if (count === 0) return noValues;
  const middle = zero + sum / count;
  let squares = 0;
  for (let i = 0; i < samples.length; i++) {
    const sample = samples[i] as number;
    if (!Number.isNaN(sample)) squares += (sample - middle) ** 2;
  }
  const free = count - 1;
  if (free < 1) return cannotCompute('a standard deviation needs at least two values');
  const deviation = Math.sqrt(squares / free);
  if (deviation === 0) return exact(0);
  return weighed(series, deviation, (sample) => (sample - middle) / (free * deviation));
};

/** A result with its sensitivity to each sample; what is common to all samples enters with the sum of them. */
function weighed(
  { samples, spread }: Series,
  si: number,
  weight: (sample: number, index: number) => number,
): Amount {
  if (spread.length === 0) return { si, spread: [] };
  const sources = spread.map(({ source, by }) => {
    let sum = 0;
    for (let i = 0; i < samples.length; i++) {
      const sample = samples[i] as number;
      if (!Number.isNaN(sample)) sum += weight(sample, i) * (typeof by === 'number' ? by : (by[i] as number));
    }
    return { source, by: sum };
  });
  return { si, spread: sources.filter(({ by }) => by !== 0) };
}

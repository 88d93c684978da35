import type { Amount, Spread } from '../quantity/types.ts';
import type { Series } from './value.ts';

const none: Spread = [];

/** One sample with its sources; NaN where the sample is missing. */
export function sampleAt(series: Series, index: number): Amount {
  const si = series.samples[index] ?? Number.NaN;
  if (series.spread.length === 0) return { si, spread: none };
  return {
    si,
    spread: series.spread.map(({ source, by }) => ({
      source,
      by: typeof by === 'number' ? by : (by[index] ?? Number.NaN),
    })),
  };
}

/** The index of the first sample at or after a time (seconds). */
export function firstAtOrAfter(time: Float64Array, at: number): number {
  let low = 0;
  let high = time.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((time[middle] ?? Number.NaN) < at) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** 0.3 s and a sample at 0.1 s × 3 differ in the last bit only, and mean one moment. */
const grain = 1e-12;
export const atLeast = (time: number): number => time - grain * Math.abs(time);
export const atMost = (time: number): number => time + grain * Math.abs(time);

/** The index of the sample at exactly this time; -1 when there is none. */
export function indexAt(series: Series, time: number, guess: number): number {
  if (series.time[guess] === time) return guess;
  const index = firstAtOrAfter(series.time, time);
  return series.time[index] === time ? index : -1;
}

/** The samples of these indices, ascending. */
export function samplesAt(series: Series, indices: Int32Array): Series {
  const pick = (from: Float64Array): Float64Array => {
    const picked = new Float64Array(indices.length);
    for (let i = 0; i < indices.length; i++) picked[i] = from[indices[i] ?? 0] ?? Number.NaN;
    return picked;
  };
  return {
    ...series,
    time: pick(series.time),
    samples: pick(series.samples),
    spread: series.spread.map(({ source, by }) => ({ source, by: typeof by === 'number' ? by : pick(by) })),
  };
}

/** The samples from index `start` up to `end`, the latter not included; nothing is copied. */
export function slice(series: Series, start: number, end: number): Series {
  return {
    ...series,
    time: series.time.subarray(start, end),
    samples: series.samples.subarray(start, end),
    spread: series.spread.map(({ source, by }) => ({
      source,
      by: typeof by === 'number' ? by : by.subarray(start, end),
    })),
  };
}

/** Two series of one capture at the moments that both have. */
export function aligned(a: Series, b: Series): readonly [Series, Series] {
  if (sameTimes(a.time, b.time)) return [a, b];
  const inA: number[] = [];
  const inB: number[] = [];
  let i = 0;
  let j = 0;
  while (i < a.time.length && j < b.time.length) {
    const left = a.time[i] ?? 0;
    const right = b.time[j] ?? 0;
    if (left === right) {
      inA.push(i++);
      inB.push(j++);
    } else if (left < right) i++;
    else j++;
  }
  return [samplesAt(a, Int32Array.from(inA)), samplesAt(b, Int32Array.from(inB))];
}

function sameTimes(a: Float64Array, b: Float64Array): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

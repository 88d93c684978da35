import { cannotCompute } from '../expression/absent.ts';
import type { Absent, Series } from '../expression/value.ts';

/** The samples of a channel that are there, and where they follow each other without a gap. */
export interface Recorded {
  /** Seconds, ascending; two samples may share a moment. */
  readonly time: Float64Array;
  /** None is NaN. */
  readonly samples: Float64Array;
  /** Where each stretch without a gap begins; the first at 0. */
  readonly starts: readonly number[];
  /** Seconds recorded: the stretches together, without the gaps between. */
  readonly duration: number;
  /** The usual time from one sample to the next, s; 0 when all share one moment. */
  readonly step: number;
}

/** A pause this many times as long as the usual step is no part of the record: a dropout, or what `where` left out. */
const gap = 5;

/**
 * One pass over the samples. Missing ones are left out; what was recorded is otherwise not copied.
 * Without any sample, or where the time runs backwards, there is no answer.
 */
export function recorded({ time, samples }: Pick<Series, 'time' | 'samples'>): Recorded | Absent {
  const step = usualStep(time);
  const half = step > 0 ? (gap * step) / 2 : Number.MAX_VALUE;
  const count = samples.length;
  const starts = [0];
  let lost = 0;
  let before = time[0] ?? Number.NaN;
  for (let i = 0; i < count; i++) {
    const now = time[i] ?? Number.NaN;
    const sample = samples[i] ?? Number.NaN;
    const pause = now - before;
    // In one comparison: the pause lies between 0 and the longest, and neither it nor the sample is missing or infinite.
    if (!(Math.abs(pause - half) + (sample - sample) <= half)) {
      if (Number.isNaN(now) || !Number.isFinite(sample)) return present(time, samples);
      if (pause < 0) return cannotCompute('the time runs backwards');
      starts.push(i);
      lost += pause;
    }
    before = now;
  }
  if (count === 0) return cannotCompute('there are no samples in it');
  return { time, samples, starts, duration: before - (time[0] ?? 0) - lost, step };
}

function present(time: Float64Array, samples: Float64Array): Recorded | Absent {
  const moments = new Float64Array(samples.length);
  const values = new Float64Array(samples.length);
  let count = 0;
  for (let i = 0; i < samples.length; i++) {
    const now = time[i] ?? Number.NaN;
    const sample = samples[i] ?? Number.NaN;
    if (Number.isNaN(now) || !Number.isFinite(sample)) continue;
    moments[count] = now;
    values[count++] = sample;
  }
  return recorded({ time: moments.subarray(0, count), samples: values.subarray(0, count) });
}

/** Intervals looked at: enough for the median of what a recorder does, few enough to cost nothing. */
const looked = 255;

function usualStep(time: Float64Array): number {
  const intervals = time.length - 1;
  const count = Math.min(intervals, looked);
  const steps: number[] = [];
  for (let k = 0; k < count; k++) {
    const i = Math.floor((k * intervals) / count);
    const step = (time[i + 1] ?? Number.NaN) - (time[i] ?? Number.NaN);
    if (step > 0) steps.push(step);
  }
  steps.sort((a, b) => a - b);
  return steps[steps.length >> 1] ?? 0;
}

export function isRecorded(of: Recorded | Absent): of is Recorded {
  return !('kind' in of);
}

/** The least and the greatest sample. */
export interface Swing {
  readonly low: number;
  readonly high: number;
}

/** Of samples that are there; NaN is passed over, and nothing but NaN gives a swing of NaN. */
export function swingOf(samples: Float64Array): Swing {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  const count = samples.length;
  for (let i = 0; i < count; i++) {
    const sample = samples[i] ?? Number.NaN;
    if (sample < low) low = sample;
    if (sample > high) high = sample;
  }
  return low <= high ? { low, high } : { low: Number.NaN, high: Number.NaN };
}

import { normalFrom, randomFrom } from './random.ts';

/** Samples of one channel over time (s), in any one unit. */
export interface Signal {
  readonly time: Float64Array;
  readonly samples: Float64Array;
}

/** A clean signal: evenly sampled from 0 s up to (not including) the end. */
export function sampled(seconds: number, perSecond: number, at: (seconds: number) => number): Signal {
  const time = Float64Array.from({ length: Math.round(seconds * perSecond) }, (_, i) => i / perSecond);
  return { time, samples: time.map((t) => at(t)) };
}

/** What a recorder and its probe do to a signal. Whatever is left out is not done. */
export interface Disturbance {
  /** White noise: its standard deviation, in the samples' unit. */
  readonly noise?: number;
  /** A straight drift from the first sample on, in the samples' unit a second. */
  readonly drift?: number;
  /** The recorder's step: samples are rounded to whole ones. */
  readonly step?: number;
  /** The share of samples that are lost (NaN). */
  readonly dropouts?: number;
  /** The recorder's clock: the standard deviation of a time stamp, s. Stamps never run backwards. */
  readonly jitter?: number;
}

/** The signal as a recorder with these faults would store it; the same for the same seed. */
export function disturbed({ time, samples }: Signal, by: Disturbance, seed: number): Signal {
  const random = randomFrom(seed);
  const normal = normalFrom(random);
  const { noise = 0, drift = 0, step = 0, dropouts = 0, jitter = 0 } = by;
  const first = time[0] ?? 0;
  const stamps = time.map((t) => (jitter > 0 ? t + jitter * normal() : t));
  if (jitter > 0) stamps.sort();
  const stored = samples.map((sample, i) => {
    const moved = sample + drift * ((time[i] ?? 0) - first) + (noise > 0 ? noise * normal() : 0);
    if (dropouts > 0 && random() < dropouts) return Number.NaN;
    return step > 0 ? step * Math.round(moved / step) : moved;
  });
  return { time: stamps, samples: stored };
}

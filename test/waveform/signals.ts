import { expect } from 'vitest';
import type { Absent } from '../../core/expression/value.ts';
import { isRecorded, type Recorded, recorded } from '../../core/waveform/recorded.ts';

/** Moments from 0, both ends included, s. */
export function moments(seconds: number, perSecond: number): Float64Array {
  return Float64Array.from({ length: Math.round(seconds * perSecond) + 1 }, (_, i) => i / perSecond);
}

/** A synthetic signal over time. */
export function signal(time: Float64Array, at: (seconds: number) => number): Float64Array {
  return time.map(at);
}

/** A front oxygen sensor that swings between 0.10 and 0.80 V: v = 0.45 + 0.35·sin(2πft). */
export function switching(frequency: number): (seconds: number) => number {
  return (t) => 0.45 + 0.35 * Math.sin(2 * Math.PI * frequency * t);
}

export function record(time: ArrayLike<number>, samples: ArrayLike<number>): Recorded {
  const of = recorded({ time: Float64Array.from(time), samples: Float64Array.from(samples) });
  if (!isRecorded(of)) expect.fail(of.why);
  return of;
}

export function number(of: number | Absent): number {
  if (typeof of !== 'number') expect.fail(of.why);
  return of;
}

export function why(of: number | Absent | object): string {
  if (typeof of !== 'object' || !('why' in of) || typeof of.why !== 'string')
    expect.fail('a value where none was expected');
  return of.why;
}

/** Even noise between −1 and 1 from a seed (Numerical Recipes' linear congruential generator, values from memory). */
export function noise(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 31 - 1;
  };
}

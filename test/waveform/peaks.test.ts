import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { peaksOf } from '../../core/waveform/peaks.ts';
import { moments, noise, signal } from './signals.ts';

/** Prominence by its definition: how far one must go down from a peak, on the easier side, before it is higher again or the record ends. */
function prominence(samples: readonly number[], at: number): number {
  const here = samples[at] ?? 0;
  const drop = (step: 1 | -1) => {
    let lowest = here;
    for (let i = at + step; i >= 0 && i < samples.length && (samples[i] ?? 0) <= here; i += step)
      lowest = Math.min(lowest, samples[i] ?? 0);
    return here - lowest;
  };
  return Math.min(drop(1), drop(-1));
}

describe('peaks', () => {
  it('are those whose prominence by definition is great enough', () => {
    const values = fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(values, fc.integer({ min: 1, max: 20 }), (levels, least) => {
        // Every sample a little different, so that no two tops are equally high.
        const samples = levels.map((each, i) => each + i / 1000);
        const expected = samples.flatMap((_, at) => (prominence(samples, at) >= least ? [at] : []));
        expect([...peaksOf(Float64Array.from(samples), least)]).toEqual(expected);
      }),
    );
  });

  it('of starter current are its humps, noise or not (synthetic: 180, 180, 150, 180 A)', () => {
    const next = noise(3);
    const heights = [180, 180, 150, 180];
    const time = moments(0.6, 2000);
    const current = signal(time, (t) => {
      const hump = Math.min(3, Math.floor(t / 0.15));
      return 90 + ((heights[hump] ?? 0) - 90) * Math.sin((Math.PI * (t % 0.15)) / 0.15) ** 2 + 2 * next();
    });
    const tops = [...peaksOf(current)];
    expect(tops).toHaveLength(4);
    const found = tops.map((at) => current[at] ?? 0);
    for (const [i, height] of heights.entries()) expect(Math.abs((found[i] ?? 0) - height)).toBeLessThan(3);
    expect(Math.min(...found) / Math.max(...found)).toBeCloseTo(0.833, 1);
  });

  it('the record’s ends are none, a flat top is its middle, missing samples are passed over', () => {
    expect([...peaksOf(Float64Array.of(5, 1, 5), 1)]).toEqual([]);
    expect([...peaksOf(Float64Array.of(0, 1, 4, 4, 4, 1), 1)]).toEqual([3]);
    expect([...peaksOf(Float64Array.of(0, Number.NaN, 4, Number.NaN, 0), 1)]).toEqual([2]);
  });

  it('there are none where nothing moves', () => {
    expect([...peaksOf(new Float64Array(9))]).toEqual([]);
    expect([...peaksOf(new Float64Array(0))]).toEqual([]);
    expect([...peaksOf(Float64Array.of(Number.NaN))]).toEqual([]);
  });
});

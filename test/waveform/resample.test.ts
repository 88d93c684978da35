import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Series } from '../../core/expression/value.ts';
import { decimate } from '../../core/waveform/decimate.ts';
import { swingOf } from '../../core/waveform/recorded.ts';
import { resample } from '../../core/waveform/resample.ts';
import { samples } from '../support/expressionScope.ts';
import { moments, noise, why } from './signals.ts';

function series(capture: string, time: readonly number[], values: readonly number[], halfWidth = 0): Series {
  const { value } = samples(capture, 'V', time, values, halfWidth);
  if (value.kind !== 'series') expect.fail(value.kind);
  return value;
}

describe('resampling', () => {
  it('is straight between the samples, where both were recorded', () => {
    const got = resample(
      series('a', [0, 1, 2], [0, 10, 0]),
      series('b', [-1, 0, 0.25, 1, 1.5, 2, 3], [0, 0, 0, 0, 0, 0, 0]),
    );
    if (got.kind !== 'series') expect.fail(got.why);
    expect([...got.time]).toEqual([0, 0.25, 1, 1.5, 2]);
    expect([...got.samples]).toEqual([0, 2.5, 10, 5, 0]);
    expect(got.capture).toBe('b');
  });

  it('keeps a straight line straight, at whatever moments', () => {
    const times = fc.uniqueArray(fc.double({ min: 0, max: 9, noNaN: true }), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(times, (unsorted) => {
        const at = unsorted.sort((a, b) => a - b);
        const x = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9];
        const got = resample(
          series(
            'a',
            x,
            x.map((t) => 2 * t - 3),
          ),
          series('b', at, at),
        );
        if (got.kind !== 'series') expect.fail(got.why);
        expect(got.time.length).toBe(at.length);
        for (const [i, each] of got.samples.entries()) expect(each).toBeCloseTo(2 * (at[i] ?? 0) - 3, 9);
      }),
    );
  });

  it('fills no gap, and passes over missing samples', () => {
    const time = [0, 0.1, 0.2, 0.3, 5, 5.1, 5.2];
    const got = resample(
      series('a', time, [1, Number.NaN, 3, 4, 5, 6, 7]),
      series('b', [0.1, 0.25, 2, 5.05], [0, 0, 0, 0]),
    );
    if (got.kind !== 'series') expect.fail(got.why);
    expect([...got.samples].map((each) => Math.round(each * 1e6) / 1e6)).toEqual([2, 3.5, Number.NaN, 5.5]);
  });

  it('carries the channel’s own ±', () => {
    const got = resample(series('a', [0, 1], [0, 1], 0.02), series('b', [0.5], [0]));
    if (got.kind !== 'series') expect.fail(got.why);
    expect(got.spread).toEqual([{ source: 'a V', by: 0.02 }]);
  });

  it('has no answer where the captures do not meet', () => {
    expect(why(resample(series('a', [0, 1], [0, 1]), series('b', [2, 3], [0, 1])))).toContain(
      'do not overlap',
    );
    expect(why(resample(series('a', [], []), series('b', [2, 3], [0, 1])))).toContain('no samples');
  });
});

describe('the least and the greatest sample', () => {
  it('are found wherever they stand', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 1, maxLength: 20 }), (values) => {
        expect(swingOf(Float64Array.from(values))).toEqual({
          low: Math.min(...values),
          high: Math.max(...values),
        });
      }),
    );
    expect(swingOf(Float64Array.of(Number.NaN, 3, 2, Number.NaN))).toEqual({ low: 2, high: 3 });
    expect(swingOf(Float64Array.of(Number.NaN)).low).toBeNaN();
  });
});

describe('samples to draw', () => {
  it('have every extreme, the ends, and no more than four a column', () => {
    const next = noise(9);
    const time = moments(10, 1000);
    const values = time.map(() => next());
    values[4321] = 7;
    values[1234] = -7;
    const drawn = decimate(time, values, 200);
    expect(drawn.samples.length).toBeLessThanOrEqual(800);
    expect(swingOf(drawn.samples)).toEqual({ low: -7, high: 7 });
    expect(drawn.time[0]).toBe(0);
    expect(drawn.time.at(-1)).toBe(10);
  });

  it('have the extremes, first and last of every column, in the order of time', () => {
    const next = noise(4);
    // Uneven steps on purpose.
    let t = 0;
    const time = Float64Array.from({ length: 5000 }, () => (t += 1 + next() * 0.9));
    const values = time.map(() => Math.round(20 * next()));
    const columns = 37;
    const drawn = decimate(time, values, columns);
    const first = time[0] ?? 0;
    const wide = ((time.at(-1) ?? 0) - first) / columns;
    const column = (at: number) => {
      let index = 0;
      while (index < columns - 1 && at >= first + (index + 1) * wide) index++;
      return index;
    };
    const grouped = (times: Float64Array, of: Float64Array) => {
      const groups = new Map<number, number[]>();
      for (const [i, each] of of.entries()) {
        const key = column(times[i] ?? 0);
        groups.set(key, [...(groups.get(key) ?? []), each]);
      }
      return [...groups].map(([key, each]) => [
        key,
        Math.min(...each),
        Math.max(...each),
        each[0],
        each.at(-1),
      ]);
    };
    expect(grouped(drawn.time, drawn.samples)).toEqual(grouped(time, values));
    for (let i = 1; i < drawn.time.length; i++)
      expect(drawn.time[i] ?? 0).toBeGreaterThan(drawn.time[i - 1] ?? 0);
  });

  it('of a short record are all of them; a dropout stays one', () => {
    const time = moments(1, 10);
    expect(decimate(time, time, 100)).toEqual({ time, samples: time });
    const long = moments(10, 100);
    const lost = long.map((t) => (t > 4 && t < 6 ? Number.NaN : t));
    const drawn = decimate(long, lost, 10);
    expect(drawn.samples.some(Number.isNaN)).toBe(true);
    expect(swingOf(drawn.samples)).toEqual({ low: 0, high: 10 });
  });

  it('of nothing are nothing', () => {
    const none = new Float64Array();
    expect(decimate(none, none, 10)).toEqual({ time: none, samples: none });
  });
});

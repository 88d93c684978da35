import fc from 'fast-check';
import { std } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { correlationOf, fitOf, lagOf } from '../../core/waveform/likeness.ts';
import { moments, noise, number, signal, why } from './signals.ts';

describe('correlation', () => {
  it('is the covariance over both deviations (mathjs for these), whatever the offset', () => {
    const values = fc.array(
      fc.tuple(fc.double({ min: -9, max: 9, noNaN: true }), fc.double({ min: -9, max: 9, noNaN: true })),
      { minLength: 3, maxLength: 30 },
    );
    fc.assert(
      fc.property(values, fc.integer({ min: -1000, max: 1000 }), (pairs, offset) => {
        const x = pairs.map(([a]) => a);
        const y = pairs.map(([, b]) => b);
        const [dx, dy] = [Number(std(...x)), Number(std(...y))];
        fc.pre(dx > 1e-3 && dy > 1e-3);
        const mean = (of: readonly number[]) => of.reduce((sum, each) => sum + each, 0) / of.length;
        const [mx, my] = [mean(x), mean(y)];
        const covariance =
          x.reduce((sum, each, i) => sum + (each - mx) * ((y[i] ?? 0) - my), 0) / (x.length - 1);
        const ours = number(
          correlationOf(
            Float64Array.from(x, (each) => each + offset),
            Float64Array.from(y),
          ),
        );
        expect(ours).toBeCloseTo(covariance / (dx * dy), 6);
      }),
    );
  });

  it('is 1 with itself, −1 with its opposite; of two sines 60° apart 0.5', () => {
    const time = moments(1, 1000).subarray(0, 1000);
    const x = signal(time, (t) => Math.sin(2 * Math.PI * 5 * t));
    const y = signal(time, (t) => Math.sin(2 * Math.PI * 5 * t + Math.PI / 3));
    expect(number(correlationOf(x, x))).toBeCloseTo(1, 12);
    expect(
      number(
        correlationOf(
          x,
          x.map((each) => 3 - each),
        ),
      ),
    ).toBeCloseTo(-1, 12);
    expect(number(correlationOf(x, y))).toBeCloseTo(0.5, 12);
  });

  it('leaves out pairs with a missing sample, and has none where one does not change', () => {
    const x = Float64Array.of(1, 2, Number.NaN, 3, 9);
    const y = Float64Array.of(2, 4, 5, 6, Number.NaN);
    expect(number(correlationOf(x, y))).toBeCloseTo(1, 12);
    expect(why(correlationOf(x, new Float64Array(5)))).toContain('does not change');
    expect(why(correlationOf(Float64Array.of(1), Float64Array.of(2)))).toContain('two samples');
  });
});

describe('lag', () => {
  it.each([-40, -7, 0, 7, 1, 99])('of y[i] = x[i − %i] is that', (shift) => {
    const next = noise(11);
    const long = Float64Array.from({ length: 700 }, next);
    const x = long.subarray(100, 500);
    const y = long.subarray(100 - shift, 500 - shift);
    expect(Math.abs(number(lagOf(x, y)) - shift)).toBeLessThan(0.02);
  });

  it('lies between the samples where it does: a hump 3.4 steps later', () => {
    const hump = (at: number) =>
      Float64Array.from({ length: 200 }, (_, i) => Math.exp(-(((i - at) / 12) ** 2)));
    expect(number(lagOf(hump(80), hump(83.4)))).toBeCloseTo(3.4, 1);
    expect(number(lagOf(hump(83.4), hump(80)))).toBeCloseTo(-3.4, 1);
  });

  it('of a sine an eighth of a cycle later is an eighth of a cycle, in noise too', () => {
    const next = noise(5);
    const time = moments(4, 400);
    const x = signal(time, (t) => Math.sin(2 * Math.PI * t) + 0.1 * next());
    const y = signal(time, (t) => 5 + 2 * Math.sin(2 * Math.PI * (t - 0.125)) + 0.1 * next());
    expect(Math.abs(number(lagOf(x, y)) / 400 - 0.125)).toBeLessThan(0.008);
  });

  it('turns its sign with its arguments', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 8, maxLength: 40 }), (levels) => {
        const x = Float64Array.from(levels, (each, i) => each + Math.sin(i * i));
        const y = Float64Array.from(levels.toReversed(), (each, i) => each + Math.cos(i * i));
        const there = lagOf(x, y);
        const back = lagOf(y, x);
        fc.pre(typeof there === 'number' && typeof back === 'number');
        expect(number(back)).toBeCloseTo(-number(there), 6);
      }),
    );
  });

  it('has no answer where nothing moves or too little was recorded', () => {
    expect(why(lagOf(new Float64Array(9), new Float64Array(9)))).toContain('does not change');
    expect(why(lagOf(Float64Array.of(1, 2, 3), Float64Array.of(1, 2, 3)))).toContain('at least four');
  });
});

describe('another lag that fits nearly as well', () => {
  const rivalOf = (x: Float64Array, y: Float64Array): number | undefined => {
    const fit = fitOf(x, y);
    if ('kind' in fit) throw new Error(fit.why);
    return fit.rival();
  };
  const time = moments(8, 100);
  const wave = (of: (t: number) => number, later: number, noisy: number, seed: number) => {
    const next = noise(seed);
    return signal(time, (t) => of(t - later) + noisy * next());
  };
  const sine = (t: number): number => Math.sin(2 * Math.PI * t);
  const switching = (t: number): number => (sine(t) > 0 ? 0.8 : 0.1);
  const pulses = (t: number): number => (t - Math.floor(t) < 0.1 ? 12 : 0);
  /** Its frequency goes from 0.5 to 4 Hz: no two cycles are alike. */
  const chirp = (t: number): number => Math.sin(2 * Math.PI * (0.5 * t + 0.22 * t * t));
  const step = (t: number): number => Math.tanh(3 * (t - 4));

  it.each([
    ['a sine', sine, 0],
    ['a sine in noise', sine, 0.2],
    ['a switching sensor', switching, 0.02],
    ['pulses', pulses, 0.5],
  ])('of %s is a whole cycle away', (_, of, noisy) => {
    for (const later of [0.05, 0.2, 0.4]) {
      const [x, y] = [wave(of, 0, noisy, 3), wave(of, later, noisy, 4)];
      const cycles = (((rivalOf(x, y) ?? Number.NaN) - number(lagOf(x, y))) / 100) % 1;
      expect(Math.min(Math.abs(cycles), 1 - Math.abs(cycles))).toBeLessThan(0.03);
    }
  });

  it.each([
    ['a rising frequency', chirp, 0],
    ['a rising frequency in noise', chirp, 0.2],
    ['a single step', step, 0],
    ['a single step in noise', step, 0.2],
    [
      'a sine with a change that does not repeat',
      (t: number) => 0.3 * sine(t) + 2 * Math.exp(-(((t - 4) / 0.15) ** 2)),
      0.02,
    ],
  ])('is none of %s', (_, of, noisy) => {
    for (const later of [0.05, 0.2, 0.4])
      expect(rivalOf(wave(of, 0, noisy, 5), wave(of, later, noisy, 6))).toBeUndefined();
  });

  it('is none of noise that is alike only at its own shift', () => {
    const next = noise(8);
    const long = Float64Array.from({ length: 700 }, next);
    expect(rivalOf(long.subarray(100, 500), long.subarray(93, 493))).toBeUndefined();
  });
});

import { describe, expect, it } from 'vitest';
import { normalFrom, randomFrom, scrambled } from '../support/signal/random.ts';
import { disturbed, sampled } from '../support/signal/signal.ts';

const mean = (values: Float64Array): number => values.reduce((sum, each) => sum + each, 0) / values.length;
function deviation(values: Float64Array): number {
  const middle = mean(values);
  return Math.sqrt(mean(values.map((each) => (each - middle) ** 2)));
}

describe('seeded numbers', () => {
  it('from the state 1, 2, 3, 4: rotl(2·5, 7)·9 = 11520, then 0 by hand, then 5927040 (value from memory)', () => {
    const next = scrambled(1, 2, 3, 4);
    expect([next(), next(), next()]).toEqual([11520, 0, 5927040]);
  });

  it('are the same for the same seed, and others for another', () => {
    const [a, b, c] = [randomFrom(7), randomFrom(7), randomFrom(8)];
    const first = [a(), a(), a()];
    expect([b(), b(), b()]).toEqual(first);
    expect([c(), c(), c()]).not.toEqual(first);
  });

  it('lie evenly between 0 and 1: mean 1/2, standard deviation 1/√12', () => {
    const all = Float64Array.from({ length: 100_000 }, randomFrom(3));
    expect(all.every((each) => each >= 0 && each < 1)).toBe(true);
    expect(mean(all)).toBeCloseTo(0.5, 2);
    expect(deviation(all)).toBeCloseTo(1 / Math.sqrt(12), 2);
  });

  it('of a normal distribution: 68.27 % within 1, 95.45 % within 2 standard deviations', () => {
    const all = Float64Array.from({ length: 100_000 }, normalFrom(randomFrom(5)));
    const within = (limit: number) => all.filter((each) => Math.abs(each) < limit).length / all.length;
    expect(mean(all)).toBeCloseTo(0, 1);
    expect(deviation(all)).toBeCloseTo(1, 1);
    expect(within(1)).toBeCloseTo(0.6827, 2);
    expect(within(2)).toBeCloseTo(0.9545, 2);
  });
});

describe('a disturbed signal', () => {
  const clean = sampled(10, 1000, (t) => 2 + t / 10);

  it('is the clean one where nothing disturbs it', () => {
    expect(disturbed(clean, {}, 1)).toEqual(clean);
  });

  it('carries noise of the given size about the clean one', () => {
    const { samples } = disturbed(clean, { noise: 0.2 }, 2);
    const error = samples.map((each, i) => each - (clean.samples[i] ?? 0));
    expect(mean(error)).toBeCloseTo(0, 1);
    expect(deviation(error)).toBeCloseTo(0.2, 2);
  });

  it('drifts, is rounded to steps, loses its share of samples', () => {
    expect(disturbed(clean, { drift: 0.5 }, 3).samples.at(-1)).toBeCloseTo(2 + 0.9999 + 0.5 * 9.999, 9);
    const steps = disturbed(clean, { step: 0.25 }, 4).samples;
    expect([...new Set(steps)]).toEqual([2, 2.25, 2.5, 2.75, 3]);
    const lost = disturbed(clean, { dropouts: 0.1 }, 5).samples.filter(Number.isNaN).length;
    expect(lost / clean.samples.length).toBeCloseTo(0.1, 2);
  });

  it('has a clock that jitters and never runs backwards', () => {
    const { time } = disturbed(clean, { jitter: 0.001 }, 6);
    expect(deviation(time.map((each, i) => each - (clean.time[i] ?? 0)))).toBeGreaterThan(0.0005);
    expect(time.every((each, i) => i === 0 || each >= (time[i - 1] ?? 0))).toBe(true);
  });
});

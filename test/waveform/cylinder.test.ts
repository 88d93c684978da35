import { describe, expect, it } from 'vitest';
import { halfWidth } from '../../core/quantity/amount.ts';
import { cornerIn } from '../../core/waveform/cylinder/corner.ts';
import { turnsBetween } from '../../core/waveform/cylinder/crankAngle.ts';
import { evenly } from '../../core/waveform/cylinder/evenly.ts';
import { leastSquares } from '../../core/waveform/cylinder/leastSquares.ts';
import { meanOfCycles } from '../../core/waveform/cylinder/spread.ts';
import { towersOf } from '../../core/waveform/cylinder/towers.ts';
import { normalFrom, randomFrom } from '../support/signal/random.ts';
import { sampled } from '../support/signal/signal.ts';
import { moments, record, signal, why } from './signals.ts';

describe('least squares', () => {
  it('of a straight line through 1 3 5 8: 0.8 + 2.3·x, explained 26.45 of 26.75 about the mean (by hand)', () => {
    const x = Float64Array.of(0, 1, 2, 3);
    const fit = leastSquares([x.map(() => 1), x], Float64Array.of(1, 3, 5, 8));
    expect(fit?.weights[0]).toBeCloseTo(0.8, 12);
    expect(fit?.weights[1]).toBeCloseTo(2.3, 12);
    const centred = leastSquares([x.map((each) => each - 1.5)], Float64Array.of(-3.25, -1.25, 0.75, 3.75));
    expect(centred?.explained).toBeCloseTo(26.45 / 26.75, 12);
  });

  it('has no answer where two columns are one', () => {
    const x = Float64Array.of(0, 1, 2, 3);
    expect(leastSquares([x, x.map((each) => 2 * each)], x)).toBeUndefined();
  });
});

describe('the mean of cycles', () => {
  it('9 10 11: 10 ± t(2)·1/√3, with Student’s t 4.30 at 95 % (JCGM 100:2008, table G.2)', () => {
    const mean = meanOfCycles([9, 10, 11], 'cycles');
    expect(mean.si).toBe(10);
    expect(halfWidth(mean)).toBeCloseTo(4.3 / Math.sqrt(3), 12);
  });

  it('of one cycle scatters by nothing that is known', () => {
    expect(meanOfCycles([9], 'cycles')).toEqual({ si: 9, spread: [] });
  });

  it('of many scatters as a normal distribution: 1.960 for ever more, 2.042 for 31 of them (tables)', () => {
    const many = Array.from({ length: 10_001 }, (_, i) => (i % 2 === 0 ? 1 : -1));
    expect(halfWidth(meanOfCycles(many, 'cycles')) * Math.sqrt(10_001)).toBeCloseTo(1.96, 2);
    const some = Array.from({ length: 31 }, (_, i) => (i % 2 === 0 ? 1 : -1));
    const deviation = Math.sqrt(some.reduce((sum, each) => sum + (each - 1 / 31) ** 2, 0) / 30);
    expect((halfWidth(meanOfCycles(some, 'c')) * Math.sqrt(31)) / deviation).toBeCloseTo(2.042, 2);
  });
});

describe('means over even steps', () => {
  it('are those of what falls into each; an empty one is bridged', () => {
    const out = evenly(Float64Array.of(0, 0.4, 1.2, 3.1, 3.9, 5), Float64Array.of(1, 3, 4, 8, 10, 0), 1);
    expect([...out]).toEqual([2, 4, 6.5, 9, 9]);
  });
});

describe('the crank between dead centres', () => {
  it('turns evenly at an even speed', () => {
    const turns = turnsBetween(Float64Array.of(-1, 0, 0.05, 0.1, 0.15, 0.2, 0.3), [0, 0.1, 0.2]);
    expect(turns[0]).toBeNaN();
    expect([...turns.slice(1, 6)].map((each) => Number(each.toFixed(12)))).toEqual([0, 1, 2, 3, 4]);
    expect(turns[6]).toBeNaN();
  });

  it('at a steadily growing speed follows turns = a·t + b·t² to a hundredth of a degree', () => {
    const [a, b] = [12, 5];
    const top = (k: number) => (-a + Math.sqrt(a * a + 8 * b * k)) / (2 * b);
    const tops = [0, 1, 2, 3, 4].map(top);
    const time = moments(top(4), 5000);
    turnsBetween(time, tops).forEach((each, i) => {
      const t = time[i] ?? 0;
      if (!Number.isNaN(each)) expect(Math.abs(each - (a * t + b * t * t)) * 360).toBeLessThan(1.5);
    });
  });

  it('between two only goes straight', () => {
    expect(turnsBetween(Float64Array.of(0.05), [0, 0.1])[0]).toBeCloseTo(1, 12);
  });
});

/** A tower of 1000 every 0.15 s, the first at 0.1 s: 8° wide at half height if a cycle is 720°. */
const tower = (t: number): number => {
  const phase = ((t - 0.1) / 0.15 - Math.round((t - 0.1) / 0.15)) * 720;
  return 1000 * Math.exp(-((phase / 40) ** 2));
};

describe('compression towers', () => {
  it('have their tops between the samples, in noise too', () => {
    const noise = normalFrom(randomFrom(1));
    const { time, samples } = sampled(1, 2017, (t) => tower(t) + 10 * noise());
    const towers = towersOf(record(time, samples));
    if ('kind' in towers) expect.fail(towers.why);
    expect(towers.tops).toHaveLength(6);
    // A tenth of a degree is 21 µs here.
    for (const [k, top] of towers.tops.entries()) expect(Math.abs(top - 0.1 - 0.15 * k)).toBeLessThan(2e-4);
  });

  const time = moments(2, 2000);
  it.each([
    ['a sine', signal(time, (t) => Math.sin(2 * Math.PI * 7 * t)), /as broad as its valleys/],
    ['a flat line', signal(time, () => 5), /does not change/],
    ['a step', signal(time, (t) => (t > 1 ? 1 : 0)), /fewer than two/],
    [
      'a tower alone',
      signal(time, (t) => (Math.abs(t - 1) < 0.07 ? tower(t + 0.1 - 1) : 0)),
      /fewer than two/,
    ],
    [
      'a missing tower',
      signal(time, (t) => (Math.abs(t - 0.85) < 0.07 ? 0 : tower(t))),
      /do not follow each other/,
    ],
  ])('%s has none, with a reason', (_, samples, reason) => {
    expect(why(towersOf(record(time, samples)))).toMatch(reason);
  });
});

describe('a corner', () => {
  const flatThenSquare = (at: number) =>
    Float64Array.from({ length: 100 }, (_, i) => 3 + 0.1 * i + (i > at ? 0.05 * (i - at) ** 2 : 0));

  it.each([30, 50, 61.5])('at %d is found where a curve turns off with the square', (at) => {
    const found = cornerIn(flatThenSquare(at), 0, 100, { degree: 1, powers: [2] });
    expect(Math.abs((found?.at ?? 0) - at)).toBeLessThan(0.3);
  });

  it('of a straight line is nowhere in particular, and of too few samples not asked for', () => {
    expect(cornerIn(flatThenSquare(50), 0, 10, { degree: 1, powers: [2] })).toBeUndefined();
  });
});

import { describe, expect, it } from 'vitest';
import { crankingVoltage } from '../../../core/waveform/electrical/crankingVoltage.ts';
import { rippleOf } from '../../../core/waveform/electrical/ripple.ts';
import { type Cranking, crankingVolts, rectified } from '../../support/signal/electricalSignals.ts';
import { type Disturbance, disturbed, sampled } from '../../support/signal/signal.ts';
import { number, record } from '../signals.ts';

describe('charging ripple', () => {
  const grid = [150, 300, 700].flatMap((electrical) =>
    [0.05, 0.15, 0.4].flatMap((ripple) =>
      [0, 0.1].map((noise) => ({ electrical, ripple, noise: noise * ripple })),
    ),
  );
  it.each(grid)(
    '$electrical electrical turns a second, $ripple V, noise $noise V',
    ({ electrical, ripple, noise }) => {
      const { time, samples } = disturbed(
        rectified({ mean: 14.1, ripple, electrical }, 0.2, 100_000),
        { noise, step: 0.002 },
        3,
      );
      const found = rippleOf(record(time, samples), 20, 20_000);
      if ('kind' in found) expect.fail(found.why);
      expect(Math.abs(found.frequency / (6 * electrical) - 1)).toBeLessThan(0.001);
      expect(Math.abs(found.height / ripple - 1)).toBeLessThan(0.15);
      // The mean of the greatest of six cosines is (6/π)·sin 30°; 14.1 V is the middle between top and bottom.
      const whole = 1 - Math.cos(Math.PI / 6);
      expect(found.mean).toBeCloseTo(14.1 + (ripple * (3 / Math.PI - 1 + whole / 2)) / whole, 2);
    },
  );

  it.each([1, 2])(
    '%i phases missing: the rhythm is that of one electrical turn, and the ripple is higher',
    (missing) => {
      const { time, samples } = disturbed(
        rectified({ mean: 14.1, ripple: 0.15, electrical: 300, missing }, 0.2, 50_000),
        { noise: 0.01 },
        3,
      );
      const found = rippleOf(record(time, samples), 20, 20_000);
      if ('kind' in found) expect.fail(found.why);
      expect(found.frequency).toBeCloseTo(300, 0);
      expect(found.height).toBeGreaterThan(2 * 0.15);
    },
  );

  it('a sine of known height: 2a', () => {
    const { time, samples } = sampled(0.2, 50_000, (t) => 14 + 0.1 * Math.sin(2 * Math.PI * 777 * t));
    const found = rippleOf(record(time, samples), 20, 20_000);
    if ('kind' in found) expect.fail(found.why);
    expect(found.frequency).toBeCloseTo(777, 1);
    // A phase bin of a twenty-fourth of a turn rounds the top off by 1 − sinc(π/24) and its place by up to half a bin.
    expect(found.height).toBeGreaterThan(0.198);
    expect(found.height).toBeLessThanOrEqual(0.2);
  });

  it.each([
    [
      'fewer than eight humps',
      sampled(0.005, 50_000, (t) => Math.sin(2 * Math.PI * 700 * t)),
      /fewer than eight|no rhythm/,
    ],
    ['a level', sampled(0.1, 50_000, () => 14), /no rhythm/],
    ['two samples', sampled(0.02, 100, (t) => t), /sparse|no rhythm|humps/],
  ])('%s', (_, { time, samples }, why) => {
    expect(rippleOf(record(time, samples), 20, 20_000)).toMatchObject({ why: expect.stringMatching(why) });
  });

  it('a gap', () => {
    const one = sampled(0.1, 10_000, (t) => Math.sin(2 * Math.PI * 500 * t));
    const time = [...one.time, ...one.time.map((t) => t + 1)];
    expect(rippleOf(record(time, [...one.samples, ...one.samples]), 20, 20_000)).toMatchObject({
      why: expect.stringMatching(/gap/),
    });
  });
});

describe('a start', () => {
  const usual: Cranking = {
    rest: 12.6,
    dip: 8.2,
    turning: 10.4,
    pulse: 0.3,
    perSecond: 8,
    seconds: 1.1,
    after: 14,
  };
  const disturbances: Disturbance[] = [
    {},
    { noise: 0.02, step: 0.01 },
    { noise: 0.05, step: 0.05, dropouts: 0.01, jitter: 1e-4 },
  ];
  const grid = [8, 9.2, 10.4, 11].flatMap((turning) =>
    [0.7, 1.5, 3].flatMap((seconds) => disturbances.map((by) => ({ turning, seconds, by }))),
  );
  it.each(grid)('turning at $turning V for $seconds s, $by', ({ turning, seconds, by }) => {
    const of = { ...usual, turning, seconds, dip: Math.min(usual.dip, turning - 1.2) };
    for (let seed = 1; seed <= 3; seed++) {
      const { time, samples } = disturbed(crankingVolts(of, 1000, seed), by, seed);
      const found = crankingVoltage(record(time, samples));
      if ('kind' in found) expect.fail(found.why);
      const noise = 4 * (by.noise ?? 0) + (by.step ?? 0);
      expect(Math.abs(found.rest - 12.6)).toBeLessThan(0.01 + noise / 4);
      // The first sample after the dip lies on the way up already.
      expect(Math.abs(found.dip - of.dip)).toBeLessThan(0.1 + noise);
      expect(Math.abs(number(found.minimum) - (turning - 0.3))).toBeLessThan(0.06 + noise);
      expect(Math.abs(number(found.mean) - turning)).toBeLessThan(0.06 + noise / 4);
      expect(Math.abs(found.time - seconds)).toBeLessThan(0.05);
      expect(Math.abs(number(found.after) - 14)).toBeLessThan(0.03 + noise / 4);
    }
  });

  it('no start, one sample, a start that is over at once', () => {
    const time = [...Array(100).keys()].map((i) => i / 100);
    expect(
      crankingVoltage(
        record(
          time,
          time.map(() => 12.6),
        ),
      ),
    ).toMatchObject({ why: expect.stringMatching(/does not fall/) });
    expect(crankingVoltage(record([0], [12.6]))).toMatchObject({ kind: 'absent' });
    const blip = crankingVoltage(
      record(
        time,
        time.map((t) => (t > 0.5 && t < 0.6 ? 9 : 12.6)),
      ),
    );
    if ('kind' in blip) expect.fail(blip.why);
    expect(blip.minimum).toMatchObject({ why: expect.stringMatching(/long enough/) });
  });
});

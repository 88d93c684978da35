import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcLength } from '../../../core/waveform/oxygen/arcLength.ts';
import { type CatalystReading, catalystReading } from '../../../core/waveform/oxygen/catalyst.ts';
import { rearSensor, switchingSensor } from '../../support/signal/oxygenSignals.ts';
import { disturbed, type Signal, sampled } from '../../support/signal/signal.ts';
import { number, record, switching } from '../signals.ts';

const limits = { level: 0.45, noise: 0.02, mirrorRatio: 0.7, mirrorCorrelation: 0.7 };

function read(front: Signal, rear: Signal): CatalystReading {
  return catalystReading(record(front.time, front.samples), record(rear.time, rear.samples), limits);
}

/** A front that switches unevenly, as a driven car's does: two rhythms that do not repeat in the record. */
const uneven = (t: number): number =>
  0.45 + 0.38 * Math.tanh(3 * (Math.sin(2 * Math.PI * 0.9 * t) + 0.5 * Math.sin(2 * Math.PI * 0.37 * t)));

describe('front and rear', () => {
  // Check values: 0.8 V against 0.08 V is 0.100; the same is 1; flat is 0; 40 switches against 2 is 0.05.
  it.each([
    [0.1, 0.1],
    [1, 1],
    [0, 0],
  ])('a rear with %f of the swing', (share, ratio) => {
    const front = sampled(20, 200, (t) => 0.45 + 0.4 * Math.sin(2 * Math.PI * t));
    const rear = rearSensor((t) => 0.45 + 0.4 * Math.sin(2 * Math.PI * t), { share, delay: 0 }, 20, 200);
    expect(number(read(front, rear).ratio)).toBeCloseTo(ratio, 9);
  });

  it('switches are counted beside it', () => {
    const front = sampled(20, 200, (t) => 0.45 + 0.4 * Math.cos(2 * Math.PI * t));
    const rear = sampled(20, 200, (t) => 0.45 + 0.4 * Math.cos((2 * Math.PI * t) / 20 + 0.5));
    const found = read(front, rear);
    expect([found.frontSwitches, found.rearSwitches]).toEqual([40, 2]);
    expect(number(found.switchRatio)).toBe(0.05);
  });

  const grid = [0.3, 0.5, 0.7, 0.9].flatMap((share) =>
    [0.05, 0.15, 0.4, 0.8].map((delay) => ({ share, delay })),
  );
  it.each(grid)(
    'a rear with $share of the swing, $delay s late: lag, likeness, ratio',
    ({ share, delay }) => {
      for (const noise of [0, 0.01, 0.02]) {
        const front = disturbed(sampled(30, 100, uneven), { noise, step: 0.005 }, 5);
        const rear = disturbed(
          rearSensor(uneven, { share, delay, held: 0.45 }, 30, 100),
          { noise, step: 0.005 },
          6,
        );
        const found = read(front, rear);
        expect(Math.abs(number(found.lag) - delay)).toBeLessThan(0.005);
        expect(number(found.correlation)).toBeGreaterThan(0.9);
        // Steps of 5 mV round both ends of both swings of 0.76 V, and noise widens them.
        expect(Math.abs(number(found.ratio) - share)).toBeLessThan((2 * 0.005) / 0.76 + 8 * noise);
        if (Math.abs(share - limits.mirrorRatio) > 0.16)
          expect(found.mirrors).toBe(share > limits.mirrorRatio);
      }
    },
  );

  it('a rear that swings as far in a rhythm of its own does not mirror', () => {
    const other = (t: number): number => 0.45 + 0.38 * Math.sin(2 * Math.PI * 0.11 * t * (1 + 0.02 * t));
    const found = read(sampled(40, 50, uneven), sampled(40, 50, other));
    expect(number(found.ratio)).toBeGreaterThan(0.7);
    expect(found.mirrors).toBe(false);
  });

  it('a flat rear mirrors nothing, and has no lag', () => {
    const found = read(
      sampled(20, 50, uneven),
      sampled(20, 50, () => 0.7),
    );
    expect(found).toMatchObject({ ratio: 0, rearArc: 0, mirrors: false });
    expect(found.lag).toMatchObject({ kind: 'absent' });
  });

  it('a flat front says nothing about the catalyst', () => {
    const found = read(
      sampled(20, 50, () => 0.7),
      sampled(20, 50, uneven),
    );
    for (const each of [found.ratio, found.mirrors, found.switchRatio, found.arcRatio])
      expect(each).toMatchObject({ kind: 'absent', why: expect.stringMatching(/front sensor does not/) });
  });

  it('the lag of a rear that is later is found, not that of the cycle before', () => {
    const of = { period: 1, rich: 0.5, toRich: 0.04, toLean: 0.04 };
    const front = switchingSensor(of, 30, 100);
    const rear = { ...front, samples: front.samples.map((_, i) => front.samples[Math.max(0, i - 70)] ?? 0) };
    expect(number(read(front, rear).lag)).toBeCloseTo(0.7, 2);
  });

  it('a gap, and too few samples, are said', () => {
    const front = record([0, 0.1, 0.2, 0.3, 9, 9.1, 9.2, 9.3, 9.4], [0, 1, 0, 1, 0, 1, 0, 1, 0]);
    expect(catalystReading(front, front, limits).lag).toMatchObject({ why: expect.stringMatching(/gap/) });
    const short = record([0, 0.1, 0.2], [0, 1, 0]);
    expect(catalystReading(short, short, limits).lag).toMatchObject({ why: expect.stringMatching(/eight/) });
  });
});

describe('the arc', () => {
  // A sine of amplitude a goes 4a a cycle.
  it.each([0.1, 0.35, 0.4])('of ten cycles of a sine of %f V is forty times that', (a) => {
    const { samples } = sampled(10, 1000, (t) => 0.45 + a * Math.cos(2 * Math.PI * t));
    expect(arcLength(samples, 0.02)).toBeCloseTo(40 * a, 2);
    expect(arcLength(samples, 0)).toBeCloseTo(40 * a, 2);
  });

  it('without a dead band is the sum of all steps', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1 }), (list) => {
        const sum = list.slice(1).reduce((way, each, i) => way + Math.abs(each - (list[i] ?? 0)), 0);
        expect(arcLength(Float64Array.from(list), 0)).toBeCloseTo(sum, 9);
      }),
    );
  });

  it('with one passes over noise and over samples that are missing', () => {
    const clean = sampled(10, 200, switching(1));
    const noisy = disturbed(clean, { noise: 0.003, dropouts: 0.02 }, 2).samples;
    // Truth is 14 V; without a dead band noise adds to it wherever the sine is flat.
    expect(arcLength(noisy, 0)).toBeGreaterThan(15);
    expect(arcLength(noisy, 0.03)).toBeGreaterThan(13.8);
    expect(arcLength(noisy, 0.03)).toBeLessThan(14.3);
    expect(arcLength(Float64Array.of(Number.NaN), 0.02)).toBe(0);
  });

  it.each([8, 13])('of a sensor is the same turned over (%i)', (seed) => {
    const { samples } = disturbed(sampled(4, 100, switching(1.3)), { noise: 0.05 }, seed);
    expect(
      arcLength(
        samples.map((v) => 1 - v),
        0.05,
      ),
    ).toBeCloseTo(arcLength(samples, 0.05), 9);
  });
});

describe('the arc ratio in noise', () => {
  /** Both switch unevenly between samples of a slow log or a fast one. */
  const uneven = (t: number): number =>
    0.45 + 0.38 * Math.tanh(3 * (Math.sin(2 * Math.PI * 0.9 * t) + 0.5 * Math.sin(2 * Math.PI * 0.37 * t)));
  const ratioOf = (rate: number, share: number, noise: number, seed: number): number => {
    const of = (level: (t: number) => number, more: number) => {
      const { time, samples } = disturbed(sampled(60, rate, level), { noise }, seed + more);
      return record([...time], [...samples]);
    };
    const found = catalystReading(
      of(uneven, 0),
      of((t) => 0.65 + share * (uneven(t - 0.15) - 0.45), 9),
      limits,
    );
    return typeof found.arcRatio === 'number' ? found.arcRatio : Number.NaN;
  };

  it.each([0.005, 0.01, 0.02])('of a fast record is the share of the swing, in %f V of noise', (noise) => {
    for (const share of [0.3, 0.6, 0.9])
      for (const seed of [21, 22, 23])
        expect(Math.abs(ratioOf(100, share, noise, seed) - share)).toBeLessThan(0.1);
  });

  it.each([2, 4, 5, 8, 10])('of a slow log (%i samples a second) is not taken for noise', (rate) => {
    for (const share of [0.3, 0.9])
      expect(Math.abs(ratioOf(rate, share, 0.001, 31) - share)).toBeLessThan(0.05);
  });
});

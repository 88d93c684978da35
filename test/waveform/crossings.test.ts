import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossingsOf, risingOf } from '../../core/waveform/crossings.ts';
import {
  countCrossings,
  dutyOf,
  frequencyOf,
  periodOf,
  shareAbove,
  switchRate,
} from '../../core/waveform/cycles.ts';
import { isRecorded, recorded } from '../../core/waveform/recorded.ts';
import { moments, noise, number, record, signal, switching, why } from './signals.ts';

const places = (samples: readonly number[]) => samples.map((_, i) => i);

describe('crossings', () => {
  const zigzag = [0.1, 0.7, 0.5, 0.65, 0.2, 0.5, 0.25, 0.7];

  it('with a band of 0.3 to 0.6 V are 2 rising and 1 falling (counted by hand)', () => {
    const [stretch] = crossingsOf(record(places(zigzag), zigzag), 0.45, 0.3);
    expect(stretch?.times).toHaveLength(3);
    expect(stretch && risingOf(stretch)).toHaveLength(2);
  });

  it('of 0.45 V without a band are 3 rising and 2 falling (counted by hand)', () => {
    const [stretch] = crossingsOf(record(places(zigzag), zigzag), 0.45, 0);
    expect(stretch?.times).toHaveLength(5);
    expect(stretch && risingOf(stretch)).toHaveLength(3);
  });

  it('stand where the line between the samples passes: 0.45 V between 0.1 V at 0 and 0.8 V at 10 ms is at 5 ms', () => {
    const [stretch] = crossingsOf(record([0, 0.01], [0.1, 0.8]), 0.45, 0);
    expect(stretch?.times[0]).toBeCloseTo(0.005, 12);
  });

  it('count a slow edge with a dip once, at its last passage of the level', () => {
    const samples = [0, 0.5, 0.4, 0.5, 1];
    const [stretch] = crossingsOf(record(places(samples), samples), 0.45, 0.6);
    expect(stretch?.times).toEqual([2.5]);
  });

  it('touching the level is none', () => {
    const samples = [0, 0.45, 0, 0.45, 0.2];
    expect(countCrossings(record(places(samples), samples), 0.45, 0)).toBe(0);
  });

  it('agree with the definition on any samples', () => {
    const values = fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(values, fc.integer({ min: 0, max: 6 }), (samples, band) => {
        // Which side each sample is on; inside the band, the side before.
        let side = 0;
        let changes = 0;
        for (const each of samples) {
          const next = each > 4.5 + band / 2 ? 1 : each < 4.5 - band / 2 ? -1 : side;
          if (side !== 0 && next !== side) changes++;
          side = next;
        }
        expect(countCrossings(record(places(samples), samples), 4.5, band)).toBe(changes);
      }),
    );
  });

  it('lie between the samples that they separate, in order', () => {
    const values = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 2, maxLength: 40 });
    fc.assert(
      fc.property(values, (samples) => {
        const [stretch] = crossingsOf(record(places(samples), samples), 0.5, 0.2);
        const times = stretch?.times ?? [];
        for (const [at, time] of times.entries()) {
          expect(time).toBeGreaterThan(times[at - 1] ?? -1);
          expect(time).toBeLessThanOrEqual(samples.length - 1);
        }
      }),
    );
  });

  it('a hysteresis below 0 is refused', () => {
    expect(why(countCrossings(record([0, 1], [0, 1]), 0.5, -1))).toContain('not below 0');
  });
});

describe('a front sensor that swings as a sine', () => {
  // Analytic: v = 0.45 + 0.35·sin(2πft) crosses 0.45 V twice a cycle and is above it half of the time.
  it.each([0.5, 1, 2, 3.7])('of %f Hz', (frequency) => {
    const time = moments(20, 500);
    const of = record(time, signal(time, switching(frequency)));
    expect(number(periodOf(of))).toBeCloseTo(1 / frequency, 5);
    expect(number(frequencyOf(of))).toBeCloseTo(frequency, 4);
    expect(number(dutyOf(of, 0.45))).toBeCloseTo(0.5, 4);
    expect(Math.abs(number(switchRate(of, 0.45, 0.3)) - 2 * frequency)).toBeLessThanOrEqual(1 / 20 + 1e-9);
  });

  // Analytic: above v0 for acos((v0 − 0.45)/0.35)/π of the time.
  it.each([0.2, 0.3, 0.6, 0.75])('is above %f V for acos((v − 0.45)/0.35)/π of the time', (level) => {
    const time = moments(10, 1000);
    const of = record(time, signal(time, switching(1)));
    const share = Math.acos((level - 0.45) / 0.35) / Math.PI;
    expect(number(dutyOf(of, level))).toBeCloseTo(share, 4);
    expect(number(shareAbove(of, level))).toBeCloseTo(share, 4);
  });

  it('with noise of a twentieth of its swing keeps its frequency and its count', () => {
    const next = noise(7);
    const time = moments(20, 500);
    const of = record(
      time,
      signal(time, (t) => switching(1)(t) + 0.035 * next()),
    );
    expect(number(frequencyOf(of))).toBeCloseTo(1, 2);
    expect(countCrossings(of, 0.45, 0.3)).toBe(39);
    expect(number(countCrossings(of, 0.45, 0))).toBeGreaterThan(39);
  });
});

describe('duty of a square wave', () => {
  it.each([0.05, 0.35, 0.5, 0.95])('of %f', (duty) => {
    const time = moments(3, 10000);
    const of = record(
      time,
      signal(time, (t) => ((t * 10 + 0.3) % 1 < duty ? 12 : 0)),
    );
    expect(number(dutyOf(of, 6))).toBeCloseTo(duty, 3);
    expect(number(dutyOf(of, undefined))).toBeCloseTo(duty, 3);
    expect(number(dutyOf(of, 11.9))).toBeCloseTo(duty, 2);
  });

  it('outside its swing has no level, and of less than a cycle no share', () => {
    const of = record([0, 1, 2, 3], [0, 12, 12, 0]);
    expect(why(dutyOf(of, 12))).toContain('never crossed');
    expect(why(dutyOf(of, -1))).toContain('never crossed');
    expect(why(dutyOf(of, 6))).toContain('no whole cycle');
  });
});

describe('a record with gaps', () => {
  const time = moments(10, 100);
  const kept = (t: number) => t <= 3.2 || t >= 6.7;

  it('is counted and timed without them', () => {
    const inside = [...time].filter(kept);
    const of = record(inside, inside.map(switching(1)));
    expect(of.starts).toHaveLength(2);
    expect(of.duration).toBeCloseTo(6.5, 9);
    expect(number(periodOf(of))).toBeCloseTo(1, 3);
    // Falls at 0.5 1.5 2.5, rises at 1 2 3; then, after 6.7, rises at 7 8 9 and falls at 7.5 8.5 9.5.
    expect(countCrossings(of, 0.45, 0.3)).toBe(12);
    expect(number(switchRate(of, 0.45, 0.3))).toBeCloseTo(12 / 6.5, 9);
    expect(number(shareAbove(of, 0.45))).toBeCloseTo((1.5 + 0.2 + 1.5) / 6.5, 2);
  });

  it('passes over missing samples', () => {
    const samples = signal(time, (t) => (Math.round(t * 100) % 4 === 1 ? Number.NaN : switching(1)(t)));
    const of = record(time, samples);
    expect(of.samples.some(Number.isNaN)).toBe(false);
    expect(of.starts).toHaveLength(1);
    expect(number(periodOf(of))).toBeCloseTo(1, 3);
  });

  it('takes a slow channel among fast ones as one stretch', () => {
    const samples = signal(time, (t) => (Math.round(t * 100) % 10 === 0 ? switching(0.5)(t) : Number.NaN));
    const of = record(time, samples);
    expect(of.starts).toEqual([0]);
    expect(of.step).toBeCloseTo(0.1, 9);
    expect(number(frequencyOf(of))).toBeCloseTo(0.5, 2);
  });

  it('keeps samples that share a moment, and refuses a time that runs backwards', () => {
    expect(record([0, 1, 1, 2, 3], [1, 2, 3, 4, 5]).duration).toBe(3);
    const back = recorded({ time: Float64Array.of(0, 2, 1), samples: Float64Array.of(1, 2, 3) });
    expect(isRecorded(back)).toBe(false);
    expect(why(back)).toContain('runs backwards');
  });
});

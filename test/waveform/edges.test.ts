import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fallTime, riseTime } from '../../core/waveform/edges.ts';
import { moments, number, record, signal, switching, why } from './signals.ts';

describe('the time between two levels', () => {
  // Analytic: 2·asin(0.15/0.35)/(2πf) from 0.3 to 0.6 V of v = 0.45 + 0.35·sin(2πft).
  it.each([
    [1, 0.140983],
    [2, 0.070491],
  ])('of a sine of %f Hz is %f s', (frequency, seconds) => {
    const time = moments(10, 2000);
    const of = record(time, signal(time, switching(frequency)));
    expect((2 * Math.asin(0.15 / 0.35)) / (2 * Math.PI * frequency)).toBeCloseTo(seconds, 6);
    expect(number(riseTime(of, 0.3, 0.6))).toBeCloseTo(seconds, 5);
    expect(number(fallTime(of, 0.6, 0.3))).toBeCloseTo(seconds, 5);
  });

  it('of a straight ramp is its share of the ramp', () => {
    const time = moments(4, 1000);
    // Up in 0.4 s, down in 1.6 s, once in 2 s.
    const of = record(
      time,
      signal(time, (t) => (t % 2 < 0.4 ? (t % 2) / 0.4 : 1 - ((t % 2) - 0.4) / 1.6)),
    );
    expect(number(riseTime(of, 0.25, 0.75))).toBeCloseTo(0.2, 9);
    expect(number(fallTime(of, 0.75, 0.25))).toBeCloseTo(0.8, 9);
  });

  it('falling is rising of the signal turned over', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 2, maxLength: 60 }),
        (samples) => {
          const time = samples.map((_, i) => i);
          const rise = riseTime(record(time, samples), 0.3, 0.6);
          const fall = fallTime(
            record(
              time,
              samples.map((each) => -each),
            ),
            -0.3,
            -0.6,
          );
          expect(typeof fall).toBe(typeof rise);
          if (typeof rise === 'number') expect(number(fall)).toBeCloseTo(rise, 9);
        },
      ),
    );
  });

  it('an edge that turns back before the upper level is none', () => {
    const samples = [0, 0.5, 0.1, 0.4, 0.5, 1];
    expect(number(riseTime(record([0, 1, 2, 3, 4, 5], samples), 0.3, 0.8))).toBeCloseTo(4.6 - (2 + 2 / 3), 9);
  });

  it('names what is wrong', () => {
    const square = record([0, 1, 2, 3], [0, 1, 0, 1]);
    expect(why(riseTime(square, 0.3, 0.6))).toContain('recorded too slowly');
    expect(why(riseTime(square, 0.6, 0.3))).toContain('below the upper one');
    expect(why(riseTime(square, 0.3, 1.2))).toContain('no edge passes both levels');
    expect(why(fallTime(record([0, 1], [0, 1]), 0.6, 0.3))).toContain('no edge');
  });
});

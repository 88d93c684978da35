import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossingsOf } from '../../../core/waveform/crossings.ts';
import { shareAbove } from '../../../core/waveform/cycles.ts';
import { fallTime, riseTime } from '../../../core/waveform/edges.ts';
import { switchingOf } from '../../../core/waveform/oxygen/switching.ts';
import { swingOf } from '../../../core/waveform/recorded.ts';
import { number, record } from '../signals.ts';

/** Steps of random length and height; a long pause makes a gap. */
const walks = fc.array(
  fc.record({
    wait: fc.oneof(fc.double({ min: 0.01, max: 0.04, noNaN: true }), fc.constant(0.02), fc.constant(3)),
    volts: fc.double({ min: -0.1, max: 1.1, noNaN: true }),
  }),
  { minLength: 2, maxLength: 120 },
);

describe('one pass over a switching sensor', () => {
  it('finds what the single readings find, each with a pass of its own', () => {
    fc.assert(
      fc.property(walks, (walk) => {
        let now = 0;
        const of = record(
          walk.map(({ wait }) => (now += wait)),
          walk.map(({ volts }) => volts),
        );
        const found = switchingOf(of, { level: 0.45, low: 0.3, high: 0.6 });
        if ('kind' in found) expect.fail(found.why);
        const crossed = crossingsOf(of, 0.45, 0.3).reduce((sum, { times }) => sum + times.length, 0);
        expect(found.switches).toBe(crossed);
        const { low, high } = swingOf(of.samples);
        expect([found.minimum, found.maximum]).toEqual([low, high]);
        if (of.duration > 0) expect(found.above / of.duration).toBeCloseTo(number(shareAbove(of, 0.45)), 9);
        for (const [one, other] of [
          [found.rise, riseTime(of, 0.3, 0.6)],
          [found.fall, fallTime(of, 0.6, 0.3)],
        ]) {
          expect(typeof one).toBe(typeof other);
          if (typeof one === 'number' && other !== undefined) expect(one).toBeCloseTo(number(other), 9);
        }
      }),
    );
  });

  // Check values: [0.1,0.7,0.5,0.65,0.2,0.5,0.25,0.7] with 0.3/0.6 rises twice and falls once.
  it('counts with hysteresis', () => {
    const of = record([0, 1, 2, 3, 4, 5, 6, 7], [0.1, 0.7, 0.5, 0.65, 0.2, 0.5, 0.25, 0.7]);
    expect(switchingOf(of, { level: 0.45, low: 0.3, high: 0.6 })).toMatchObject({ switches: 3 });
  });
});

import { describe, expect, it } from 'vitest';
import { humpsPerTurn, pumpCurrent } from '../../../core/waveform/electrical/pumpCurrent.ts';
import { pumpCurrent as pump } from '../../support/signal/electricalSignals.ts';
import { disturbed } from '../../support/signal/signal.ts';
import { number, record } from '../signals.ts';

function read(
  of: Parameters<typeof pump>[0],
  bars: number,
  noise = 0,
  seed = 1,
  seconds = 0.5,
  perSecond = 20_000,
) {
  const { time, samples } = disturbed(pump(of, seconds, perSecond), { noise, step: 0.01 }, seed);
  const found = pumpCurrent(record(time, samples), bars);
  if ('kind' in found) expect.fail(found.why);
  return found;
}

describe('a fuel pump’s current', () => {
  const grid = [3000, 4500, 5400, 6600].flatMap((rpm) =>
    [8, 10, 7].flatMap((bars) => [0, 0.05, 0.15].map((noise) => ({ rpm, bars, noise }))),
  );
  it.each(grid)('$rpm rpm, $bars bars, noise $noise A on humps of 0.6 A', ({ rpm, bars, noise }) => {
    const humps = humpsPerTurn(bars);
    const found = read({ mean: 5, ripple: 0.6, speed: rpm / 60, humps }, bars, noise);
    expect(Math.abs(found.speed * 60 - rpm)).toBeLessThan(rpm / 2000);
    expect(found.mean).toBeCloseTo(5, 1);
    // The tops and bottoms of the mean of 24 humps: a phase bin rounds them off, noise of a fifth of σ lifts them.
    expect(Math.abs(found.ripple - 0.6)).toBeLessThan(0.13 + noise / 2);
  });

  it.each([0.2, 0.5, 0.8])('one bar that gives %f of a hump', (height) => {
    const bars = [1, 1, height, 1, 1, 1, 1, 1];
    const found = read({ mean: 5, ripple: 0.6, speed: 87.3, humps: 8, bars }, 8, 0.03);
    const truth = height / ((7 + height) / 8);
    expect(Math.abs(number(found.weakest) - truth)).toBeLessThan(0.1);
  });

  it('of a sound pump no bar is weak', () => {
    expect(number(read({ mean: 5, ripple: 0.6, speed: 87.3, humps: 8 }, 8, 0.03).weakest)).toBeGreaterThan(
      0.93,
    );
  });

  it('an odd number of bars gives two humps each', () => {
    expect([humpsPerTurn(8), humpsPerTurn(7), humpsPerTurn(12)]).toEqual([8, 14, 12]);
  });
});

describe('bad input', () => {
  const noise = disturbed(pump({ mean: 5, ripple: 0, speed: 90, humps: 8 }, 0.5, 20_000), { noise: 0.1 }, 3);
  const slow = pump({ mean: 5, ripple: 0.6, speed: 90, humps: 8 }, 5, 100);
  it.each([
    ['noise only', noise, 8, /no rhythm/],
    ['too slow a record', slow, 8, /too sparse/],
    ['half a bar', noise, 7.5, /whole number of bars/],
    ['one sample', { time: Float64Array.of(0), samples: Float64Array.of(5) }, 8, /two moments/],
  ])('%s', (_, signal, bars, why) => {
    expect(pumpCurrent(record(signal.time, signal.samples), bars)).toMatchObject({
      kind: 'absent',
      why: expect.stringMatching(why),
    });
  });

  it('all equal', () => {
    const { time, samples } = pump({ mean: 5, ripple: 0, speed: 90, humps: 8 }, 0.5, 20_000);
    expect(pumpCurrent(record(time, samples), 8)).toMatchObject({ kind: 'absent' });
  });
});

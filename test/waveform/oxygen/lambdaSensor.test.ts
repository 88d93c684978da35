import { describe, expect, it } from 'vitest';
import { lambdaSensor } from '../../../core/waveform/oxygen/lambdaSensor.ts';
import { disturbed, sampled } from '../../support/signal/signal.ts';
import { number, record } from '../signals.ts';

describe('a wide-range sensor as lambda', () => {
  const grid = [-0.08, -0.02, 0, 0.02, 0.06].flatMap((off) => [0.005, 0.02].map((swing) => ({ off, swing })));
  it.each(grid)('held $off off, swinging ± $swing', ({ off, swing }) => {
    const { time, samples } = disturbed(
      sampled(20, 50, (t) => 1 + off + swing * Math.sin(2 * Math.PI * 0.8 * t)),
      { noise: swing / 50 },
      4,
    );
    const found = lambdaSensor(record(time, samples), 1, 0.03);
    if ('kind' in found) expect.fail(found.why);
    expect(found.deviation).toBeCloseTo(off, 3);
    expect(found.maximum - found.minimum).toBeCloseTo(2 * swing, 2);
    expect(found.word).toBe(off > 0.03 ? 'lean' : off < -0.03 ? 'rich' : 'on target');
    // Time below 1 of a sine: its share where sin < −off/swing.
    const rich = Math.abs(off) >= swing ? (off < 0 ? 1 : 0) : 0.5 - Math.asin(off / swing) / Math.PI;
    expect(number(found.timeRich)).toBeCloseTo(rich, 1);
    if (off === 0) expect(number(found.rate)).toBeCloseTo(1.6, 0);
  });

  it('against another lambda than 1', () => {
    const of = record([0, 1, 2, 3], [0.86, 0.88, 0.86, 0.88]);
    expect(lambdaSensor(of, 0.87, 0.03)).toMatchObject({ word: 'on target' });
    expect(lambdaSensor(of, 1, 0.03)).toMatchObject({ word: 'rich' });
    expect(lambdaSensor(of, 0, 0.03)).toMatchObject({ kind: 'absent' });
  });

  it('one that stands still is stuck; one sample has no rate', () => {
    expect(lambdaSensor(record([0, 1, 2], [1, 1, 1]), 1, 0.03)).toMatchObject({ word: 'stuck' });
    expect(lambdaSensor(record([0], [1]), 1, 0.03)).toMatchObject({ rate: { kind: 'absent' } });
  });
});

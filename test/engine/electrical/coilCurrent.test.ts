import { describe, expect, it } from 'vitest';
import { coilCurrent } from '../../../core/engine/electrical/coilCurrent.ts';
import { numberOf, sentenceOf } from '../answers.ts';

describe('a coil’s current', () => {
  // Arithmetic from the law of the RL circuit: V, Ω, mH, ms → A. Coils invented.
  it.each([
    [12, 0.5, 4, 4, 9.44326],
    [14, 0.6, 3.5, 3, 9.38169],
    [14, 0.6, 3.5, 5.8333, 14.7494],
    [12, 3, 8, 2, 2.11053],
    [14, 0.6, 3.5, 2.0806, 7],
  ])('of %f V, %f Ω, %f mH after %f ms is %f A', (volts, ohm, millihenry, milliseconds, amperes) => {
    expect(numberOf(coilCurrent(volts, ohm, millihenry / 1000, milliseconds / 1000))).toBeCloseTo(amperes, 4);
  });

  it('is 63.212 % of its end after one time constant and 99.9 % after 6.91 (physics textbook’s solution)', () => {
    const share = (constants: number) =>
      numberOf(coilCurrent(14, 0.6, 0.0035, (constants * 0.0035) / 0.6)) / (14 / 0.6);
    expect(share(1)).toBeCloseTo(0.63212, 5);
    expect(share(6.91)).toBeCloseTo(0.999, 5);
  });

  it('starts with volts over inductance: 12 V on 4 mH rise 3 A in the first millisecond’s slope', () => {
    expect(numberOf(coilCurrent(12, 0.5, 0.004, 1e-9)) / 1e-9).toBeCloseTo(3000, 2);
    expect(numberOf(coilCurrent(12, 0.5, 0.004, 0))).toBeCloseTo(0, 15);
  });

  it('names what is wrong', () => {
    expect(sentenceOf(coilCurrent(12, 0, 0.004, 1))).toContain('resistance must be above 0');
    expect(sentenceOf(coilCurrent(12, 1, 0, 1))).toContain('inductance must be above 0');
    expect(sentenceOf(coilCurrent(12, 1, 0.004, -0.001))).toContain('before the coil was switched on');
  });
});

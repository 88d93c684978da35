import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dividerResistance } from '../../../core/engine/sensors/dividerResistance.ts';
import { numberOf, sentenceOf } from '../answers.ts';

describe('a divider’s resistance', () => {
  // Arithmetic from Ohm's law, 2.2 kΩ to 5 V.
  it.each([
    [1.5, 942.857],
    [4.6, 25300],
  ])('at %f V is %f Ω', (volts, ohm) => {
    expect(numberOf(dividerResistance(volts, 5, 2200))).toBeCloseTo(ohm, 3);
  });

  it('undoes the divider: 32640, 10000, 2487 and 678.1 Ω show 4.6843, 4.0984, 2.6531 and 1.1780 V', () => {
    for (const [ohm, volts] of [
      [32640, 4.6843],
      [10000, 4.0984],
      [2487, 2.6531],
      [678.1, 1.178],
    ] as const) {
      expect((5 * ohm) / (ohm + 2200)).toBeCloseTo(volts, 4);
      expect(numberOf(dividerResistance((5 * ohm) / (ohm + 2200), 5, 2200))).toBeCloseTo(ohm, 6);
    }
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1e6, noNaN: true }), (ohm) => {
        expect(numberOf(dividerResistance((5 * ohm) / (ohm + 2200), 5, 2200)) / ohm).toBeCloseTo(1, 9);
      }),
    );
  });

  it('tells a short from an open circuit', () => {
    expect(numberOf(dividerResistance(0, 5, 2200))).toBe(0);
    expect(sentenceOf(dividerResistance(5, 5, 2200))).toContain('the circuit is open');
    expect(sentenceOf(dividerResistance(-0.1, 5, 2200))).toContain('below ground');
    expect(sentenceOf(dividerResistance(1, 0, 2200))).toContain('above 0, not 0 V');
    expect(sentenceOf(dividerResistance(1, 5, 0))).toContain('pull-up');
  });
});

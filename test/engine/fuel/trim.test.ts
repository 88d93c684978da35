import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fuelCorrection, totalTrim } from '../../../core/engine/fuel/trim.ts';
import { numberOf, sentenceOf } from '../answers.ts';

const trim = fc.double({ min: -1, max: 1, noNaN: true });

describe('trims', () => {
  it('add up as the trade adds them: 8 % and 17 % are 25 %', () => {
    expect(numberOf(totalTrim(0.08, 0.17))).toBeCloseTo(0.25, 15);
  });

  it('multiply in the fuel: 8 % and 17 % make 26.36 % (1.08 · 1.17 = 1.2636)', () => {
    expect(numberOf(fuelCorrection(0.08, 0.17))).toBeCloseTo(0.2636, 15);
  });

  it('cancel in the sum, not quite in the fuel (arithmetic: 1.2 · 0.8 = 0.96)', () => {
    expect(numberOf(totalTrim(0.2, -0.2))).toBe(0);
    expect(numberOf(fuelCorrection(0.2, -0.2))).toBeCloseTo(-0.04, 15);
  });

  it('do more than their sum with one sign, and less with two', () => {
    fc.assert(
      fc.property(trim, trim, (short, long) => {
        const extra = numberOf(fuelCorrection(short, long)) - numberOf(totalTrim(short, long));
        expect(extra).toBeCloseTo(short * long, 12);
        expect(numberOf(fuelCorrection(short, long))).toBe(numberOf(fuelCorrection(long, short)));
        expect(numberOf(fuelCorrection(short, long))).toBeCloseTo((1 + short) * (1 + long) - 1, 12);
      }),
    );
  });

  it('below -100 % do not exist', () => {
    expect(sentenceOf(totalTrim(-1.2, 0))).toBe(
      'A trim of -120 % would take away more fuel than there is. Check its sign and unit.',
    );
    expect(sentenceOf(fuelCorrection(0, -8))).toContain('-800 %');
  });
});

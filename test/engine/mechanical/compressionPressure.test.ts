import { describe, expect, it } from 'vitest';
import { compressionPressure } from '../../../core/engine/mechanical/compressionPressure.ts';
import { numberOf, psi, sentenceOf } from '../answers.ts';

describe('compression pressure', () => {
  it('of 14.7 psia, 7.5 and 1.3 is 201.8 psia or 187.1 psi gauge (an encyclopaedia’s article on compression ratio)', () => {
    const reached = numberOf(compressionPressure(7.5, 14.7 * psi, 1.3)) / psi;
    expect(reached).toBeCloseTo(201.8, 1);
    expect(reached - 14.7).toBeCloseTo(187.1, 1);
  });

  // Arithmetic from the polytropic law: kPa, ratio, exponent → kPa absolute, psi gauge.
  it.each([
    [101.325, 10, 1.3, 2021.7, 278.53],
    [101.325, 10, 1.2, 1605.9, 218.22],
    [84.307, 10, 1.3, 1682.1, 231.75],
    [101.325, 9.5, 1.3, 1891.3, 259.61],
  ])('of %f kPa, %f, %f', (kPa, ratio, exponent, absolute, gauge) => {
    const reached = numberOf(compressionPressure(ratio, kPa * 1000, exponent));
    expect(reached / 1000).toBeCloseTo(absolute, 1);
    expect((reached - kPa * 1000) / psi).toBeCloseTo(gauge, 2);
  });

  it('scales with the barometer, on the gauge too: 5000 ft leaves 0.83205 of it (arithmetic)', () => {
    const gauge = (baro: number) => numberOf(compressionPressure(10, baro, 1.3)) - baro;
    expect(gauge(84307) / gauge(101325)).toBeCloseTo(0.83205, 5);
  });

  it('of 180 psi gauge from 14.7 psia at 10 to 1 has the exponent 1.12205 (arithmetic)', () => {
    expect(numberOf(compressionPressure(10, 14.7 * psi, 1.12205)) / psi - 14.7).toBeCloseTo(180, 2);
  });

  it('names what is wrong', () => {
    expect(sentenceOf(compressionPressure(1, 101325, 1.3))).toContain('compresses nothing');
    expect(sentenceOf(compressionPressure(10, -1, 1.3))).toContain('needs the barometer first');
    expect(sentenceOf(compressionPressure(10, 101325, 1.6))).toContain('between 1');
  });
});

import { describe, expect, it } from 'vitest';
import {
  compressionAt,
  compressionExponent,
  compressionPressure,
} from '../../../core/engine/mechanical/compressionPressure.ts';
import { effectiveRatio } from '../../../core/engine/mechanical/effectiveRatio.ts';
import { pistonPosition, pistonSpeed } from '../../../core/engine/mechanical/pistonPosition.ts';
import { numberOf, psi, rpm, sentenceOf } from '../answers.ts';

describe('the piston', () => {
  // Arithmetic from Heywood, chapter 2: mm below top dead centre.
  it.each([
    [90, 150, '30:7.726 60:27.651 90:51.909 120:72.651 150:85.668 180:90'],
    [86, 143, '30:7.386 60:26.434 90:49.618 120:69.434'],
  ])('of %i mm stroke on a rod of %i mm', (stroke, rod, text) => {
    for (const pair of text.split(' ')) {
      const [degrees = Number.NaN, expected = Number.NaN] = pair.split(':').map(Number);
      expect(numberOf(pistonPosition(degrees / 360, stroke / 1000, rod / 1000)) * 1000).toBeCloseTo(
        expected,
        3,
      );
    }
  });

  it('moves at 19.5 m/s on the mean at 90 mm and 6500 rpm (published), 10.32 m/s in the textbook’s V6 (from memory)', () => {
    expect(numberOf(pistonSpeed(rpm(6500), 0.09))).toBeCloseTo(19.5, 10);
    expect(numberOf(pistonSpeed(rpm(3600), 0.086))).toBeCloseTo(10.32, 10);
  });

  it('names what is wrong', () => {
    expect(sentenceOf(pistonPosition(0, 0, 0.15))).toContain('`engine: stroke`');
    expect(sentenceOf(pistonPosition(0, 0.09, 0.04))).toContain('40 mm is too short');
    expect(sentenceOf(pistonSpeed(-1, 0.09))).toContain('-60 rpm');
    expect(sentenceOf(pistonSpeed(1, 0))).toContain('`engine: stroke`');
  });
});

describe('the ratio that counts', () => {
  it('where the intake closes 40, 50, 60° after bottom is 9.2151, 8.7744, 8.2398 of 10 (arithmetic)', () => {
    expect(numberOf(effectiveRatio(40 / 360, 10, 3.5))).toBeCloseTo(9.2151, 4);
    expect(numberOf(effectiveRatio(50 / 360, 10, 3.5))).toBeCloseTo(8.7744, 4);
    expect(numberOf(effectiveRatio(60 / 360, 10, 3.5))).toBeCloseTo(8.2398, 4);
    expect(numberOf(effectiveRatio(0, 10, 3.5))).toBeCloseTo(10, 12);
  });

  it('names what is wrong', () => {
    expect(sentenceOf(effectiveRatio(0.6, 10, 3.5))).toContain('outside the compression stroke');
    expect(sentenceOf(effectiveRatio(0.1, 1, 3.5))).toContain('compresses nothing');
    expect(sentenceOf(effectiveRatio(0.1, 10, 0.9))).toContain('crank radius');
  });
});

describe('compression at another barometer', () => {
  // Arithmetic: ratio 10, exponent 1.3: 278.53 psi at the sea, 231.75 psi at 5000 ft, in the proportion 0.83205.
  it('scales with the barometer, whatever the exponent', () => {
    const [sea, mountain] = [101325, 84307];
    expect(numberOf(compressionAt(278.53 * psi, sea, mountain)) / psi).toBeCloseTo(231.75, 2);
    for (const exponent of [1.1, 1.2, 1.3]) {
      const gauge = (baro: number) => numberOf(compressionPressure(10, baro, exponent)) - baro;
      expect(numberOf(compressionAt(gauge(sea), sea, mountain))).toBeCloseTo(gauge(mountain), 6);
    }
  });

  it('has the exponent 1.12205 between 14.7 psia and 180 psi on the gauge at 10 (arithmetic), 1.3 in the published 7.5', () => {
    expect(numberOf(compressionExponent(14.7 * psi, 194.7 * psi, 10))).toBeCloseTo(1.12205, 5);
    // An encyclopaedia's example: 7.5 to 1 and 1.3 make 201.8 psia of 14.7.
    expect(numberOf(compressionExponent(14.7 * psi, 201.8 * psi, 7.5))).toBeCloseTo(1.3, 3);
  });

  it('names what is wrong', () => {
    expect(sentenceOf(compressionAt(1, 0, 1))).toContain('barometer of 0 kPa');
    expect(sentenceOf(compressionAt(-psi, 1e5, 1e5))).toContain('on the gauge does not exist');
    expect(sentenceOf(compressionExponent(-1, 1, 10))).toContain('does not exist');
    expect(sentenceOf(compressionExponent(1, 1, 1))).toContain('compresses nothing');
    expect(sentenceOf(compressionExponent(101e3, 60e3, 10))).toContain('nothing was compressed');
    expect(sentenceOf(compressionExponent(101e3, 5e6, 10))).toContain('air without any loss has 1.4');
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airFuelRatio } from '../../../core/engine/fuel/composition.ts';
import { ethanolBlend, ethanolMassShare } from '../../../core/engine/fuel/ethanolBlend.ts';
import { lambdaOf, stoichiometricRatio } from '../../../core/engine/fuel/stoichiometry.ts';
import { numberOf, sentenceOf } from '../answers.ts';

const ratio = (fuel: string) => numberOf(stoichiometricRatio(fuel));

describe('stoichiometric ratio', () => {
  // Arithmetic from the formula | Heywood, appendix D, table D.4 (values from memory).
  it.each([
    ['gasoline', 14.599, 14.6],
    ['isooctane', 15.127, 15.13],
    ['methane', 17.234, 17.23],
    ['propane', 15.675, 15.67],
    ['methanol', 6.472, 6.47],
    ['ethanol', 9.002, 9.0],
    ['hydrogen', 34.286, 34.3],
  ])('of %s is %f, in the table %f', (fuel, calculated, table) => {
    expect(Math.abs(ratio(fuel) - calculated)).toBeLessThan(0.0011);
    expect(Math.abs(ratio(fuel) - table)).toBeLessThan(0.015);
  });

  it('of carbon monoxide is 2.468 (Heywood’s table, from memory: 2.467)', () => {
    expect(airFuelRatio({ carbon: 1, hydrogen: 0, oxygen: 1 })).toBeCloseTo(2.468, 3);
  });

  // Arithmetic from the formula with the reference fuels of UN Regulation No. 83 (compositions from memory).
  it.each([
    ['E5', 14.285],
    ['E10', 13.992],
    ['E85', 9.857],
    ['LPG', 15.492],
  ])('of the reference fuel %s is %f', (fuel, calculated) => {
    expect(Math.abs(ratio(fuel) - calculated)).toBeLessThan(0.0011);
  });

  it('knows other words, capitals, spaces and hyphens', () => {
    expect(ratio('Petrol')).toBe(ratio('E0'));
    expect(ratio('e 10')).toBe(ratio('E10'));
    expect(ratio('e-85')).toBe(ratio('E85'));
    expect(ratio('cng')).toBe(ratio('methane'));
    expect(ratio('E100')).toBe(ratio('ethanol'));
  });

  it('names the nearest fuel when it knows none of that name', () => {
    expect(sentenceOf(stoichiometricRatio('gasolin'))).toBe(
      'The fuel "gasolin" is not known. Did you mean gasoline? Known are E0 to E100, ethanol, methanol, isooctane, propane, LPG, methane, diesel, hydrogen.',
    );
    expect(sentenceOf(stoichiometricRatio('E1O'))).toContain('Did you mean E10?');
    expect(sentenceOf(stoichiometricRatio('unobtainium'))).toContain('is not known. Known are');
    expect(sentenceOf(stoichiometricRatio('E101'))).toContain('is not known');
    expect(sentenceOf(stoichiometricRatio('__proto__'))).toContain('is not known');
  });
});

describe('blends with ethanol', () => {
  it('mix by mass: 10 % and 85 % by volume are 10.53 % and 85.72 % by mass (arithmetic)', () => {
    expect(ethanolMassShare(0.1)).toBeCloseTo(0.1053, 4);
    expect(ethanolMassShare(0.85)).toBeCloseTo(0.8572, 4);
  });

  it('give 14.100 and 9.814 from fuels of 14.7 and 9.0, not the 14.13 and 9.855 of the usual error (arithmetic)', () => {
    const blend = (share: number) => 14.7 * (1 - ethanolMassShare(share)) + 9 * ethanolMassShare(share);
    expect(blend(0.1)).toBeCloseTo(14.1, 3);
    expect(blend(0.85)).toBeCloseTo(9.814, 3);
  });

  it('have the mass-weighted ratio of their two fuels', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (share) => {
        const byMass = ethanolMassShare(share);
        const mixed = ratio('gasoline') * (1 - byMass) + ratio('ethanol') * byMass;
        expect(airFuelRatio(ethanolBlend(share).composition)).toBeCloseTo(mixed, 9);
      }),
    );
  });

  it('lie close to the reference fuels where both exist', () => {
    for (const percent of [5, 10, 75, 85]) {
      const blended = airFuelRatio(ethanolBlend(percent / 100).composition);
      expect(Math.abs(blended / ratio(`E${percent}`) - 1)).toBeLessThan(0.015);
    }
  });

  it('are found by name between the rows', () => {
    expect(ratio('E15')).toBeLessThan(ratio('E10'));
    expect(ratio('E15')).toBeGreaterThan(ratio('E20'));
  });
});

describe('lambda of an air-fuel ratio', () => {
  // Arithmetic: 8.1 at 9.0 is 0.9; Heywood's formula says 9.002.
  it('of 8.1 on ethanol is 0.9 within a thousandth', () => {
    expect(Math.abs(numberOf(lambdaOf(8.1, 'ethanol')) - 0.9)).toBeLessThan(0.001);
  });

  it('is 1 at the stoichiometric ratio, and above it when lean', () => {
    expect(numberOf(lambdaOf(ratio('E10'), 'E10'))).toBe(1);
    expect(numberOf(lambdaOf(16, 'E10'))).toBeGreaterThan(1);
  });

  it('needs a ratio above 0 and a known fuel', () => {
    expect(sentenceOf(lambdaOf(0, 'E10'))).toContain('air-fuel ratio of 0');
    expect(sentenceOf(lambdaOf(14, 'E10x'))).toContain('Did you mean E10');
  });
});

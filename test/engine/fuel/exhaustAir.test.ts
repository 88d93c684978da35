import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exhaustAir, unburntFuel } from '../../../core/engine/fuel/exhaustAir.ts';
import { lambdaFromGas } from '../../../core/engine/fuel/lambdaFromGas.ts';
import { numberOf, sentenceOf } from '../answers.ts';
import { products, shown, thinned } from './burntGas.ts';

describe('air in a gas sample', () => {
  it('is the share that was mixed in, for any burnt gas (exact identity of the formula)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.75, max: 1.3, noNaN: true }),
        fc.double({ min: 0, max: 0.6, noNaN: true }),
        (lambda, air) => {
          const gas = products(lambda, { carbon: 1, hydrogen: 1.7261, oxygen: 0.0176 }, 3.5);
          expect(numberOf(exhaustAir(thinned(gas, air), lambda, 'E0'))).toBeCloseTo(air, 9);
        },
      ),
    );
  });

  it('of a stoichiometric sample with a fifth of air shows CO2 12.2, O2 4.2 and a lambda near 1.24', () => {
    // MIT OpenCourseWare 2.61, exhaust_compo.m, CH1.87 at lambda 1: 15.298 % CO2, dry.
    const gas = thinned(shown(15.298, 0, 0, 0), 0.2);
    expect(gas.co2).toBeCloseTo(0.1224, 4);
    expect(gas.o2).toBeCloseTo(0.0419, 4);
    expect(numberOf(lambdaFromGas(gas, 'E0'))).toBeCloseTo(1.24, 2);
    expect(numberOf(exhaustAir(gas, 1, 'E0'))).toBeCloseTo(0.2, 6);
  });

  it('a little below nothing is the instruments’, far below is told', () => {
    const gas = shown(15, 0.5, 0.5, 0);
    expect(numberOf(exhaustAir(gas, 1.02, 'E0'))).toBeLessThan(0);
    expect(sentenceOf(exhaustAir(gas, 1.3, 'E0'))).toContain('richer than the 1.3 given');
  });

  it('names what is wrong', () => {
    expect(sentenceOf(exhaustAir(shown(0, 0, 20.9, 0), 1, 'E0'))).toContain('no burnt gas');
    expect(sentenceOf(exhaustAir(shown(12, 0, 4, 0), 0, 'E0'))).toContain('lambda of 0');
    expect(sentenceOf(exhaustAir(shown(12, 0, 4, 0), 1, 'hydrogen'))).toContain('no carbon');
  });
});

describe('fuel left unburnt', () => {
  it('of one dead cylinder of four is 25 %, and air in the sample does not move it (arithmetic)', () => {
    const firing = 0.15 * 0.75;
    const hc = (0.15 * 0.25) / 6;
    expect(numberOf(unburntFuel(firing, 0, hc))).toBeCloseTo(0.25, 12);
    expect(numberOf(unburntFuel(firing * 0.7, 0, hc * 0.7))).toBeCloseTo(0.25, 12);
    expect(sentenceOf(unburntFuel(0, 0, 0.001))).toContain('no burnt gas');
  });
});

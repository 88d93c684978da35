import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Composition } from '../../../core/engine/fuel/composition.ts';
import { fuels } from '../../../core/engine/fuel/fuels.ts';
import {
  brettschneider,
  type ExhaustGas,
  lambdaFromComposition,
  lambdaFromGas,
} from '../../../core/engine/fuel/lambdaFromGas.ts';
import { numberOf, sentenceOf } from '../answers.ts';
import { products, shown } from './burntGas.ts';

const gasoline: Composition = { carbon: 1, hydrogen: 1.87, oxygen: 0 };

describe('lambda from exhaust gas', () => {
  const carbonFuels = fuels.filter((fuel) => fuel.composition.carbon > 0);
  it.each(carbonFuels.map((fuel) => [fuel.name, fuel] as const))(
    'gives back the lambda of burnt %s (exact identity with a water-gas constant of 3.5)',
    (name, fuel) => {
      fc.assert(
        fc.property(fc.double({ min: 0.7, max: 1.4, noNaN: true }), (lambda) => {
          const gas = products(lambda, fuel.gasComposition ?? fuel.composition, 3.5);
          expect(Math.abs(numberOf(lambdaFromGas(gas, name)) - lambda)).toBeLessThan(1e-9);
        }),
      );
    },
  );

  // Dry compositions of MIT OpenCourseWare 2.61, exhaust_compo.m: CH1.87, water-gas constant 3.7.
  // λ in | CO2, CO, O2 % | by the formula with CH1.87 | with the usual petrol CH1.7261O0.0176 (both arithmetic).
  it.each([
    [0.8, 10.217, 7.68, 0, 0.79747, 0.79557],
    [0.9, 12.801, 3.724, 0, 0.89877, 0.89753],
    [0.95, 14.066, 1.828, 0, 0.9494, 0.94872],
    [1.0, 15.298, 0, 0, 1.0, 1.0],
    [1.05, 14.52, 0, 1.065, 1.05, 1.05157],
    [1.1, 13.817, 0, 2.028, 1.1, 1.10315],
    [1.2, 12.598, 0, 3.698, 1.2, 1.20629],
  ])('of the published composition at %f', (lambda, co2, co, o2, byComposition, usual) => {
    const gas = shown(co2, co, o2, 0);
    expect(brettschneider(gas, gasoline)).toBeCloseTo(byComposition, 4);
    expect(numberOf(lambdaFromComposition(gas, 1.87, 0))).toBeCloseTo(byComposition, 4);
    expect(numberOf(lambdaFromGas(gas, 'E0'))).toBeCloseTo(usual, 4);
    expect(Math.abs(brettschneider(gas, gasoline) / lambda - 1)).toBeLessThan(0.004);
  });

  it('differs from a composition with the constant 3.7 by 0.14 % at 0.9 and up to 0.7 % at 0.6', () => {
    const off = (lambda: number) =>
      Math.abs(brettschneider(products(lambda, gasoline, 3.7), gasoline) / lambda - 1);
    expect(off(0.9)).toBeGreaterThan(0.001);
    expect(off(0.9)).toBeLessThan(0.0015);
    expect(off(0.6)).toBeGreaterThan(0.005);
    expect(off(0.6)).toBeLessThan(0.0075);
  });

  // Arithmetic from the formula: CO2, CO, O2 %, HC ppm → λ for petrol and for E10.
  it.each([
    [15.4, 0, 0, 0, 1.0, 1.0],
    [15.0, 0.5, 0.5, 0, 1.0085, 1.0079],
    [14.0, 2.0, 0.5, 100, 0.9625, 0.9622],
    [12.0, 4.0, 0.3, 250, 0.8906, 0.8906],
    [14.7, 0.1, 0.2, 50, 1.0045, 1.0042],
    [13.78, 0.01, 2.29, 834, 1.0773, 1.074],
    [10, 7, 0.2, 400, 0.8017, 0.8014],
    [8, 0.2, 8, 2000, 1.4612, 1.4436],
  ])('of %f, %f, %f %%, %i ppm (arithmetic from the formula)', (co2, co, o2, hc, petrol, e10) => {
    expect(numberOf(lambdaFromGas(shown(co2, co, o2, hc), 'E0'))).toBeCloseTo(petrol, 4);
    expect(numberOf(lambdaFromGas(shown(co2, co, o2, hc), 'E10'))).toBeCloseTo(e10, 4);
  });

  it('rises by 0.00227 with 0.1 % of NO (arithmetic)', () => {
    const without = numberOf(lambdaFromGas(shown(15, 0.5, 0.5, 0), 'E0'));
    expect(numberOf(lambdaFromGas(shown(15, 0.5, 0.5, 0, 0.1), 'E0')) - without).toBeCloseTo(0.00227, 5);
  });

  it('rises when air leaks into the pipe', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.75, max: 1.3, noNaN: true }),
        fc.double({ min: 0.01, max: 0.3, noNaN: true }),
        (lambda, air) => {
          const gas = products(lambda, gasoline, 3.5);
          const thin = 1 - air;
          const leaking = {
            ...gas,
            co2: gas.co2 * thin,
            co: gas.co * thin,
            o2: gas.o2 * thin + 0.2095 * air,
          };
          expect(numberOf(lambdaFromGas(leaking, 'E0'))).toBeGreaterThan(numberOf(lambdaFromGas(gas, 'E0')));
        },
      ),
    );
  });

  it('does not move when a cylinder misfires and all its fuel is counted as hydrocarbons', () => {
    const misfired = (share: number): ExhaustGas => ({
      co2: 0.15 * (1 - share),
      co: 0,
      o2: 0.15 * share * (1 + 1.87 / 4),
      hc: (0.15 * share) / 6,
      nox: 0,
    });
    for (const share of [0, 0.1, 0.25, 0.5])
      expect(brettschneider(misfired(share), gasoline)).toBeCloseTo(1, 12);
  });

  it('of a fuel by its atoms is that of the fuel by name, and refuses one that does not burn', () => {
    const gas = shown(14, 2, 0.5, 100, 0.1);
    expect(numberOf(lambdaFromComposition(gas, 1.7261, 0.0176))).toBe(numberOf(lambdaFromGas(gas, 'E0')));
    expect(sentenceOf(lambdaFromComposition(gas, -1, 0))).toContain('does not burn');
    expect(sentenceOf(lambdaFromComposition(gas, 0, 2.1))).toContain('does not burn');
    expect(sentenceOf(lambdaFromComposition(shown(0, 0, 20, 0), 1.87, 0))).toContain('no burnt gas');
  });

  it('needs burnt gas, in shares that exist, from a fuel with carbon', () => {
    expect(sentenceOf(lambdaFromGas(shown(0, 0, 20.9, 0), 'E0'))).toBe(
      'CO2 and CO are both 0: no burnt gas was sampled. Check the probe, the pump and that the engine fires.',
    );
    expect(sentenceOf(lambdaFromGas(shown(0, 3, 1, 0), 'E0'))).toContain('CO2 is 0');
    expect(sentenceOf(lambdaFromGas(shown(14, -0.1, 1, 0), 'E0'))).toContain('-0.1 % (`co`)');
    expect(sentenceOf(lambdaFromGas(shown(60, 30, 20, 0), 'E0'))).toContain('add up to 110 %');
    expect(sentenceOf(lambdaFromGas(shown(14, 1, 1, 100), 'hydrogen'))).toContain('no carbon');
    expect(sentenceOf(lambdaFromGas(shown(14, 1, 1, 100), 'E1O'))).toContain('Did you mean E10');
    expect(sentenceOf(lambdaFromGas(shown(Number.NaN, 1, 1, 100), 'E0'))).toContain('`co2`');
  });
});

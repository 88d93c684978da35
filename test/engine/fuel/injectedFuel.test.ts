import { describe, expect, it } from 'vitest';
import { blendRatio } from '../../../core/engine/fuel/blendRatio.ts';
import { fuelCut } from '../../../core/engine/fuel/fuelCut.ts';
import {
  airForFuel,
  injectedFuel,
  injectorPressure,
  pressureTrim,
} from '../../../core/engine/fuel/injectedFuel.ts';
import {
  equivalenceOf,
  lambdaOf,
  ratioOf,
  ratioOfComposition,
} from '../../../core/engine/fuel/stoichiometry.ts';
import { numberOf, rpm, sentenceOf } from '../answers.ts';

const ccPerMinute = 1e-6 / 60;

describe('pulse width to fuel to air', () => {
  // Arithmetic: four injectors of 240 cc/min, 0.745 g/mL, 2.5 ms with 0.8 ms of dead time at 750 rpm.
  it('of 2.5 ms at 750 rpm is 0.12665 g/s of fuel and 1.86176 g/s of air at 14.7', () => {
    const fuel = numberOf(injectedFuel(0.0025, rpm(750), 0.0008, 240 * ccPerMinute, 4, 745));
    expect(fuel * 1000).toBeCloseTo(0.12665, 5);
    const lambda = numberOf(lambdaOf(14.7, 'E0'));
    expect(numberOf(airForFuel(fuel, lambda, 'E0')) * 1000).toBeCloseTo(1.86176, 4);
  });

  it('within the dead time nothing is delivered', () => {
    expect(injectedFuel(0.0006, rpm(750), 0.0008, 240 * ccPerMinute, 4, 745)).toBe(0);
  });

  it('names what is wrong', () => {
    expect(sentenceOf(injectedFuel(0.002, 0, 0.0008, 1e-6, 4, 745))).toContain(
      'At 0 rpm nothing is injected',
    );
    expect(sentenceOf(injectedFuel(-0.002, 10, 0.0008, 1e-6, 4, 745))).toContain('-2 ms');
    expect(sentenceOf(injectedFuel(0.002, 10, 0.0008, 1e-6, 3.5, 745))).toContain(
      'whole number of injectors',
    );
    expect(sentenceOf(airForFuel(-0.001, 1, 'E0'))).toContain('-1 g/s');
    expect(sentenceOf(airForFuel(0.001, 1, 'E1O'))).toContain('Did you mean E10');
  });
});

describe('the pressure across an injector', () => {
  it('of 300 kPa on the gauge, 35 kPa in the manifold and 101.3 kPa outside is 366.3 kPa (arithmetic)', () => {
    expect(numberOf(injectorPressure(300e3, 35e3, 101.3e3))).toBeCloseTo(366300, 6);
  });

  it('a fall from 300 to 200 kPa needs a trim of 22.474 % (arithmetic)', () => {
    expect(numberOf(pressureTrim(300e3, 200e3))).toBeCloseTo(0.22474, 5);
    expect(sentenceOf(pressureTrim(300e3, 0))).toContain('above 0');
  });

  it('refuses a manifold that is no absolute pressure, or above the rail', () => {
    expect(sentenceOf(injectorPressure(300e3, -60e3, 101e3))).toContain('-60 kPa');
    expect(sentenceOf(injectorPressure(0, 180e3, 101e3))).toContain('run backwards');
  });
});

describe('lambda, ratio and equivalence', () => {
  // Arithmetic at 14.7: 0.85 is 12.495 and φ 1.17647, 1.10 is 16.17 and φ 0.90909. A web table prints 12.5 as 0.8503, φ 1.176.
  it.each([
    [0.85, 12.495, 1.17647],
    [1.1, 16.17, 0.90909],
  ])('of %f are %f and %f', (lambda, ratio, phi) => {
    expect((numberOf(ratioOf(lambda, 'E0')) / numberOf(ratioOf(1, 'E0'))) * 14.7).toBeCloseTo(ratio, 10);
    expect(numberOf(equivalenceOf(lambda))).toBeCloseTo(phi, 5);
    expect(numberOf(equivalenceOf(numberOf(equivalenceOf(lambda))))).toBeCloseTo(lambda, 12);
    expect(numberOf(lambdaOf(numberOf(ratioOf(lambda, 'E10')), 'E10'))).toBeCloseTo(lambda, 12);
  });

  // Heywood, appendix D, table D.4 (values from memory), by atoms for each carbon atom.
  it.each([
    [1.87, 0, 14.6],
    [2.25, 0, 15.13],
    [4, 0, 17.23],
    [8 / 3, 0, 15.67],
    [4, 1, 6.47],
    [3, 0.5, 9.0],
  ])('of CH%fO%f is %f', (hydrogen, oxygen, table) => {
    expect(Math.abs(numberOf(ratioOfComposition(hydrogen, oxygen)) - table)).toBeLessThan(0.015);
  });

  it('names what is wrong', () => {
    expect(sentenceOf(ratioOf(0, 'E0'))).toContain('lambda of 0');
    expect(sentenceOf(equivalenceOf(-1))).toContain('lambda of -1');
    expect(sentenceOf(ratioOfComposition(-1, 0))).toContain('-1 hydrogen');
    expect(sentenceOf(ratioOfComposition(0, 2))).toContain('burnt already');
  });
});

describe('blends by volume', () => {
  // Arithmetic with 14.7 and 9.0, 0.745 and 0.789 kg/L. Web tables print 14.08 to 14.13 and 9.7 to 9.85.
  it.each([
    [0.1, 14.1],
    [0.85, 9.814],
  ])('with %f of ethanol have %f', (share, ratio) => {
    expect(numberOf(blendRatio(share, 14.7, 9, 745, 789))).toBeCloseTo(ratio, 3);
  });

  it('name what is wrong', () => {
    expect(sentenceOf(blendRatio(1.2, 14.7, 9, 745, 789))).toContain('120 %');
    expect(sentenceOf(blendRatio(0.1, 0, 9, 745, 789))).toContain('ratio of 0');
    expect(sentenceOf(blendRatio(0.1, 14.7, 9, 0, 789))).toContain('0 kg/L');
  });
});

describe('fuel cut on a coast-down', () => {
  const cut = (speed: number, ms: number, throttle: number, sensor = Number.NaN) =>
    fuelCut(rpm(speed), ms / 1000, throttle / 100, 0.14, 0.0012, sensor);

  // Common practice: throttle closed, 1200 to 1500 rpm and more, below about 1.2 ms or none at all, sensor lean.
  it('is seen in a moment of readings', () => {
    expect(cut(2200, 0.9, 14.1)).toBe('fuel cut');
    expect(cut(2200, 0, 14.1, 0.02)).toBe('fuel cut');
    expect(cut(2200, 0, 14.1, 0.8)).toBe('cut, but the exhaust reads rich');
    expect(cut(2200, 2.4, 14.1)).toBe('still injecting');
    expect(cut(2200, 0.9, 21)).toBe('throttle open');
    expect(cut(1000, 0.9, 14.1)).toBe('too slow to tell');
    expect(cut(0, 0.9, 14.1)).toHaveProperty('noAnswer');
    expect(cut(2200, -1, 14.1)).toHaveProperty('noAnswer');
  });
});

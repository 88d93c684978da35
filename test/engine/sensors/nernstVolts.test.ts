import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nernstVolts } from '../../../core/engine/sensors/nernstVolts.ts';
import { numberOf, sentenceOf } from '../answers.ts';

describe('a zirconia sensor’s voltage', () => {
  // Arithmetic from Nernst's equation with the constants of CODATA 2018, reference 0.209: K, oxygen → mV.
  it.each([
    [900, 1e-2, 58.938],
    [900, 1e-10, 416.096],
    [900, 1e-20, 862.544],
    [1000, 0.0209, 49.605],
    [1073.15, 1e-18, 922.02],
    [900, 1.7402e-11, 450.0],
  ])('at %f K and %f of oxygen is %f mV', (kelvin, oxygen, millivolts) => {
    expect(numberOf(nernstVolts(kelvin, oxygen)) * 1000).toBeCloseTo(millivolts, 2);
  });

  // Pages on industrial zirconia probes print 0.0496 mV/K a decade and, turned round, 46.421 K/mV.
  it('is 0.0496 mV a kelvin and decade of oxygen, as probe makers print it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 623.15, max: 1173.15, noNaN: true }),
        fc.double({ min: -22, max: -2, noNaN: true }),
        (kelvin, decade) => {
          const millivolts = numberOf(nernstVolts(kelvin, 10 ** decade)) * 1000;
          const printed = 0.0496 * kelvin * (Math.log10(0.209) - decade);
          expect(Math.abs(millivolts / printed - 1)).toBeLessThan(3e-4);
          expect((0.209 * Math.exp((-46.421 * millivolts) / kelvin)) / 10 ** decade).toBeCloseTo(1, 2);
        },
      ),
    );
  });

  it('is nothing between equal pressures, and turns round beyond', () => {
    expect(numberOf(nernstVolts(900, 0.209))).toBe(0);
    expect(numberOf(nernstVolts(900, 0.5))).toBeLessThan(0);
  });

  it('names what is wrong', () => {
    expect(sentenceOf(nernstVolts(900, 0))).toContain('above 0');
    expect(sentenceOf(nernstVolts(900, 2))).toContain('A percentage needs its sign');
    expect(sentenceOf(nernstVolts(0, 0.1))).toContain('absolute zero');
  });
});

import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { airDensity, saturationPressure } from '../../../core/engine/air/airDensity.ts';
import { kelvin, numberOf, sentenceOf } from '../answers.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

const density = (celsius: number, pascal: number, humidity: number) =>
  numberOf(airDensity(pascal, kelvin(celsius), humidity));

describe('saturation pressure', () => {
  // ASHRAE Handbook of Fundamentals 2017, chapter 1, table 3; the Magnus formula's known distance from it as tolerance.
  it.each([
    [5, 872.6, 0.0015],
    [20, 2338.8, 0.003],
    [25, 3169.7, 0.004],
    [50, 12351.3, 0.002],
  ])('at %i °C is %f Pa (ASHRAE table)', (celsius, pascal, tolerance) => {
    expect(Math.abs(numberOf(saturationPressure(kelvin(celsius))) / pascal - 1)).toBeLessThan(tolerance);
  });

  it('is that over water, also below freezing (arithmetic from the formula)', () => {
    expect(numberOf(saturationPressure(kelvin(-20)))).toBeCloseTo(125.97, 2);
  });

  it('agrees with psychrolib within 0.5 % from 0 to 60 °C', () => {
    for (let celsius = 0.5; celsius <= 60; celsius += 0.5) {
      const ours = numberOf(saturationPressure(kelvin(celsius)));
      expect(Math.abs(ours / psychrolib.GetSatVapPres(celsius) - 1)).toBeLessThan(0.005);
    }
  });
});

describe('air density', () => {
  it('of the standard atmosphere at sea level is 1.225 (U.S. Standard Atmosphere 1976)', () => {
    expect(density(15, 101325, 0)).toBeCloseTo(1.225, 4);
  });

  it('at 25 °C is the 1.184 that absolute load is referred to (SAE J1979)', () => {
    expect(density(25, 101325, 0)).toBeCloseTo(1.184, 3);
  });

  // Arithmetic from the formula.
  it.each([
    [25, 101325, 0, 1.1839],
    [25, 101325, 0.5, 1.1769],
    [35, 101325, 0.9, 1.1239],
    [20, 84300, 0.3, 0.9987],
  ])('at %i °C, %i Pa, %f is %f (arithmetic from the formula)', (celsius, pascal, humidity, expected) => {
    expect(density(celsius, pascal, humidity)).toBeCloseTo(expected, 4);
  });

  it('of 30 °C, 0.02 kg/kg, 95461 Pa is 1.08411986 (published psychrolib test value)', () => {
    const humidity = psychrolib.GetRelHumFromHumRatio(30, 0.02, 95461);
    expect(Math.abs(density(30, 95461, humidity) / 1.08411986 - 1)).toBeLessThan(3e-4);
  });

  // CIPM-2007 (Picard et al., Metrologia 45 (2008) 149): computed with coefficients from memory.
  it.each([
    [20, 101325, 0.5, 1.19931],
    [15, 100000, 0.5, 1.2056],
    [25, 95000, 0.6, 1.10197],
  ])('at %i °C, %i Pa, %f is within 0.1 %% of CIPM-2007’s %f', (celsius, pascal, humidity, expected) => {
    expect(Math.abs(density(celsius, pascal, humidity) / expected - 1)).toBeLessThan(0.001);
  });

  it('agrees with psychrolib within 0.1 % wherever people drive', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 45, noNaN: true }),
        fc.double({ min: 70000, max: 104000, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (celsius, pascal, humidity) => {
          const ratio = psychrolib.GetHumRatioFromRelHum(celsius, humidity, pascal);
          const theirs = psychrolib.GetMoistAirDensity(celsius, ratio, pascal);
          expect(Math.abs(density(celsius, pascal, humidity) / theirs - 1)).toBeLessThan(0.001);
        },
      ),
    );
  });

  it('falls with humidity', () => {
    expect(density(30, 101325, 1)).toBeLessThan(density(30, 101325, 0.2));
  });

  it('takes hot dry air behind a compressor', () => {
    expect(density(120, 200000, 0)).toBeCloseTo(200000 / (287.05 * 393.15), 12);
  });

  it('refuses what cannot be', () => {
    expect(sentenceOf(airDensity(-54000, 300, 0))).toBe(
      'An absolute pressure of -54 kPa (-15.946 inHg) does not exist. A gauge or vacuum reading needs the barometer first.',
    );
    expect(sentenceOf(airDensity(101325, 300, 1.01))).toBe(
      'A relative humidity of 101 % does not exist; it runs from 0 to 100 %.',
    );
    expect(sentenceOf(airDensity(101325, 300, -0.1))).toContain('-10 %');
    expect(sentenceOf(airDensity(101325, -3, 0))).toContain('temperature');
    expect(sentenceOf(airDensity(101325, kelvin(90), 0.5))).toContain('90 °C (194 °F) is outside');
    expect(sentenceOf(airDensity(5000, kelvin(50), 0.9))).toContain('more vapour than 5 kPa');
  });
});

import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import {
  altitudeOf,
  geometric,
  geopotential,
  standardPressure,
} from '../../../core/engine/air/standardAtmosphere.ts';
import { inHg, numberOf, psi, sentenceOf } from '../answers.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

const at = (altitude: number) => numberOf(standardPressure(altitude));

describe('standard pressure', () => {
  // ASHRAE Handbook of Fundamentals 2017, chapter 1, table 1, entered with geopotential altitude.
  it.each([
    [-500, 107478],
    [0, 101325],
    [500, 95461],
    [1000, 89875],
    [4000, 61640],
    [10000, 26436],
  ])('at %i m geopotential is %i Pa within 1 Pa (ASHRAE table)', (height, pascal) => {
    expect(Math.abs(at(geometric(height)) - pascal)).toBeLessThan(1);
  });

  // Arithmetic from U.S. Standard Atmosphere 1976, equation 33a.
  it.each([
    [1500, 84556.0],
    [2000, 79495.2],
    [2500, 74682.5],
    [3000, 70108.5],
  ])('at %i m geopotential is %f Pa (arithmetic from the formula)', (height, pascal) => {
    expect(at(geometric(height))).toBeCloseTo(pascal, 1);
  });

  it('is 22632.1 Pa at the top of the layer (published barometric-formula table)', () => {
    expect(at(geometric(11000))).toBeCloseTo(22632.1, 1);
  });

  // U.S. Standard Atmosphere 1976, table I, entered with geometric altitude (values from memory: 8.9876e4, 6.1660e4).
  it.each([
    [1000, 89876.3],
    [4000, 61660.4],
  ])('takes %i m as geometric altitude: %f Pa, not the geopotential column', (altitude, pascal) => {
    expect(at(altitude)).toBeCloseTo(pascal, 1);
    expect(at(altitude)).toBeGreaterThan(at(geometric(altitude)) + 1);
  });

  // "Standard Atmospheric Data", an engineering web table. Its psia are its inches of mercury, rounded to 0.01, times 0.4912,
  // and its altitudes are geopotential: at 8000 ft only they round to the 22.22 inHg behind its 10.914.
  // Its 12.682 at 4000 ft is a misprint for 12.692: the formula and both neighbours say so, hence its own test below.
  it.each([
    [0, 14.696],
    [1000, 14.175],
    [2000, 13.664],
    [3000, 13.173],
    [5000, 12.23],
    [6000, 11.778],
    [7000, 11.341],
    [8000, 10.914],
    [9000, 10.506],
    [10000, 10.108],
  ])('at %i ft is %f psia within 0.003 (engineering table)', (feet, psia) => {
    expect(Math.abs(at(geometric(feet * 0.3048)) / psi - psia)).toBeLessThan(0.003);
  });

  it('at 4000 ft is 12.692 psia, not the misprinted 12.682', () => {
    expect(Math.abs(at(4000 * 0.3048) / psi - 12.692)).toBeLessThan(0.002);
    expect(Math.abs(at(4000 * 0.3048) / psi - 12.682)).toBeGreaterThan(0.009);
  });

  it('at sea level is 29.92126 inHg; 29.92 is a rounding (published table)', () => {
    expect(at(0) / inHg).toBeCloseTo(29.92126, 5);
    expect(at(0) / inHg).not.toBeCloseTo(29.92, 3);
  });

  it('falls by about one inch of mercury in the first thousand feet (FAA Pilot’s Handbook), by less higher up', () => {
    const fall = (feet: number) => (at((feet - 500) * 0.3048) - at((feet + 500) * 0.3048)) / inHg;
    expect(fall(500)).toBeGreaterThan(1);
    expect(fall(500)).toBeLessThan(1.1);
    expect(fall(9000)).toBeLessThan(0.83);
  });

  it('agrees with psychrolib within 1 Pa from -5 to 11 km geopotential', () => {
    for (let height = -5000; height <= 11000; height += 250) {
      const here = geometric(height);
      // The ends of the layer come back rounded.
      if (height === -5000 || height === 11000) continue;
      expect(Math.abs(at(here) - psychrolib.GetStandardAtmPressure(height))).toBeLessThan(1);
    }
  });

  it('says where it holds when the altitude is outside', () => {
    expect(sentenceOf(standardPressure(12000))).toBe(
      'The standard atmosphere is computed from -4996.1 m (-16391 ft) to 11019 m (36152 ft); an altitude of 12000 m (39370 ft) is outside. Check the altitude and its unit.',
    );
    expect(sentenceOf(standardPressure(-6000))).toContain('is outside');
    expect(sentenceOf(standardPressure(Number.NaN))).toContain('is outside');
  });
});

describe('altitude of a pressure', () => {
  it('is the way back', () => {
    fc.assert(
      fc.property(fc.double({ min: -4990, max: 11010, noNaN: true }), (altitude) => {
        expect(numberOf(altitudeOf(at(altitude)))).toBeCloseTo(altitude, 5);
      }),
    );
  });

  it('finds 4000 ft from 25.842 inHg (the same engineering table in inches of mercury, within 15 ft)', () => {
    expect(Math.abs(numberOf(altitudeOf(25.842 * inHg)) / 0.3048 - 4000)).toBeLessThan(15);
  });

  it('refuses a pressure that no altitude has', () => {
    expect(sentenceOf(altitudeOf(0))).toContain('22.632 kPa');
    expect(sentenceOf(altitudeOf(-5000))).toContain('absolute pressure');
    expect(sentenceOf(altitudeOf(200000))).toContain('200 kPa (59.06 inHg) is outside');
  });
});

describe('geopotential altitude', () => {
  it('is lower than the geometric one above the sea, and the way back is exact', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 11000, noNaN: true }), (altitude) => {
        expect(geopotential(altitude)).toBeLessThan(altitude);
        expect(geometric(geopotential(altitude))).toBeCloseTo(altitude, 7);
      }),
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stationPressure } from '../../../core/engine/air/stationPressure.ts';
import { inHg, numberOf, sentenceOf } from '../answers.ts';

/** The older form that airports used, inHg and feet: A = (p^N + K·h)^(1/N). */
function olderForm(setting: number, feet: number): number {
  return (setting ** 0.1903 - 1.313e-5 * feet) ** (1 / 0.1903);
}

/** Smithsonian Meteorological Tables 1951, p. 269, hPa and m, with T0 = 288 K and its 0.3 hPa. */
function smithsonian(setting: number, metres: number): number {
  const n = (0.0065 * 287.04749) / 9.80665;
  return (setting ** n - (1013.25 ** n * 0.0065 * metres) / 288) ** (1 / n) + 0.3;
}

describe('station pressure', () => {
  it('at sea level is the weather report’s figure', () => {
    expect(numberOf(stationPressure(29.92 * inHg, 0)) / inHg).toBeCloseTo(29.92, 12);
  });

  // Arithmetic from the weather service's short form (formula from memory).
  it.each([
    [29.92, 1000, 26.537],
    [30.1, 1609.344, 24.7806],
    [29.8, 500, 28.0744],
  ])('of %f inHg at %f m is %f inHg (arithmetic from the formula)', (setting, metres, inches) => {
    expect(numberOf(stationPressure(setting * inHg, metres)) / inHg).toBeCloseTo(inches, 4);
  });

  // Published: MetPy, tests of altimeter_to_station_pressure, by the Smithsonian form.
  it.each([
    [29.8 * 33.86388640341, 500, 950.96498],
    [1013, 500, 954.639265],
    [1000, 2000, 784.262996],
    [1005, 1500, 838.651657],
    [1010, 1000, 896.037821],
  ])('of %f hPa at %i m is within 0.3 hPa of the Smithsonian form’s %f', (setting, metres, published) => {
    const ours = numberOf(stationPressure(setting * 100, metres)) / 100;
    expect(smithsonian(setting, metres)).toBeCloseTo(published, 2);
    expect(Math.abs(published - ours)).toBeLessThan(0.3);
  });

  it('differs from the Smithsonian form by 0.3 hPa at sea level, and by 0.9 hPa at 2100 m under 30.37 inHg', () => {
    const apart = (setting: number, metres: number) =>
      smithsonian(setting, metres) - numberOf(stationPressure(setting * 100, metres)) / 100;
    expect(apart(1013.25, 0)).toBeCloseTo(0.3, 6);
    expect(apart(30.37 * 33.86388640341, 2138)).toBeCloseTo(0.9, 2);
    // In standard weather both are one formula but for the 0.3 hPa; in low pressure the sign turns.
    expect(apart(1013.25, 2100)).toBeCloseTo(0.3, 1);
    expect(apart(990, 2100)).toBeLessThan(-0.5);
  });

  // Published on a page about barometry, by the older form.
  it.each([
    [30.2, 5045, 84977],
    [30.37, 7014, 79375],
  ])('of %f inHg at %i ft is within 1 hPa of the published %i Pa', (setting, feet, pascal) => {
    expect(Math.abs(olderForm(setting, feet) * inHg - pascal)).toBeLessThan(2);
    expect(Math.abs(numberOf(stationPressure(setting * inHg, feet * 0.3048)) - pascal)).toBeLessThan(100);
  });

  it('falls with altitude and scales with the figure', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 90000, max: 105000, noNaN: true }),
        fc.double({ min: -400, max: 5000, noNaN: true }),
        (setting, metres) => {
          const here = numberOf(stationPressure(setting, metres));
          expect(numberOf(stationPressure(setting, metres + 50))).toBeLessThan(here);
          expect(numberOf(stationPressure(setting * 1.01, metres))).toBeCloseTo(here * 1.01, 6);
        },
      ),
    );
  });

  it('refuses what is no sea-level figure: a barometer reading of a mile-high town', () => {
    expect(sentenceOf(stationPressure(24.8 * inHg, 1609))).toBe(
      'No weather has a sea-level pressure of 83.982 kPa (24.8 inHg); it lies between 85 kPa (25.1 inHg) and 110 kPa (32.483 inHg). A lower figure may be a barometer reading already, which needs no conversion.',
    );
  });

  it('refuses an altitude where no road is', () => {
    expect(sentenceOf(stationPressure(101325, 35000))).toContain(
      'an altitude of 35000 m (114830 ft) is outside',
    );
  });
});

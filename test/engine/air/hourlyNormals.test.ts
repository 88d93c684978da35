import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { airDensity } from '../../../core/engine/air/airDensity.ts';
import { stationPressure } from '../../../core/engine/air/stationPressure.ts';
import { kelvin, numberOf } from '../answers.ts';

/*
 * Real weather as input: 8759 hourly normals of one station (U.S. Government work, NOAA NCDC, in the package vega-datasets):
 * pressure in hPa, temperature in °C. The second route is psychrolib (ASHRAE Handbook of Fundamentals 2017)
 * and the Smithsonian form of the altimeter setting.
 */
const folder = join(import.meta.dirname, '..', '..', '..', 'node_modules', 'vega-datasets');
const hours = readFileSync(join(folder, 'data', 'seattle-weather-hourly-normals.csv'), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => {
    const [, pressure = Number.NaN, temperature = Number.NaN] = line.split(',').map(Number);
    return { hPa: pressure, celsius: temperature };
  });

psychrolib.SetUnitSystem(psychrolib.SI);

describe('a year of hourly weather', () => {
  it('is there, and believable', () => {
    expect(hours.length).toBeGreaterThan(8700);
    expect(hours.every(({ hPa, celsius }) => hPa > 1005 && hPa < 1030 && celsius > -5 && celsius < 35)).toBe(
      true,
    );
  });

  it('has the density that psychrolib gives, within 0.05 %, dry and at 80 % humidity', () => {
    let worst = 0;
    for (const { hPa, celsius } of hours) {
      for (const humidity of [0, 0.8]) {
        const ratio = psychrolib.GetHumRatioFromRelHum(celsius, humidity, hPa * 100);
        const theirs = psychrolib.GetMoistAirDensity(celsius, ratio, hPa * 100);
        // psychrolib gives the mass of all the air in its volume, as we do.
        worst = Math.max(
          worst,
          Math.abs(numberOf(airDensity(hPa * 100, kelvin(celsius), humidity)) / theirs - 1),
        );
      }
    }
    expect(worst).toBeLessThan(5e-4);
  });

  it('makes a station pressure at 132 m that is within 0.35 hPa of the Smithsonian form at every hour', () => {
    const n = 0.190284;
    let worst = 0;
    for (const { hPa } of hours) {
      const smithsonian = (hPa ** n - (1013.25 ** n * 0.0065 * 132) / 288) ** (1 / n) + 0.3;
      worst = Math.max(worst, Math.abs(numberOf(stationPressure(hPa * 100, 132)) / 100 - smithsonian));
    }
    expect(worst).toBeLessThan(0.35);
    expect(worst).toBeGreaterThan(0.25);
  });
});

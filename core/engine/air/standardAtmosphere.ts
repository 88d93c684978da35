import { type Answer, noAnswer } from '../answer.ts';
import { sayAltitude, sayPressure } from '../sayValue.ts';

/*
 * The lowest layer of the U.S. Standard Atmosphere 1976 (NOAA-S/T 76-1562, equation 33a), the same as ICAO Doc 7488.
 * Its tables are entered with geopotential altitude H. A map, a road sign and a satellite receiver give
 * geometric altitude Z above sea level, so these functions take and give Z and convert inside:
 * at 1000 m the two differ by 2 Pa, at 4000 m by 20 Pa.
 */

/** Sea-level pressure of the standard atmosphere, Pa. */
export const seaLevelPressure = 101325;

const seaLevelTemperature = 288.15;
/** K per metre of geopotential altitude. */
const lapse = 0.0065;
/** g0 · M0 / (R* · L) of the 1976 constants: 5.255876. */
const exponent = (9.80665 * 28.9644) / (8314.32 * lapse);
/** The radius that turns geometric into geopotential altitude, m. */
const earthRadius = 6356766;
/** The layer's ends, geopotential metres. */
const lowest = -5000;
const highest = 11000;

/**
 * The pressure of the standard atmosphere, Pa absolute, at a geometric altitude above sea level in m.
 * Holds from −4996 m to 11019 m (−5 to 11 km geopotential); outside there is no answer.
 */
export function standardPressure(altitude: number): Answer {
  const height = geopotential(altitude);
  if (!(height >= lowest && height <= highest)) {
    return noAnswer(
      `The standard atmosphere is computed from ${sayAltitude(geometric(lowest))} to ${sayAltitude(geometric(highest))}; an altitude of ${sayAltitude(altitude)} is outside. Check the altitude and its unit.`,
    );
  }
  return pressureAt(height);
}

/**
 * The geometric altitude above sea level, m, at which the standard atmosphere has this pressure (Pa absolute).
 * Holds for 22.6 to 177.7 kPa; outside there is no answer. Weather moves it: 1 kPa is about 84 m near the sea.
 */
export function altitudeOf(pressure: number): Answer {
  if (!(pressure >= pressureAt(highest) && pressure <= pressureAt(lowest))) {
    return noAnswer(
      `The standard atmosphere has pressures from ${sayPressure(pressureAt(highest))} to ${sayPressure(pressureAt(lowest))}; ${sayPressure(pressure)} is outside. Check that it is an absolute pressure, and its unit.`,
    );
  }
  return geometric((seaLevelTemperature / lapse) * (1 - (pressure / seaLevelPressure) ** (1 / exponent)));
}

/** Geometric to geopotential altitude, both in m. */
export function geopotential(geometricAltitude: number): number {
  return (earthRadius * geometricAltitude) / (earthRadius + geometricAltitude);
}

/** Geopotential to geometric altitude, both in m. */
export function geometric(geopotentialAltitude: number): number {
  return (earthRadius * geopotentialAltitude) / (earthRadius - geopotentialAltitude);
}

function pressureAt(height: number): number {
  return seaLevelPressure * (1 - (lapse * height) / seaLevelTemperature) ** exponent;
}

import { type Answer, noAnswer } from '../answer.ts';
import { sayAltitude, sayPressure } from '../sayValue.ts';

/**
 * The barometer at the site, Pa absolute, from the weather report's sea-level figure (altimeter setting, QNH; Pa)
 * and the altitude above sea level in m.
 *
 * p = A · ((288 − 0.0065·h) / 288)^5.2561: the U.S. National Weather Service's short form (value from memory).
 * The Smithsonian form differs from it by 0.3 hPa in standard weather, and by up to 0.9 hPa at 2100 m far from it.
 * Holds for −500 to 6000 m of altitude, where roads are, and for 850 to 1100 hPa:
 * no weather has gone beyond 870 and 1085 hPa (World Meteorological Organization's record of extremes, values from memory),
 * so that a lower figure is a station pressure already.
 */
export function stationPressure(seaLevelFigure: number, altitude: number): Answer {
  if (!(seaLevelFigure >= 85000 && seaLevelFigure <= 110000)) {
    return noAnswer(
      `No weather has a sea-level pressure of ${sayPressure(seaLevelFigure)}; it lies between ${sayPressure(85000)} and ${sayPressure(110000)}. A lower figure may be a barometer reading already, which needs no conversion.`,
    );
  }
  if (!(altitude >= -500 && altitude <= 6000)) {
    return noAnswer(
      `The station pressure is computed from ${sayAltitude(-500)} to ${sayAltitude(6000)}; an altitude of ${sayAltitude(altitude)} is outside. Check the altitude and its unit.`,
    );
  }
  return seaLevelFigure * ((288 - 0.0065 * altitude) / 288) ** 5.2561;
}

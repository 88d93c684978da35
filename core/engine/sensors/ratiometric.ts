import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber } from '../sayValue.ts';

/*
 * A ratiometric sensor gives a share of its supply: from `lowShare` at its lowest pressure to `highShare` at its highest, straight between.
 * Pressures in Pa, all counted from the same zero; voltages in V; shares from 0 to 1. The curve is the maker's: 10 and 90 % are common practice.
 */

/** The pressure that a ratiometric sensor's voltage stands for: low + (V/supply − lowShare)/(highShare − lowShare) · (high − low). */
export function ratiometricPressure(
  volts: number,
  supply: number,
  low: number,
  high: number,
  lowShare: number,
  highShare: number,
): Answer {
  const wrong = unlikelySensor(supply, low, high, lowShare, highShare);
  if (wrong !== undefined) return wrong;
  const share = volts / supply;
  if (!(share >= lowShare - overrun && share <= highShare + overrun)) {
    return noAnswer(
      `The voltage of ${sayNumber(volts)} V is outside the sensor’s range of ${sayNumber(lowShare * supply)} to ${sayNumber(highShare * supply)} V: that is a failed circuit, not a pressure. Check supply, ground and signal wire.`,
    );
  }
  return low + ((share - lowShare) / (highShare - lowShare)) * (high - low);
}

/** The voltage that a ratiometric sensor should give at a pressure, by the same straight line. */
export function ratiometricVolts(
  pressure: number,
  supply: number,
  low: number,
  high: number,
  lowShare: number,
  highShare: number,
): Answer {
  const wrong = unlikelySensor(supply, low, high, lowShare, highShare);
  if (wrong !== undefined) return wrong;
  const place = (pressure - low) / (high - low);
  if (!(place >= 0 && place <= 1)) return noAnswer('The pressure is outside what this sensor measures.');
  return supply * (lowShare + place * (highShare - lowShare));
}

/** A sensor still measures a little beyond the ends of its line. */
const overrun = 0.02;

function unlikelySensor(
  supply: number,
  low: number,
  high: number,
  lowShare: number,
  highShare: number,
): Answer | undefined {
  if (!(supply > 0)) return noAnswer(`The sensor’s supply must be above 0, not ${sayNumber(supply)} V.`);
  if (!(high > low)) return noAnswer('The highest pressure must be above the lowest.');
  if (!(lowShare >= 0 && highShare <= 1 && highShare > lowShare)) {
    return noAnswer('The shares of the supply run from 0 to 100 %, the higher one at the higher pressure.');
  }
  return undefined;
}

import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber, sayPressure } from '../sayValue.ts';

/**
 * The absolute pressure, Pa, that compression can reach: pressure · ratio^exponent (polytropic law).
 * The pressure at its start is absolute, Pa. The exponent is about 1.3 in a running engine, 1.1 to 1.25 when cranking,
 * where leakage and heat loss take their share; air without any loss has 1.4 (values from memory: Heywood,
 * Internal Combustion Engine Fundamentals, chapter 9).
 */
export function compressionPressure(ratio: number, pressure: number, exponent: number): Answer {
  if (!(ratio > 1)) return noAnswer(`A compression ratio of ${sayNumber(ratio)} compresses nothing.`);
  if (!(pressure > 0)) {
    return noAnswer(
      `An absolute pressure of ${sayPressure(pressure)} does not exist. A gauge or vacuum reading needs the barometer first.`,
    );
  }
  if (!(exponent >= 1 && exponent <= lossless)) {
    return noAnswer(
      `The exponent lies between 1 (all heat lost) and ${lossless} (none lost); ${sayNumber(exponent)} does not.`,
    );
  }
  return pressure * ratio ** exponent;
}

/**
 * The polytropic exponent between two absolute pressures, Pa: ln(end/start)/ln(ratio). A tight cylinder that is cranked shows
 * about 1.2 and more with its effective ratio; far less is leakage (common practice). It lies between 0 and 1.4.
 */
export function compressionExponent(start: number, end: number, ratio: number): Answer {
  if (!(ratio > 1)) return noAnswer(`A compression ratio of ${sayNumber(ratio)} compresses nothing.`);
  for (const pressure of [start, end]) {
    if (!(pressure > 0)) {
      return noAnswer(
        `An absolute pressure of ${sayPressure(pressure)} does not exist. A gauge or vacuum reading needs the barometer first.`,
      );
    }
  }
  const exponent = Math.log(end / start) / Math.log(ratio);
  if (!(exponent > 0)) {
    return noAnswer(
      `From ${sayPressure(start)} to ${sayPressure(end)} nothing was compressed. Both must be absolute, the start first.`,
    );
  }
  if (exponent > lossless) {
    return noAnswer(
      `The exponent would be ${sayNumber(exponent)}, and air without any loss has ${lossless}. Check that the cylinder did not fire, the pressure at the start, and the ratio.`,
    );
  }
  return exponent;
}

/** The exponent of air that loses neither heat nor mass. */
const lossless = 1.4;

/**
 * What a gauge (Pa above the barometer) that was read at one barometer (Pa) would show at another: compression · other/baro.
 * Both the pressure at the start and the zero of the gauge go with the barometer, so the reading scales with it
 * whatever the exponent is (polytropic law).
 */
export function compressionAt(compression: number, baro: number, other: number): Answer {
  for (const pressure of [baro, other]) {
    if (!(pressure > 0))
      return noAnswer(`A barometer of ${sayPressure(pressure)} does not exist. It is an absolute pressure.`);
  }
  if (!(compression >= 0))
    return noAnswer(`A compression of ${sayPressure(compression)} on the gauge does not exist.`);
  return (compression * other) / baro;
}

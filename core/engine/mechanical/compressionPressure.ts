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
  if (!(exponent >= 1 && exponent <= 1.4)) {
    return noAnswer(
      `The exponent lies between 1 (all heat lost) and 1.4 (none lost); ${sayNumber(exponent)} does not.`,
    );
  }
  return pressure * ratio ** exponent;
}

import { type Answer, isNoAnswer, noAnswer } from '../answer.ts';
import { sayAltitude, sayPressure } from '../sayValue.ts';
import { standardPressure } from './standardAtmosphere.ts';

/**
 * The manifold vacuum, Pa below the barometer, that an engine with this vacuum at sea level shows at an altitude (m):
 * vacuum − (101325 Pa − standard pressure). The same engine at the same idle needs about the same absolute pressure
 * in its manifold, so the gauge loses what the barometer loses (U.S. Standard Atmosphere 1976;
 * that the absolute pressure stays is common practice).
 */
export function vacuumAtAltitude(vacuum: number, altitude: number): Answer {
  const outside = standardPressure(altitude);
  if (isNoAnswer(outside)) return outside;
  if (!(vacuum >= 0 && vacuum < 101325)) {
    return noAnswer(
      `A vacuum of ${sayPressure(vacuum)} at sea level does not exist; it lies between 0 and the barometer.`,
    );
  }
  const left = vacuum - (101325 - outside);
  if (left < 0) {
    return noAnswer(
      `At ${sayAltitude(altitude)} the whole barometer is lower than what was left in that manifold at sea level: there is no vacuum to read.`,
    );
  }
  return left;
}

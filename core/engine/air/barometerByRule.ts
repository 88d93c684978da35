import { type Answer, noAnswer } from '../answer.ts';
import { sayAltitude, sayPressure } from '../sayValue.ts';
import { siOf } from '../siOf.ts';

/** 1 inHg of the conventional column over 1000 ft, Pa/m. */
const ruleSlope = (): number => siOf('inHg') / (1000 * siOf('ft'));

/**
 * The barometer, Pa absolute, by the rule of thumb "one inch of mercury for a thousand feet" (common practice;
 * FAA Pilot's Handbook of Aeronautical Knowledge, glossary), from the pressure at sea level (Pa) and the altitude in m.
 * The true slope of the standard atmosphere is 1.07 inHg for the first thousand feet, 0.98 from 3000 ft on, 0.92 from 5000 ft,
 * 0.81 from 9000 ft, so the rule is within 0.25 inHg up to 7000 ft and 0.7 inHg low at 10000 ft.
 * Holds from −1000 to 10000 ft.
 */
export function barometerByRule(seaLevelPressure: number, altitude: number): Answer {
  if (!(seaLevelPressure > 0)) {
    return noAnswer(
      `An absolute pressure of ${sayPressure(seaLevelPressure)} does not exist. Take the weather report’s sea-level figure.`,
    );
  }
  if (!(altitude >= lowest && altitude <= highest)) {
    return noAnswer(
      `The rule of thumb is used from ${sayAltitude(lowest)} to ${sayAltitude(highest)}; for an altitude of ${sayAltitude(altitude)} take \`standard_pressure\` or \`station_pressure\`.`,
    );
  }
  return seaLevelPressure - ruleSlope() * altitude;
}

const lowest = -304.8;
const highest = 3048;

import type { NoAnswer } from '../../expression/functionRow.ts';
import { type Answer, noAnswer } from '../answer.ts';
import { isWithin } from '../isWithin.ts';
import { sayNumber, sayTemperature } from '../sayValue.ts';

/** J/(mol·K) and C/mol: both exact since the SI of 2019 (CODATA 2018). */
const gasConstant = 8.31446261815324;
const faraday = 96485.33212331;

/** Oxygen in dry air, as a fraction of one atmosphere: what the sensor compares with. */
const outsideOxygen = 0.209;

/** Between 350 and 900 °C, K: a colder sensor does not conduct, a hotter one does not last (common practice). */
const hot = { from: 623.15, to: 1173.15 } as const;

function unlikelyHeat(temperature: number): NoAnswer | undefined {
  if (isWithin(temperature, hot.from, hot.to)) return undefined;
  if (!(temperature > 0)) return noAnswer('A temperature below absolute zero does not exist.');
  return noAnswer(
    temperature < hot.from
      ? `A zirconia sensor of ${sayTemperature(temperature)} does not work yet: it conducts from about ${sayTemperature(hot.from)} on. Wait for its heater, or check it.`
      : `No sensor stands ${sayTemperature(temperature)} for long; the formula is used up to ${sayTemperature(hot.to)}. Check the temperature and its unit.`,
  );
}

/**
 * The voltage of a zirconia sensor, V: R·T/(4·F) · ln(0.209/oxygen) (Nernst, four electrons an oxygen molecule).
 * Temperature of the zirconia in K, 350 to 900 °C; the exhaust's oxygen as a fraction of one atmosphere.
 * Equal pressures give 0 V, more oxygen than outside a negative voltage.
 */
export function nernstVolts(temperature: number, oxygen: number): Answer {
  const wrong = unlikelyHeat(temperature);
  if (wrong !== undefined) return wrong;
  if (!(oxygen > 0)) {
    return noAnswer(
      'The oxygen must be above 0: even rich exhaust has a trace in balance with it, such as 10 ^ -20.',
    );
  }
  if (!(oxygen <= 1)) {
    return noAnswer(
      `The oxygen is a fraction of one atmosphere, from above 0 to 1, not ${sayNumber(oxygen)}. A percentage needs its sign: 2 %.`,
    );
  }
  return ((gasConstant * temperature) / (4 * faraday)) * Math.log(outsideOxygen / oxygen);
}

/**
 * The exhaust's oxygen, as a fraction of one atmosphere, at which a hot zirconia sensor gives this voltage (V):
 * 0.209 · exp(−4·F·E/(R·T)), temperature of the zirconia in K, 350 to 900 °C.
 */
export function nernstOxygen(volts: number, temperature: number): Answer {
  const wrong = unlikelyHeat(temperature);
  if (wrong !== undefined) return wrong;
  const oxygen = outsideOxygen * Math.exp((-4 * faraday * volts) / (gasConstant * temperature));
  if (!(oxygen <= 1)) {
    return noAnswer(
      `No exhaust gives ${sayNumber(volts)} V: there would be more than one atmosphere of oxygen. A negative sensor points to a contaminated reference air or swapped leads.`,
    );
  }
  return oxygen;
}

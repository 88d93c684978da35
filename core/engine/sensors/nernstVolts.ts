import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber } from '../sayValue.ts';

/** J/(mol·K) and C/mol: both exact since the SI of 2019 (CODATA 2018). */
const gasConstant = 8.31446261815324;
const faraday = 96485.33212331;

/** Oxygen in dry air, as a fraction of one atmosphere: what the sensor compares with. */
const outsideOxygen = 0.209;

/**
 * The voltage of a zirconia sensor, V: R·T/(4·F) · ln(0.209/oxygen) (Nernst, four electrons an oxygen molecule).
 * Temperature of the zirconia in K, the exhaust's oxygen as a fraction of one atmosphere.
 * Equal pressures give 0 V, more oxygen than outside a negative voltage.
 */
export function nernstVolts(temperature: number, oxygen: number): Answer {
  if (!(temperature > 0)) return noAnswer('A temperature below absolute zero does not exist.');
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
 * 0.209 · exp(−4·F·E/(R·T)), temperature of the zirconia in K.
 */
export function nernstOxygen(volts: number, temperature: number): Answer {
  if (!(temperature > 0)) return noAnswer('A temperature below absolute zero does not exist.');
  const oxygen = outsideOxygen * Math.exp((-4 * faraday * volts) / (gasConstant * temperature));
  if (!(oxygen <= 1)) {
    return noAnswer(
      `No exhaust gives ${sayNumber(volts)} V: there would be more than one atmosphere of oxygen. A negative sensor points to a contaminated reference air or swapped leads.`,
    );
  }
  return oxygen;
}

import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber } from '../sayValue.ts';

/** 25 °C in K, where a thermistor is rated. */
const rated = 298.15;

/**
 * The temperature, K, of a thermistor of this resistance by one constant: 1/T = 1/298.15 K + ln(R/R25)/B (IEC 60539-1).
 * Resistances in Ω, B in K. Exact at 25 °C and where B was taken; at 0 °C it is off by about 0.7 °C
 * for a B taken between 25 and 85 °C, so a table is better where there is one.
 */
export function betaTemperature(resistance: number, beta: number, at25: number): Answer {
  if (!(resistance > 0)) {
    return noAnswer(
      `A sensor of ${sayNumber(resistance)} Ω is a short, which has no temperature. Look for the short before the sensor.`,
    );
  }
  if (!(beta > 0))
    return noAnswer(`The constant B must be above 0 K, not ${sayNumber(beta)} K; 3400 to 4100 K is usual.`);
  if (!(at25 > 0)) return noAnswer(`The resistance at 25 °C must be above 0, not ${sayNumber(at25)} Ω.`);
  const inverse = 1 / rated + Math.log(resistance / at25) / beta;
  if (!(inverse > 0))
    return noAnswer('So small a resistance is beyond what one constant can tell. Look for a short first.');
  return 1 / inverse;
}

/** The constant B, K, between two points of a thermistor: ln(R1/R2)/(1/T1 − 1/T2); temperatures in K, resistances in Ω. */
export function betaOf(
  firstTemperature: number,
  first: number,
  secondTemperature: number,
  second: number,
): Answer {
  if (!(first > 0 && second > 0)) return noAnswer('Both resistances must be above 0.');
  if (!(firstTemperature > 0 && secondTemperature > 0))
    return noAnswer('A temperature below absolute zero does not exist.');
  if (firstTemperature === secondTemperature)
    return noAnswer('The two points must have different temperatures.');
  return Math.log(first / second) / (1 / firstTemperature - 1 / secondTemperature);
}

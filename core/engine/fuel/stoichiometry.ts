import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber } from '../sayValue.ts';
import { airFuelRatio } from './composition.ts';
import { findFuel } from './findFuel.ts';

/**
 * The mass of air that burns a unit mass of this fuel completely:
 * 34.56·(4c + h − 2o) / (12.011·c + 1.008·h + 15.999·o), air being O2 + 3.773 N2
 * (Heywood, Internal Combustion Engine Fundamentals, chapter 3). E0 gives 14.60;
 * the 14.7 printed on many gauges is the trade's round figure.
 */
export function stoichiometricRatio(fuel: string): Answer {
  const found = findFuel(fuel);
  return 'noAnswer' in found ? found : airFuelRatio(found.composition);
}

/** Lambda from an air-fuel ratio by mass: the ratio over the fuel's stoichiometric ratio. 1 is stoichiometric, above is lean. */
export function lambdaOf(ratio: number, fuel: string): Answer {
  if (!(ratio > 0)) {
    return noAnswer(
      `An air-fuel ratio of ${sayNumber(ratio)} does not exist; it is the mass of air to one of fuel.`,
    );
  }
  const stoichiometric = stoichiometricRatio(fuel);
  return typeof stoichiometric === 'number' ? ratio / stoichiometric : stoichiometric;
}

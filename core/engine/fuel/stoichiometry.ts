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

/** The air-fuel ratio by mass at this lambda: lambda times the fuel's stoichiometric ratio. */
export function ratioOf(lambda: number, fuel: string): Answer {
  const wrong = unlikelyLambda(lambda);
  if (wrong !== undefined) return wrong;
  const stoichiometric = stoichiometricRatio(fuel);
  return typeof stoichiometric === 'number' ? lambda * stoichiometric : stoichiometric;
}

/** The equivalence ratio φ = 1/λ: above 1 is rich. The same sum turns φ into λ. */
export function equivalenceOf(lambda: number): Answer {
  return unlikelyLambda(lambda) ?? 1 / lambda;
}

/** The stoichiometric ratio of a fuel by its hydrogen and oxygen atoms for each carbon atom: CHyOz. */
export function ratioOfComposition(hydrogen: number, oxygen: number): Answer {
  const composition = { carbon: 1, hydrogen, oxygen };
  if (!(hydrogen >= 0 && oxygen >= 0)) {
    return noAnswer(
      `A fuel of ${sayNumber(hydrogen)} hydrogen and ${sayNumber(oxygen)} oxygen atoms does not exist.`,
    );
  }
  const ratio = airFuelRatio(composition);
  if (ratio > 0) return ratio;
  return noAnswer(
    'This composition holds all the oxygen that it needs: it is burnt already. Check the atoms of oxygen.',
  );
}

function unlikelyLambda(lambda: number): Answer | undefined {
  return lambda > 0
    ? undefined
    : noAnswer(`A lambda of ${sayNumber(lambda)} does not exist; 1 is stoichiometric.`);
}

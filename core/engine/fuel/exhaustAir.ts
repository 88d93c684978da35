import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber, sayPercent } from '../sayValue.ts';
import {
  brettschneider,
  type ExhaustGas,
  gasComposition,
  oxygenNeeded,
  unlikelyGas,
} from './lambdaFromGas.ts';

/** Oxygen in dry air, as a share of the volume (U.S. Standard Atmosphere 1976, table 3: 0.209476). */
const oxygenInAir = 0.2095;

/**
 * The share of a gas sample (0 to 1) that is outside air, when the lambda before the leak is known, from a sensor upstream:
 * (λ of the gas − λ) · oxygen needed / 0.2095.
 * Air that joins after burning adds oxygen and thins all the rest alike, so in Brettschneider's formula only
 * the free oxygen grows: the step from one lambda to the other, times the oxygen that the fuel in the sample needs,
 * is the oxygen that came with the air. An exact rearrangement of that formula.
 * A little below 0 is the instruments' error; more than 5 % below is told as a contradiction.
 */
export function exhaustAir(gas: ExhaustGas, lambda: number, fuel: string): Answer {
  const wrong = unlikelyGas(gas);
  if (wrong !== undefined) return wrong;
  if (!(lambda > 0)) return noAnswer(`A lambda of ${sayNumber(lambda)} does not exist; 1 is stoichiometric.`);
  const composition = gasComposition(fuel);
  if ('noAnswer' in composition) return composition;
  const shown = brettschneider(gas, composition);
  const share = ((shown - lambda) * oxygenNeeded(gas, composition)) / oxygenInAir;
  if (share < -0.05) {
    return noAnswer(
      `The gas makes a lambda of ${sayNumber(shown)}, richer than the ${sayNumber(lambda)} given: air in the pipe cannot do that. Compare the sensor with the analyser first.`,
    );
  }
  if (share >= 1) {
    return noAnswer(
      `More than the whole sample would be air (${sayPercent(share)}). Check the gases and the lambda.`,
    );
  }
  return share;
}

/**
 * The share of the fuel's carbon (0 to 1) that left unburnt, as hydrocarbons: 6·HC / (CO2 + CO + 6·HC), hydrocarbons counted as hexane.
 * One dead cylinder of four, sampled before the catalyst with all its fuel counted, makes 25 %. Air in the sample does not move it.
 */
export function unburntFuel(co2: number, co: number, hc: number): Answer {
  const wrong = unlikelyGas({ co2, co, o2: 0, hc, nox: 0 });
  if (wrong !== undefined) return wrong;
  return (6 * hc) / (co2 + co + 6 * hc);
}

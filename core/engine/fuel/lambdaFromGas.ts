import type { NoAnswer } from '../../expression/functionRow.ts';
import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber, sayPercent } from '../sayValue.ts';
import type { Composition } from './composition.ts';
import { findFuel } from './findFuel.ts';

/** Dry exhaust gas, each as a share of the volume (15 % is 0.15, 100 ppm is 1e-4); hydrocarbons counted as hexane. */
export interface ExhaustGas {
  readonly co2: number;
  readonly co: number;
  readonly o2: number;
  readonly hc: number;
  readonly nox: number;
}

/** CO·H2O / (CO2·H2) of the water-gas reaction as the exhaust freezes it. */
const waterGas = 3.5;

/**
 * Lambda from an exhaust-gas analysis: the oxygen found, bound and free, over what the fuel found needs.
 *
 * λ = (CO2 + CO/2 + O2 + NO/2 + (h/4 · 3.5/(3.5 + CO/CO2) − o/2)·(CO2 + CO)) / ((1 + h/4 − o/2)·(CO2 + CO + 6·HC)),
 * h and o being the fuel's hydrogen and oxygen atoms per carbon atom.
 * J. Brettschneider (1979), as in UN Regulation No. 83 and OIML R 99 (values from memory).
 *
 * Holds from about 0.75 to 1.5. Gas after a working catalyst gives the same lambda; air that leaks into the pipe
 * or a secondary air pump makes it leaner than the engine was.
 * No answer without CO2, with shares below 0 or above 100 % together, or for a fuel without carbon.
 */
export function lambdaFromGas(gas: ExhaustGas, fuel: string): Answer {
  const wrong = unlikelyGas(gas);
  if (wrong !== undefined) return wrong;
  const composition = gasComposition(fuel);
  return 'noAnswer' in composition ? composition : brettschneider(gas, composition);
}

/** The same for a fuel by its hydrogen and oxygen atoms for each carbon atom. */
export function lambdaFromComposition(gas: ExhaustGas, hydrogen: number, oxygen: number): Answer {
  const wrong = unlikelyGas(gas);
  if (wrong !== undefined) return wrong;
  if (!(hydrogen >= 0 && oxygen >= 0 && 1 + hydrogen / 4 - oxygen / 2 > 0)) {
    return noAnswer(
      `A fuel of ${sayNumber(hydrogen)} hydrogen and ${sayNumber(oxygen)} oxygen atoms for each carbon atom does not burn. Petrol has about 1.73 and 0.018.`,
    );
  }
  return brettschneider(gas, { carbon: 1, hydrogen, oxygen });
}

/** What is wrong with a gas analysis, if anything: shares that do not exist, or no burnt gas at all. */
export function unlikelyGas(gas: ExhaustGas): NoAnswer | undefined {
  const { co2, co, o2, hc, nox } = gas;
  if (!(co2 >= 0 && co >= 0 && o2 >= 0 && hc >= 0 && nox >= 0)) {
    const [name, share] = Object.entries(gas).find(([, each]) => !(each >= 0)) ?? ['co2', co2];
    return noAnswer(
      `There is no gas of ${sayPercent(share)} (\`${name}\`). Zero the analyser, or check the sign.`,
    );
  }
  if (co2 === 0) {
    return noAnswer(
      co === 0
        ? 'CO2 and CO are both 0: no burnt gas was sampled. Check the probe, the pump and that the engine fires.'
        : 'CO2 is 0: a fire that makes CO makes CO2 too. Check the probe and the analyser.',
    );
  }
  const total = co2 + co + o2 + hc + nox;
  if (total > 1) {
    return noAnswer(
      `The gases add up to ${sayPercent(total)}, more than the whole. Check their units: hc and nox are in ppm.`,
    );
  }
  return undefined;
}

/** The composition that a fuel's exhaust gas is judged by; it must have carbon. */
export function gasComposition(fuel: string): Composition | NoAnswer {
  const found = findFuel(fuel);
  if ('noAnswer' in found) return found;
  const composition = found.gasComposition ?? found.composition;
  if (composition.carbon > 0) return composition;
  return noAnswer(`The fuel ${found.name} has no carbon: its lambda cannot be read from CO2 and CO.`);
}

/** The formula itself, for a fuel with carbon and a gas with CO2. */
export function brettschneider(gas: ExhaustGas, fuel: Composition): number {
  return oxygenFound(gas, fuel) / oxygenNeeded(gas, fuel);
}

/** The oxygen of the air, as a share of the sample's volume, that is in it bound and free: the formula's upper half. */
export function oxygenFound(
  { co2, co, o2, nox }: ExhaustGas,
  { carbon, hydrogen, oxygen }: Composition,
): number {
  const bound = (hydrogen / carbon / 4) * burntHydrogen({ co2, co }) - oxygen / carbon / 2;
  return co2 + co / 2 + o2 + nox / 2 + bound * (co2 + co);
}

/**
 * The oxygen that came with the nitrogen of a sample, as a share of its volume: what is no other gas is nitrogen, and air
 * has 3.773 parts of it for one of oxygen. Of a gas that was analysed well it is `oxygenFound`.
 */
export function oxygenBrought(gas: ExhaustGas, { carbon, hydrogen }: Composition): number {
  const { co2, co, o2, hc, nox } = gas;
  const unburnt = (hydrogen / carbon / 2) * (1 - burntHydrogen(gas)) * (co2 + co);
  return (1 - co2 - co - o2 - hc - nox - unburnt) / 3.773;
}

/** The share of the fuel's hydrogen that is water. */
const burntHydrogen = ({ co2, co }: Pick<ExhaustGas, 'co2' | 'co'>): number =>
  waterGas / (waterGas + co / co2);

/** The oxygen, as a share of the sample's volume, that the fuel found in it needs: the formula's lower half. */
export function oxygenNeeded(
  { co2, co, hc }: Pick<ExhaustGas, 'co2' | 'co' | 'hc'>,
  { carbon, hydrogen, oxygen }: Composition,
): number {
  return (1 + hydrogen / carbon / 4 - oxygen / carbon / 2) * (co2 + co + 6 * hc);
}

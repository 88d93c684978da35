import type { Saying } from '../../expression/functionRow.ts';
import { isNoAnswer } from '../answer.ts';
import type { Wording } from '../inWords.ts';
import { type ExhaustGas, lambdaFromGas, unlikelyGas } from './lambdaFromGas.ts';

/** Where the trade draws its lines, as shares of the volume (common practice). */
const line = {
  /** Less burnt gas than this, with the air's oxygen, is no exhaust. */
  burnt: 0.03,
  air: 0.17,
  carbonMonoxide: 0.01,
  /** Carbon monoxide beside this much free oxygen did not burn together with it. */
  oxygenBesideMonoxide: 0.02,
  oxygen: 0.015,
  hydrocarbons: 300e-6,
  leanLambda: 1.05,
} as const;

/** An analyser that counts hexane sees about half of raw petrol (common practice), so the rest is reckoned twice. */
const seenHalf = 2;

export const gasSayings: readonly Saying[] = [
  {
    words: 'burns well',
    meaning:
      'little CO, O2 and HC beside a lambda near 1. A working catalyst makes almost any engine look like this: sample before it where you can.',
  },
  {
    words: 'rich',
    meaning: 'CO without O2: the fire ran out of air. Look for too much fuel or too little counted air.',
  },
  {
    words: 'lean, or air in the exhaust',
    meaning:
      'O2 with little CO and HC: four gases alone cannot tell a lean fire from a leak into the pipe or the hose. A lambda upstream can: see exhaust_air.',
  },
  {
    words: 'air in the exhaust',
    meaning:
      'CO and O2 side by side, with little HC: they did not burn together, so the air usually came afterwards, through a leak, secondary air or the probe. Cylinders of very unlike mixture look similar.',
  },
  {
    words: 'misfire at a normal mixture',
    meaning:
      'HC and O2 both high at a lambda near 1: air and fuel went through unburnt together. Ignition and compression come first.',
  },
  {
    words: 'lean misfire',
    meaning:
      'HC and O2 both high, and lambda lean even if the analyser sees only half of the raw fuel: usually too little fuel to light. Look for unmetered air and fuel supply; a leak into the pipe must be ruled out.',
  },
  {
    words: 'misfire, mixture not clear',
    meaning:
      'HC and O2 both high, and lambda lean only by what the analyser may have missed of the raw fuel. Find the cylinder first; the fuel trim says more about the mixture.',
  },
  {
    words: 'fuel left unburnt',
    meaning:
      'HC high without O2: fuel that found no fire, such as oil or fuel vapour, timing, a cold engine or a weak catalyst.',
  },
  {
    words: 'rich with unburnt fuel',
    meaning: 'CO and HC both high: far too rich, or rich with a misfire. Lean it first, then look again.',
  },
  {
    words: 'mostly air',
    meaning: 'hardly any burnt gas: the probe hangs in the air, the hose leaks, or the engine does not fire.',
  },
];

/**
 * What CO2, CO, O2 and hydrocarbons together usually mean (common practice), in one of the words of `gasSayings`.
 * Shares of the volume, dry, hydrocarbons as hexane. Lambda by Brettschneider's formula for the fuel decides what is lean.
 * Limits: CO 1 %, O2 1.5 % (2 % beside CO), HC 300 ppm, lambda 1.05; warm engine, sampled before the catalyst or with it cold.
 */
export function gasPattern(gas: ExhaustGas, fuel: string): Wording {
  const { co2, co, o2, hc } = gas;
  if (o2 > line.air && co2 + co < line.burnt && unlikelyGas({ ...gas, co2: 0.1 }) === undefined)
    return 'mostly air';
  const lambda = lambdaFromGas(gas, fuel);
  if (isNoAnswer(lambda)) return lambda;
  const unburnt = hc > line.hydrocarbons;
  if (co > line.carbonMonoxide) {
    if (o2 > line.oxygenBesideMonoxide && !unburnt) return 'air in the exhaust';
    return unburnt ? 'rich with unburnt fuel' : 'rich';
  }
  const lean = lambda > line.leanLambda;
  if (unburnt) {
    if (o2 <= line.oxygen) return 'fuel left unburnt';
    if (!lean) return 'misfire at a normal mixture';
    const counted = lambdaFromGas({ ...gas, hc: seenHalf * hc }, fuel);
    return !isNoAnswer(counted) && counted > line.leanLambda ? 'lean misfire' : 'misfire, mixture not clear';
  }
  return lean || o2 > line.oxygen ? 'lean, or air in the exhaust' : 'burns well';
}

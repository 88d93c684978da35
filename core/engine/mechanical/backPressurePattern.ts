import type { Saying } from '../../expression/functionRow.ts';
import { noAnswer } from '../answer.ts';
import type { Wording } from '../inWords.ts';
import { sayNumber, sayPressure } from '../sayValue.ts';
import { siOf } from '../siOf.ts';

export const backPressureSayings: readonly Saying[] = [
  { words: 'free', meaning: 'no more than a sound exhaust makes at this speed.' },
  {
    words: 'somewhat high',
    meaning:
      'above the usual limit: compare with the reading behind the catalyst before anything is replaced.',
  },
  {
    words: 'blocked',
    meaning:
      'twice the usual limit and more: the exhaust holds the engine back. The reading before and behind each part shows which.',
  },
];

/** The usual limit on the gauge, Pa: 1.5 psi up to idle, 3 psi from 2500 rpm on, straight between (common practice). */
export function backPressureLimit(rpm: number): number {
  const [idle, fast] = [1000 / 60, 2500 / 60];
  const share = Math.min(1, Math.max(0, (rpm - idle) / (fast - idle)));
  return (1.5 + 1.5 * share) * siOf('psi');
}

/** Exhaust back pressure (Pa on the gauge) at a speed without load (turns a second), in one of the words of `backPressureSayings`. */
export function backPressurePattern(backPressure: number, rpm: number): Wording {
  if (!(rpm > 0)) return noAnswer(`At ${sayNumber(rpm * 60)} rpm nothing flows through the exhaust.`);
  if (!(backPressure >= -siOf('psi')))
    return noAnswer(`A back pressure of ${sayPressure(backPressure)} on the gauge does not exist.`);
  const limit = backPressureLimit(rpm);
  if (backPressure <= limit) return 'free';
  return backPressure < 2 * limit ? 'somewhat high' : 'blocked';
}

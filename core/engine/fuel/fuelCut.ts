import type { Saying } from '../../expression/functionRow.ts';
import { noAnswer } from '../answer.ts';
import type { Wording } from '../inWords.ts';
import { sayNumber } from '../sayValue.ts';

/** Turns a second below which the fuel is back on: 1200 rpm (common practice: 1200 to 1500 rpm). */
const lowestSpeed = 1200 / 60;
/** How far above its closed position a throttle still counts as closed. */
const closedWithin = 0.015;
/** Volts of a switching zirconia sensor above which the exhaust is rich. */
const rich = 0.45;

export const fuelCutSayings: readonly Saying[] = [
  {
    words: 'fuel cut',
    meaning:
      'throttle closed, speed up, next to no pulse: the fuel is off. Trims stand still meanwhile; leave such moments out of their mean.',
  },
  {
    words: 'cut, but the exhaust reads rich',
    meaning:
      'the pulse is cut and the front sensor does not go lean: an injector may drip, vapour may be drawn in, or the sensor may be slow.',
  },
  {
    words: 'still injecting',
    meaning:
      'a long pulse on a closed throttle at speed: cold engine, catalyst warming or a throttle that is not seen as closed.',
  },
  { words: 'throttle open', meaning: 'no coast-down, so nothing to judge.' },
  { words: 'too slow to tell', meaning: 'below 1200 rpm the fuel is on again.' },
];

/**
 * Whether one moment of a coast-down shows the fuel cut off (common practice), in one of the words of `fuelCutSayings`.
 * Speed in turns a second, pulse width and the longest pulse that counts as cut in s, throttle and its closed position as shares,
 * the front sensor in V where there is one (NaN where there is not). Older strategies show up to 1.2 ms, newer ones 0.
 */
export function fuelCut(
  rpm: number,
  pulseWidth: number,
  throttle: number,
  closed: number,
  longest: number,
  frontSensor: number,
): Wording {
  if (!(pulseWidth >= 0))
    return noAnswer(`A pulse width of ${sayNumber(pulseWidth * 1000)} ms does not exist.`);
  if (!(rpm > 0)) return noAnswer('The engine stands still.');
  if (throttle > closed + closedWithin) return 'throttle open';
  if (rpm < lowestSpeed) return 'too slow to tell';
  if (pulseWidth > longest) return 'still injecting';
  return frontSensor > rich ? 'cut, but the exhaust reads rich' : 'fuel cut';
}

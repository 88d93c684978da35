import type { Saying } from '../../expression/functionRow.ts';
import { type Answer, noAnswer } from '../answer.ts';
import type { Wording } from '../inWords.ts';
import { sayNumber, sayPercent } from '../sayValue.ts';

/**
 * The charge, C, that a parked car takes from its battery: awake · time to sleep + asleep · the rest of the time.
 * Currents in A, times in s. What never falls asleep takes the awake current all the time.
 */
export function parkedCharge(awake: number, timeToSleep: number, asleep: number, parked: number): Answer {
  if (!(awake >= 0 && asleep >= 0))
    return noAnswer('A draw below 0 charges the battery. Turn the clamp round and zero it.');
  if (!(timeToSleep >= 0 && parked >= 0)) return noAnswer('A time below 0 does not exist.');
  const first = Math.min(timeToSleep, parked);
  return awake * first + asleep * (parked - first);
}

/**
 * How long, s, a battery lasts from one state of charge to another (shares) at a steady draw (A); its capacity in C (1 Ah is 3600 C).
 * The rated capacity holds for a twentieth of it an hour; a sleeping car draws far less, which gives a little more.
 */
export function timeParked(capacity: number, draw: number, from: number, to: number): Answer {
  if (!(capacity > 0)) return noAnswer(`A battery of ${sayNumber(capacity / 3600)} Ah does not exist.`);
  if (!(draw > 0)) return noAnswer(`At a draw of ${sayNumber(draw)} A it never runs down.`);
  if (!(from <= 1 && to >= 0 && from >= to)) {
    return noAnswer(`From ${sayPercent(from)} down to ${sayPercent(to)} of charge is no way down.`);
  }
  return (capacity * (from - to)) / draw;
}

export const drawSayings: readonly Saying[] = [
  { words: 'asleep', meaning: 'up to the limit: what a sleeping car usually draws.' },
  {
    words: 'not asleep yet',
    meaning:
      'above the limit, but it had no time to fall asleep: keep the doors latched, key away, and wait before any fuse is pulled.',
  },
  {
    words: 'something stays awake',
    meaning:
      'above the limit after the time that sleep takes: find the circuit by its fuse’s voltage drop rather than by pulling fuses, which wakes others.',
  },
];

/**
 * A parked car's draw (A) some time (s) after it was locked, in one of the words of `drawSayings` (common practice).
 * `limit` is what a sleeping car may draw (A), `sleep` how long it may take to fall asleep (s): both are the maker's where known.
 */
export function drawPattern(draw: number, since: number, limit: number, sleep: number): Wording {
  if (!(draw >= 0)) return noAnswer('A draw below 0 charges the battery. Turn the clamp round and zero it.');
  if (!(since >= 0 && sleep >= 0 && limit > 0))
    return noAnswer('The times and the limit must not be below 0.');
  if (draw <= limit) return 'asleep';
  return since < sleep ? 'not asleep yet' : 'something stays awake';
}

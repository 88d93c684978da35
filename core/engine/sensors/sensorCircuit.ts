import type { Saying } from '../../expression/functionRow.ts';
import { noAnswer } from '../answer.ts';
import type { Wording } from '../inWords.ts';
import { sayNumber } from '../sayValue.ts';

export const circuitSayings: readonly Saying[] = [
  {
    words: 'open circuit',
    meaning:
      'all of the supply at the pin: no current flows. Unplugged, broken inside or in the wire, a lost ground, or the wire touches the supply.',
  },
  {
    words: 'short to ground',
    meaning:
      'next to nothing at the pin: the wire touches ground, the sensor is shorted inside, or the pull-up’s supply is gone. Look at the supply first.',
  },
  {
    words: 'above the supply',
    meaning:
      'more than the pull-up can give: the wire touches battery voltage, or the supply figure is wrong.',
  },
  {
    words: 'between the ends',
    meaning: 'a reading, right or wrong: whether it is true, another instrument must tell.',
  },
];

/**
 * Which end a pulled-up sensor's circuit has failed to, if any (common practice), in one of the words of `circuitSayings`.
 * Volts at the pin and of the supply in V; `margin` is the share of the supply that still counts as its end.
 */
export function sensorCircuit(volts: number, supply: number, margin: number): Wording {
  if (!(supply > 0))
    return noAnswer(`The pull-up must hang on a voltage above 0, not ${sayNumber(supply)} V.`);
  if (!(margin > 0 && margin < 0.5))
    return noAnswer('The margin is a small share of the supply, such as 2 %.');
  if (volts < -supply * margin) {
    return noAnswer(
      `The voltage of ${sayNumber(volts)} V lies below ground. Check the leads, and the sensor’s ground.`,
    );
  }
  if (volts > supply * (1 + margin)) return 'above the supply';
  if (volts >= supply * (1 - margin)) return 'open circuit';
  return volts <= supply * margin ? 'short to ground' : 'between the ends';
}

export const titaniaSayings: readonly Saying[] = [
  { words: 'rich', meaning: 'the voltage stands at the rich end.' },
  { words: 'lean', meaning: 'the voltage stands at the lean end.' },
  {
    words: 'between',
    meaning:
      'on the way from one to the other; a sensor that stays here is cold, or its circuit has lost a side.',
  },
];

/**
 * What a titania sensor says of the mixture, in one of the words of `titaniaSayings`. Its resistance rises by decades from rich to lean
 * (Moos and others, Sensors 11 (2011) 3439–3465), but which voltage that makes is the circuit's affair: `leanEnd` says "high" or "low".
 * On a 5 V supply with the sensor to ground lean is high, the reverse of zirconia (common practice).
 * The outer quarters of the supply count as the ends.
 */
export function titaniaMixture(volts: number, supply: number, leanEnd: string): Wording {
  if (!(supply > 0))
    return noAnswer(`The sensor must hang on a voltage above 0, not ${sayNumber(supply)} V.`);
  const end = leanEnd.trim().toLowerCase();
  if (end !== 'high' && end !== 'low') {
    return noAnswer(
      `The lean end is "high" or "low", not "${leanEnd}": it depends on the circuit, so the maker’s information must say it.`,
    );
  }
  if (!(volts >= 0 && volts <= supply))
    return noAnswer(`A sensor on ${sayNumber(supply)} V cannot give ${sayNumber(volts)} V.`);
  if (volts > supply * 0.25 && volts < supply * 0.75) return 'between';
  return volts >= supply * 0.75 === (end === 'high') ? 'lean' : 'rich';
}

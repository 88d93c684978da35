import type { Saying } from '../../expression/functionRow.ts';
import { type Answer, noAnswer } from '../answer.ts';
import type { Wording } from '../inWords.ts';
import { isWithin } from '../isWithin.ts';
import { sayNumber, sayTemperature } from '../sayValue.ts';
import { curveAt } from '../sensors/curve.ts';

/** The resistance, Ω, inside a battery with its leads up to the probes: (rested − loaded)/current. Volts in V, current in A. */
export function internalResistance(rested: number, loaded: number, current: number): Answer {
  if (!(current > 0))
    return noAnswer(`A load of ${sayNumber(current)} A pulls nothing down; the current must be above 0.`);
  if (!(loaded <= rested))
    return noAnswer('The voltage rises under load, so something charges the battery. Take the charger off.');
  return (rested - loaded) / current;
}

/** Lowest volts after 15 s at half the cold-cranking current, by temperature (°F as printed): battery council table, value from memory. */
const loadLimits = {
  x: [0, 10, 20, 30, 40, 50, 60, 70].map((fahrenheit) => (fahrenheit + 459.67) / 1.8),
  y: [8.5, 8.7, 8.9, 9.1, 9.3, 9.4, 9.5, 9.6],
} as const;

/** 140 °F, K: a battery any hotter is not tested. */
const hottest = 333.15;

/**
 * The least voltage, V, that a charged 12 V battery may show at the end of a load test, by its temperature in K:
 * 9.6 V from 70 °F on, 8.5 V at 0 °F, straight between the table's points. It is a limit of the load test, not of cranking.
 */
export function loadTestLimit(temperature: number): Answer {
  const [coldest = Number.NaN] = loadLimits.x;
  const warmest = loadLimits.x[loadLimits.x.length - 1] ?? Number.NaN;
  if (!isWithin(temperature, coldest, hottest)) {
    return noAnswer(
      `The limit is given from ${sayTemperature(coldest)} to ${sayTemperature(hottest)}; a battery of ${sayTemperature(temperature)} is outside. Let it come to room temperature first.`,
    );
  }
  return (
    curveAt(loadLimits, Math.min(Math.max(temperature, coldest), warmest))?.y ??
    noAnswer('The temperature is no number.')
  );
}

export const chargingSayings: readonly Saying[] = [
  {
    words: 'not charging',
    meaning:
      'no more than a rested battery: drive, field, fuse or wiring. A managed system may idle here on purpose: load it before you judge.',
  },
  {
    words: 'low, or held low on purpose',
    meaning:
      '12.8 to 13.5 V: weak charging, or managed charging that spares fuel. Switch on lamps, blower and rear window and look again.',
  },
  { words: 'charging', meaning: '13.5 to 14.7 V, the usual range of conventional charging.' },
  {
    words: 'high, or raised on purpose',
    meaning:
      '14.7 to 15.0 V: managed charging in the cold or while braking, otherwise a regulator that is set high.',
  },
  {
    words: 'overcharging',
    meaning:
      'above 15.0 V: it boils the battery and harms lamps and electronics. Look at the regulator and its sense wire and ground.',
  },
];

/** The voltage (V) of a running 12 V system at the battery's posts, in one of the words of `chargingSayings` (common practice). */
export function chargingPattern(volts: number): Wording {
  if (!(volts >= 0 && volts <= 20))
    return noAnswer(
      `A running 12 V system does not show ${sayNumber(volts)} V. Check the range of the meter.`,
    );
  if (volts < 12.8) return 'not charging';
  if (volts < 13.5) return 'low, or held low on purpose';
  if (volts <= 14.7) return 'charging';
  return volts <= 15 ? 'high, or raised on purpose' : 'overcharging';
}

export const crankingSayings: readonly Saying[] = [
  { words: 'cranks well', meaning: 'at least 10 V at the posts while the starter turns.' },
  {
    words: 'weak',
    meaning:
      '9 to 10 V: a tired or cold battery, or a starter that draws too much. Measure the current, and test the battery under its own load.',
  },
  {
    words: 'collapses',
    meaning:
      'below 9 V: a battery that is empty or has a bad cell, or a starter that is stuck. Charge and load-test the battery first.',
  },
];

/** The voltage (V) at the battery's posts while a 12 V starter turns, in one of the words of `crankingSayings` (common practice). */
export function crankingPattern(volts: number): Wording {
  if (!(volts >= 0 && volts <= 14))
    return noAnswer(
      `A cranking 12 V battery does not show ${sayNumber(volts)} V. Check where the leads are.`,
    );
  if (volts >= 10) return 'cranks well';
  return volts >= 9 ? 'weak' : 'collapses';
}

export const rippleSayings: readonly Saying[] = [
  { words: 'smooth', meaning: 'up to 0.5 V from peak to peak at the battery: what sound diodes leave.' },
  {
    words: 'raised',
    meaning:
      '0.5 to 1 V: a weak battery no longer smooths it, or a diode begins to fail. Look at its shape: one hump in six missing is an open diode.',
  },
  {
    words: 'far too high',
    meaning:
      'above 1 V: often a diode or a phase, or a battery that is badly connected and smooths nothing. The shape tells: look at it on a scope before anything is replaced.',
  },
];

/** The ripple (V from peak to peak) at the battery of a charging system under load, in one of the words of `rippleSayings` (common practice). */
export function ripplePattern(peakToPeak: number): Wording {
  if (!(peakToPeak >= 0))
    return noAnswer(
      `A ripple of ${sayNumber(peakToPeak)} V does not exist; it is counted from peak to peak.`,
    );
  if (peakToPeak <= 0.5) return 'smooth';
  return peakToPeak <= 1 ? 'raised' : 'far too high';
}

/**
 * The frequency of the ripple, Hz, of a three-phase alternator with six diodes: 6 humps for each pair of poles in each of its turns.
 * Speed of the engine in turns a second, `pulley` the alternator's turns for one of the engine.
 * A failed diode leaves one deep hump for each pair of poles: a sixth of this frequency.
 */
export function rippleFrequency(rpm: number, pulley: number, polePairs: number): Answer {
  if (!(rpm >= 0)) return noAnswer(`A speed of ${sayNumber(rpm * 60)} rpm does not exist.`);
  if (!(pulley > 0)) return noAnswer('The pulleys’ ratio must be above 0; 2 to 3 is usual.');
  if (!(polePairs >= 1 && Number.isInteger(polePairs))) {
    return noAnswer(
      `An alternator has a whole number of pole pairs, not ${sayNumber(polePairs)}; 6 and 8 are usual.`,
    );
  }
  return 6 * polePairs * pulley * rpm;
}

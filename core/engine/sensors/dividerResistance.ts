import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber } from '../sayValue.ts';

/**
 * The resistance, Ω, of a sensor between ground and the point where its voltage is taken: pullup · volts / (supply − volts) (Ohm's law).
 * Volts at the sensor and behind the pull-up in V, the pull-up in Ω.
 * At the supply no current flows: the circuit is open, and there is no resistance to tell.
 */
export function dividerResistance(volts: number, supply: number, pullup: number): Answer {
  if (!(supply > 0))
    return noAnswer(`The pull-up must hang on a voltage above 0, not ${sayNumber(supply)} V.`);
  if (!(pullup > 0)) return noAnswer('The pull-up must have a resistance above 0.');
  if (!(volts >= 0)) {
    return noAnswer(
      `The voltage of ${sayNumber(volts)} V lies below ground. Check the leads, and the sensor’s ground.`,
    );
  }
  if (!(volts < supply)) {
    return noAnswer(
      `The voltage of ${sayNumber(volts)} V is not below the supply of ${sayNumber(supply)} V: no current flows, the circuit is open.`,
    );
  }
  return (pullup * volts) / (supply - volts);
}

/**
 * The voltage at a sensor of this resistance behind a pull-up: supply · R / (R + pullup), the voltage that a good circuit shows.
 * Resistances in Ω. A short gives 0; an open circuit gives the supply and has no resistance to enter.
 */
export function dividerVolts(resistance: number, supply: number, pullup: number): Answer {
  if (!(resistance >= 0)) return noAnswer(`A resistance of ${sayNumber(resistance)} Ω does not exist.`);
  if (!(supply > 0))
    return noAnswer(`The pull-up must hang on a voltage above 0, not ${sayNumber(supply)} V.`);
  if (!(pullup > 0)) return noAnswer('The pull-up must have a resistance above 0.');
  return (supply * resistance) / (resistance + pullup);
}

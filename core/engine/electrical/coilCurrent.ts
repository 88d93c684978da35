import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber } from '../sayValue.ts';

/**
 * The current, A, in a coil some time (s) after it was switched on: V/R · (1 − exp(−t·R/L)), the law of the RL circuit.
 * Volts across the coil, the resistance (Ω) of the whole circuit, the inductance in H. The core is taken as not saturated:
 * a real ramp bends upward where it saturates, and the current is then higher than this.
 */
export function coilCurrent(volts: number, resistance: number, inductance: number, time: number): Answer {
  if (!(resistance > 0)) return noAnswer(`The resistance must be above 0, not ${sayNumber(resistance)} Ω.`);
  if (!(inductance > 0)) {
    return noAnswer(`The inductance must be above 0, not ${sayNumber(inductance * 1000)} mH.`);
  }
  if (!(time >= 0))
    return noAnswer(`A time of ${sayNumber(time * 1000)} ms is before the coil was switched on.`);
  // expm1 keeps the digits of the first microseconds.
  return (volts / resistance) * -Math.expm1((-time * resistance) / inductance);
}

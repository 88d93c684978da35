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

/**
 * How long, s, a coil takes to this current (A): −L/R · ln(1 − i·R/V), the same law solved for the time.
 * A current that the voltage cannot drive through the resistance is never reached.
 */
export function timeToCurrent(
  current: number,
  volts: number,
  resistance: number,
  inductance: number,
): Answer {
  if (!(resistance > 0)) return noAnswer(`The resistance must be above 0, not ${sayNumber(resistance)} Ω.`);
  if (!(inductance > 0)) {
    return noAnswer(`The inductance must be above 0, not ${sayNumber(inductance * 1000)} mH.`);
  }
  if (!(volts > 0 && current >= 0))
    return noAnswer('The voltage must be above 0, and the current not below it.');
  const full = volts / resistance;
  if (!(current < full)) {
    return noAnswer(
      `A current of ${sayNumber(current)} A is never reached: ${sayNumber(volts)} V drive at most ${sayNumber(full)} A through ${sayNumber(resistance)} Ω.`,
    );
  }
  return (-inductance / resistance) * Math.log1p(-current / full);
}

/**
 * The inductance, H, from the start of a current ramp: V · time/current, the winding's resistance left aside.
 * Holds while the current is small against V/R; it comes out about half the share i·R/V too high.
 */
export function rampInductance(volts: number, current: number, time: number): Answer {
  if (!(volts > 0)) return noAnswer('The voltage across the coil must be above 0.');
  if (!(current > 0 && time > 0))
    return noAnswer('The ramp must rise: its current and its time must be above 0.');
  return (volts * time) / current;
}

/** The energy, J, that a coil holds at a current: ½·L·i². */
export function coilEnergy(current: number, inductance: number): Answer {
  if (!(inductance > 0)) {
    return noAnswer(`The inductance must be above 0, not ${sayNumber(inductance * 1000)} mH.`);
  }
  return 0.5 * inductance * current * current;
}

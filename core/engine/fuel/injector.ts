import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber, sayPressure } from '../sayValue.ts';

/**
 * The share of the time that an injector is energised: pulse width (s) times one injection per two turns (rpm in turns a second).
 * Holds for sequential injection; where an injector fires every turn, the share is twice this.
 * Above 1 it would have to stay open: it no longer follows the command. SAE J1832 defines pulse width (value from memory).
 */
export function injectorDuty(pulseWidth: number, rpm: number): Answer {
  if (!(rpm > 0))
    return noAnswer(`At ${sayNumber(rpm * 60)} rpm nothing is injected; the speed must be above 0 rpm.`);
  if (!(pulseWidth >= 0))
    return noAnswer(`A pulse width of ${sayNumber(pulseWidth * 1000)} ms does not exist.`);
  return (pulseWidth * rpm) / 2;
}

/**
 * An injector's flow at another pressure: flow · √(actual/rated) (Bernoulli), in whatever unit the flow has.
 * Both pressures are the difference across the injector, Pa: rail minus manifold (or minus cylinder), not the gauge at the rail.
 */
export function injectorFlow(flow: number, rated: number, actual: number): Answer {
  if (!(flow >= 0)) return noAnswer('A rated flow below nothing does not exist.');
  if (!(rated > 0)) {
    return noAnswer(
      `The pressure that the injector was rated at must be above 0, not ${sayPressure(rated)}.`,
    );
  }
  if (!(actual >= 0)) {
    return noAnswer(
      `With ${sayPressure(actual)} across it the injector would run backwards. Take rail pressure minus manifold pressure, both absolute.`,
    );
  }
  return flow * Math.sqrt(actual / rated);
}

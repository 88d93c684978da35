import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber } from '../sayValue.ts';

/*
 * Dwell on a distributor: how far it turns while the coil is charging. It turns at half the engine's speed, once for all cylinders.
 * Angles in turns of the distributor, times in s, speed of the engine in turns a second.
 */

/** The dwell angle, turns of the distributor: time · rpm/2. It must fit between two firings, a turn over the cylinders. */
export function dwellAngle(time: number, rpm: number, cylinders: number): Answer {
  const wrong = unlikely(rpm, cylinders);
  if (wrong !== undefined) return wrong;
  if (!(time >= 0)) return noAnswer(`A dwell of ${sayNumber(time * 1000)} ms does not exist.`);
  const angle = (time * rpm) / 2;
  if (angle < 1 / cylinders) return angle;
  return noAnswer(
    `A dwell of ${sayNumber(time * 1000)} ms does not fit: at ${sayNumber(rpm * 60)} rpm the next cylinder fires after ${sayNumber(2000 / (rpm * cylinders))} ms.`,
  );
}

/** The time, s, that a dwell angle (turns of the distributor) lasts at a speed: angle/(rpm/2). */
export function dwellTime(angle: number, rpm: number, cylinders: number): Answer {
  const wrong = unlikely(rpm, cylinders);
  if (wrong !== undefined) return wrong;
  if (angle >= 0 && angle < 1 / cylinders) return (2 * angle) / rpm;
  return noAnswer(
    `A dwell of ${sayNumber(angle * 360)}° does not exist: each cylinder has ${sayNumber(360 / cylinders)}° of the distributor.`,
  );
}

function unlikely(rpm: number, cylinders: number): Answer | undefined {
  if (!(rpm > 0)) return noAnswer('The engine stands still: nothing turns the distributor.');
  if (cylinders >= 1 && Number.isInteger(cylinders)) return undefined;
  return noAnswer(`An engine has a whole number of cylinders, not ${sayNumber(cylinders)}.`);
}

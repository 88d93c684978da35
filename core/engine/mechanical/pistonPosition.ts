import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber } from '../sayValue.ts';

/**
 * How far the piston stands below top dead centre, m: a·(1 − cos θ) + l − √(l² − a²·sin² θ), a half the stroke, l the rod
 * (Heywood, Internal Combustion Engine Fundamentals, chapter 2). The angle in turns after top dead centre, stroke and rod in m.
 */
export function pistonPosition(angle: number, stroke: number, rod: number): Answer {
  const crank = stroke / 2;
  if (!(stroke > 0)) return noAnswer('The stroke must be more than nothing. Check `engine: stroke`.');
  if (!(rod > crank)) {
    return noAnswer(
      `A connecting rod of ${sayNumber(rod * 1000)} mm is too short for a stroke of ${sayNumber(stroke * 1000)} mm; it must be longer than half of it.`,
    );
  }
  const theta = 2 * Math.PI * (angle % 1);
  const sine = crank * Math.sin(theta);
  return crank * (1 - Math.cos(theta)) + rod - Math.sqrt(rod * rod - sine * sine);
}

/** The mean piston speed, m/s: twice the stroke (m) in each turn (speed in turns a second; Heywood, chapter 2). */
export function pistonSpeed(rpm: number, stroke: number): Answer {
  if (!(stroke > 0)) return noAnswer('The stroke must be more than nothing. Check `engine: stroke`.');
  if (!(rpm >= 0)) return noAnswer(`A speed of ${sayNumber(rpm * 60)} rpm does not exist.`);
  return 2 * stroke * rpm;
}

import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber } from '../sayValue.ts';

/**
 * The volume above one piston, m³: Vc · (1 + (r − 1)/2 · (R + 1 − cos θ − √(R² − sin² θ)))
 * (Heywood, Internal Combustion Engine Fundamentals, chapter 2; slider-crank without offset).
 * The angle is counted in turns after top dead centre, the displacement is the whole engine's in m³,
 * `ratio` the compression ratio, `rod` the connecting rod over the crank radius (half the stroke).
 */
export function cylinderVolume(
  angle: number,
  displacement: number,
  cylinders: number,
  ratio: number,
  rod: number,
): Answer {
  if (!(displacement > 0)) {
    return noAnswer('The displacement must be more than nothing. Check `engine: displacement`.');
  }
  if (!(cylinders >= 1 && Number.isInteger(cylinders))) {
    return noAnswer(`An engine has a whole number of cylinders, not ${sayNumber(cylinders)}.`);
  }
  if (!(ratio > 1)) return noAnswer(`A compression ratio of ${sayNumber(ratio)} compresses nothing.`);
  if (!(rod > 1)) {
    return noAnswer(
      'The connecting rod must be longer than the crank radius; usually it is 3 to 4 times as long.',
    );
  }
  const clearance = displacement / cylinders / (ratio - 1);
  const theta = 2 * Math.PI * (angle % 1);
  const sine = Math.sin(theta);
  const below = rod + 1 - Math.cos(theta) - Math.sqrt(rod * rod - sine * sine);
  return clearance * (1 + ((ratio - 1) / 2) * below);
}

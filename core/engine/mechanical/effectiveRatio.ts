import { type Answer, isNoAnswer, noAnswer } from '../answer.ts';
import { sayNumber } from '../sayValue.ts';
import { cylinderVolume } from './cylinderVolume.ts';

/**
 * The compression ratio that counts: the volume when the intake valve closes over the volume at top dead centre
 * (slider-crank as in `cylinderVolume`). `ivc` is counted in turns after bottom dead centre, `rod` is the rod over the crank radius.
 * Late closing gives back part of the charge at cranking speed, so a gauge reads less than the ratio on paper would make.
 */
export function effectiveRatio(ivc: number, ratio: number, rod: number): Answer {
  if (!(ivc > -0.5 && ivc < 0.5)) {
    return noAnswer(
      `An intake valve that closes ${sayNumber(ivc * 360)}° after bottom dead centre closes outside the compression stroke.`,
    );
  }
  // Any displacement will do: the two volumes are divided.
  const closing = cylinderVolume(0.5 + ivc, 1, 1, ratio, rod);
  const top = cylinderVolume(0, 1, 1, ratio, rod);
  if (isNoAnswer(closing)) return closing;
  return isNoAnswer(top) ? top : closing / top;
}

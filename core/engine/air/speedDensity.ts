import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber, sayPercent } from '../sayValue.ts';
import { dryAirConstant, unlikelyAir } from './airDensity.ts';

/**
 * The air mass flow of a four-stroke engine, kg/s, from what the manifold holds: η · p · V · n/2 / (287.05 · T)
 * (Heywood, Internal Combustion Engine Fundamentals, chapter 2, solved for the flow).
 * Manifold pressure absolute in Pa, temperature of the charge in K, speed in turns a second, displacement in m³;
 * the volumetric efficiency as a share (0.75 is 75 %), referred to the manifold's density.
 */
export function speedDensity(
  map: number,
  iat: number,
  rpm: number,
  volumetricEfficiency: number,
  displacement: number,
): Answer {
  const wrong = unlikelyAir(map, iat);
  if (wrong !== undefined) return noAnswer(wrong);
  if (!(rpm > 0)) {
    return noAnswer(
      `At ${sayNumber(rpm * 60)} rpm the engine draws nothing in; the speed must be above 0 rpm.`,
    );
  }
  if (!(volumetricEfficiency >= 0)) {
    return noAnswer(`A volumetric efficiency of ${sayPercent(volumetricEfficiency)} does not exist.`);
  }
  if (!(displacement > 0)) {
    return noAnswer('The displacement must be more than nothing. Check `engine: displacement`.');
  }
  return (volumetricEfficiency * map * displacement * rpm) / (2 * dryAirConstant * iat);
}

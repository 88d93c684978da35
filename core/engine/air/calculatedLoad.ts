import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber } from '../sayValue.ts';
import { siOf } from '../siOf.ts';
import { unlikelyAir } from './airDensity.ts';

/** The barometer that the peak flow is referred to, Pa: 29.92 inHg of the conventional column at 0 °C. */
const referenceBarometer = (): number => 29.92 * siOf('inHg');

/**
 * Calculated load as a share (1 is 100 %): maf / (peak · baro/29.92 inHg · √(298/(t + 273))), t in °C (SAE J1979 / ISO 15031-5, LOAD_PCT).
 * Flows in one unit, the barometer absolute in Pa, the outside air's temperature in K.
 * `peak` is the flow at wide open throttle at this speed, in air of 25 °C and 29.92 inHg.
 * It is corrected for the barometer, so that wide open throttle is 100 % at any altitude.
 */
export function calculatedLoad(maf: number, peak: number, baro: number, temperature: number): Answer {
  const wrong = unlikelyAir(baro, temperature);
  if (wrong !== undefined) return noAnswer(wrong);
  if (!(maf >= 0))
    return noAnswer(`An air flow of ${sayNumber(maf * 1000)} g/s runs backwards. Check its sign and unit.`);
  if (!(peak > 0)) {
    return noAnswer(`The flow at wide open throttle must be above 0, not ${sayNumber(peak * 1000)} g/s.`);
  }
  // The standard counts kelvin from −273 °C, not from −273.15 °C.
  const colder = Math.sqrt(298 / (temperature - 0.15));
  if (!Number.isFinite(colder)) return noAnswer('Air so cold does not exist. Check the unit.');
  return maf / (peak * (baro / referenceBarometer()) * colder);
}

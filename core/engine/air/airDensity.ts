import { type Answer, isNoAnswer, noAnswer } from '../answer.ts';
import { sayPercent, sayPressure, sayTemperature } from '../sayValue.ts';

/** Specific gas constant of dry air, J/(kg·K). */
export const dryAirConstant = 287.05;
/** Specific gas constant of water vapour, J/(kg·K). */
const vapourConstant = 461.5;
const celsiusZero = 273.15;

/**
 * The density of moist air, kg/m³ (the same number in g/L), from absolute pressure (Pa), temperature (K)
 * and relative humidity (0 to 1): ρ = (p − e)/(287.05·T) + e/(461.5·T), e = humidity · saturation pressure.
 * Agrees within 0.1 % with CIPM-2007 (Picard et al., Metrologia 45 (2008) 149) from 15 to 25 °C.
 * With humidity the temperature must lie between −45 and 60 °C.
 */
export function airDensity(pressure: number, temperature: number, humidity: number): Answer {
  const wrong = unlikelyAir(pressure, temperature);
  if (wrong !== undefined) return noAnswer(wrong);
  if (!(humidity >= 0 && humidity <= 1)) {
    return noAnswer(
      `A relative humidity of ${sayPercent(humidity)} does not exist; it runs from 0 to 100 %.`,
    );
  }
  if (humidity === 0) return pressure / (dryAirConstant * temperature);
  const saturated = saturationPressure(temperature);
  if (isNoAnswer(saturated)) return saturated;
  const vapour = humidity * saturated;
  if (vapour > pressure) {
    return noAnswer(
      `Air of ${sayTemperature(temperature)} with ${sayPercent(humidity)} humidity holds more vapour than ${sayPressure(pressure)} of pressure allows. Check that the pressure is absolute.`,
    );
  }
  return (pressure - vapour) / (dryAirConstant * temperature) + vapour / (vapourConstant * temperature);
}

/**
 * The pressure of saturated water vapour over water, Pa, at a temperature in K:
 * 611.2 · exp(17.62·t / (243.12 + t)), t in °C, from −45 to 60 °C (Magnus; WMO-No. 8, Guide to Instruments and Methods of Observation).
 */
export function saturationPressure(temperature: number): Answer {
  const t = temperature - celsiusZero;
  if (!(t >= -45 && t <= 60)) {
    return noAnswer(
      `The humidity of air is computed from −45 to 60 °C; ${sayTemperature(temperature)} is outside. Leave the humidity out, or take the temperature of the outside air.`,
    );
  }
  return 611.2 * Math.exp((17.62 * t) / (243.12 + t));
}

/** What is wrong with a pressure (Pa absolute) and a temperature (K) of air, if anything. */
export function unlikelyAir(pressure: number, temperature: number): string | undefined {
  if (!(pressure > 0)) {
    return `An absolute pressure of ${sayPressure(pressure)} does not exist. A gauge or vacuum reading needs the barometer first.`;
  }
  if (!(temperature > 0))
    return `A temperature of ${sayTemperature(temperature)} does not exist. Check its unit.`;
  return undefined;
}

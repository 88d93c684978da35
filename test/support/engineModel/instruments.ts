import type { Chance } from './chance.ts';

/*
 * What instruments make of the truth: each has an error of its own that stays, and shows steps.
 * Tolerances are common practice for parts in use; steps are those of SAE J1979 service 01.
 */

/** The errors of one car's sensors and one shop's instruments, drawn once a case. */
export interface Instruments {
  /** Pa that the manifold sensor and the barometric sensor are off: about ±1.5 % of 105 kPa. */
  readonly map: number;
  readonly baro: number;
  /** Pa that the needle of the vacuum gauge is off: ±0.5 inHg. */
  readonly gauge: number;
  /** K that the temperature sensors are off: ±2 K. */
  readonly ect: number;
  readonly iat: number;
  readonly ambient: number;
  /** Shares: analyser and wideband sensor ±1 %, compression gauge ±2 %, a stop watch's worth of wander between two looks. */
  readonly analyser: number;
  readonly wideband: number;
  readonly compression: number;
}

export function drawInstruments(chance: Chance): Instruments {
  return {
    map: chance.around(600, 1500),
    baro: chance.around(600, 1500),
    gauge: chance.around(700, 1700),
    ect: chance.around(0.9, 2),
    iat: chance.around(0.9, 2),
    ambient: chance.around(0.9, 2),
    analyser: chance.around(0.005, 0.012),
    wideband: chance.around(0.004, 0.01),
    compression: chance.around(0.01, 0.02),
  };
}

/** To the nearest step that the encoding carries, within its ends (SAE J1979). */
function encoded(value: number, step: number, low: number, high: number): number {
  const steps = Math.round((Math.max(low, Math.min(high, value)) - low) / step);
  return low + steps * step;
}

/** Service 01 parameters: manifold pressure and barometer 1 kPa, temperatures 1 °C, trims 100/128 %, speed 0.25 rpm, speed of the car 1 km/h, air flow 0.01 g/s. */
export const kilopascals = (pascal: number): number => encoded(pascal / 1000, 1, 0, 255);
export const celsius = (kelvin: number): number => encoded(kelvin - 273.15, 1, -40, 215);
export const trimPercent = (share: number): number => encoded(100 * share, 100 / 128, -100, 99.21875);
export const speed = (rpm: number): number => encoded(rpm, 0.25, 0, 16383.75);
export const airFlow = (flow: number): number => encoded(1000 * flow, 0.01, 0, 655.35);
export const percent = (share: number): number => encoded(100 * share, 100 / 255, 0, 100);
export const absoluteLoad = (share: number): number => encoded(100 * share, 100 / 255, 0, 25700);
export const lambdaStep = (lambda: number): number => encoded(lambda, 2 / 65536, 0, 1.999);
export const vehicleSpeed = (kmh: number): number => encoded(kmh, 1, 0, 255);
export const sensorVolts = (volts: number): number => encoded(volts, 0.005, 0, 1.275);

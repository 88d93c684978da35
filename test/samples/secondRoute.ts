import { evaluate } from 'mathjs';

/*
 * A second route to the samples' numbers: SI factors from the definitions, and mathjs where formulas meet units.
 * Nothing here comes from the core.
 */

/** Inch of mercury at 0 °C: 25.4 mm of 13 595.1 kg/m³ under 9.80665 m/s² (NIST SP 811, appendix B.8). */
export const inHg = (value: number): number => value * 0.0254 * 13595.1 * 9.80665;
export const kPa = (value: number): number => value * 1000;
/** A pound-force (0.45359237 kg under 9.80665 m/s²) on a square inch. */
export const psi = (value: number): number => (value * 0.45359237 * 9.80665) / 0.0254 ** 2;
export const percent = (value: number): number => value / 100;
export const gramsPerSecond = (value: number): number => value / 1000;
export const mm = (value: number): number => value / 1000;
export const fahrenheit = (value: number): number => (value + 459.67) / 1.8;
export const fahrenheitDegrees = (value: number): number => value / 1.8;
export const feet = (value: number): number => value * 0.3048;

/** Dry air: the gas constant over its molar mass (CODATA 2018; 28.9644 g/mol of the U.S. Standard Atmosphere 1976). */
const gasConstant = '(8.314462618 J/(mol K)) / (28.9644 g/mol)';

/**
 * Volumetric efficiency as a share, by mathjs with units: the air counted over the air that would fill
 * the displacement every second turn at this pressure and temperature.
 */
export function filling(of: {
  readonly maf: number;
  readonly rpm: number;
  readonly litres: number;
  readonly pascal: number;
  readonly kelvin: number;
}): number {
  return Number(
    evaluate(
      `(${of.maf} g/s) / (${of.pascal} Pa / (${gasConstant} * ${of.kelvin} K) * ${of.litres} L * ${of.rpm} / (60 s) / 2)`,
    ),
  );
}

/** Air over a full cylinder of 1.184 g/L (SAE J1979, LOAD_ABS), by mathjs with units. */
export function absoluteLoad(of: {
  readonly maf: number;
  readonly rpm: number;
  readonly litres: number;
}): number {
  return Number(evaluate(`(${of.maf} g/s) / (1.184 g/L * ${of.litres} L * ${of.rpm} / (60 s) / 2)`));
}

/** The weather service's station pressure: A·((288 − 0.0065·h)/288)^5.2561, written with logarithms (value from memory). */
export function station(seaLevel: number, metres: number): number {
  return seaLevel * Math.exp(5.2561 * Math.log1p((-0.0065 * metres) / 288));
}

/** Geometric altitude of a pressure in the U.S. Standard Atmosphere 1976: found by halving on the table's formula. */
export function altitude(pascal: number): number {
  let low = -1000;
  let high = 10000;
  for (let step = 0; step < 80; step++) {
    const middle = (low + high) / 2;
    if (standard(middle) > pascal) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Pressure of the U.S. Standard Atmosphere 1976 at a geometric altitude. */
export function standard(metres: number): number {
  const geopotential = (6356766 * metres) / (6356766 + metres);
  return 101325 * (1 - (0.0065 * geopotential) / 288.15) ** ((9.80665 * 28.9644) / (8314.32 * 0.0065));
}

/** Air to burn one mass of CHyOz: four grams-moles of 34.56/4 for each bond to fill (Heywood, chapter 3). */
export function airToFuel(hydrogen: number, oxygen: number): number {
  return (34.56 * (4 + hydrogen - 2 * oxygen)) / (12.011 + 1.008 * hydrogen + 15.999 * oxygen);
}

/** Dry exhaust gas as an analyser prints it: %, %, %, ppm of hexane. */
export interface PrintedGas {
  readonly co2: number;
  readonly co: number;
  readonly o2: number;
  readonly hc: number;
}

/**
 * Lambda by counting atoms: the oxygen that the gas carries, the fuel's own taken off, over what its carbon and hydrogen need.
 * Hydrogen is shared between water and hydrogen gas by CO·H2O/(CO2·H2) = 3.5. The bookkeeping behind Brettschneider's formula.
 */
export function lambdaByAtoms({ co2, co, o2, hc }: PrintedGas, hydrogen: number, oxygen: number): number {
  const burnt = co2 + co;
  const water = ((burnt * hydrogen) / 2) * (3.5 / (3.5 + co / co2));
  const carried = 2 * co2 + co + 2 * o2 + water - oxygen * burnt;
  return carried / ((2 + hydrogen / 2 - oxygen) * (burnt + (6 * hc) / 1e4));
}

/** The share of air to take out of a sample so that counting atoms gives this lambda: found by halving. */
export function airBetween(gas: PrintedGas, lambda: number, hydrogen: number, oxygen: number): number {
  let [low, high] = [-0.2, 0.9];
  for (let step = 0; step < 80; step++) {
    const air = (low + high) / 2;
    const rest = 1 - air;
    const without = {
      co2: gas.co2 / rest,
      co: gas.co / rest,
      o2: (gas.o2 - 20.95 * air) / rest,
      hc: gas.hc / rest,
    };
    if (lambdaByAtoms(without, hydrogen, oxygen) > lambda) low = air;
    else high = air;
  }
  return (low + high) / 2;
}

/** Several independent half-widths together. */
export const together = (...widths: readonly number[]): number => Math.hypot(...widths);

import type { SwitchLevels } from './switching.ts';

/** A sensor that switches, and how its volts are to be read. */
export interface SensorBuild extends SwitchLevels {
  /** The voltage that stands for rich: zirconia's is high; of titania the circuit decides. */
  readonly rich: 'high' | 'low';
  /** The circuit's supply, V, against which `rich: low` is read. */
  readonly supply: number;
}

/** Zirconia, by the levels of the oxygen sensor tests of SAE J1979 (values from memory). */
export const zirconia: SensorBuild = { level: 0.45, low: 0.3, high: 0.6, rich: 'high', supply: 1 };

/** Titania divides its supply: half of it, and thirds for the edges (common practice). */
export function titania(supply: number, rich: SensorBuild['rich']): SensorBuild {
  return { level: supply / 2, low: supply / 3, high: (2 * supply) / 3, rich, supply };
}

/** The levels with rich at the top. */
export function richUp({ rich, supply, level, low, high }: SensorBuild): SwitchLevels {
  return rich === 'high'
    ? { level, low, high }
    : { level: supply - level, low: supply - high, high: supply - low };
}

import type { FunctionRow } from '../expression/functionRow.ts';
import { airFunctions } from './air/airFunctions.ts';
import { electricalFunctions } from './electrical/electricalFunctions.ts';
import { fuelFunctions } from './fuel/fuelFunctions.ts';
import { trimFunctions } from './fuel/trimFunctions.ts';
import { mechanicalFunctions } from './mechanical/mechanicalFunctions.ts';
import { sensorFunctions } from './sensors/sensorFunctions.ts';

/**
 * The functions of the expression language about engines, family by family in the order of the reference page;
 * those of plain values belong to `expression/`, those of samples to `waveform/`.
 */
export const engineFamilies: readonly (() => readonly FunctionRow[])[] = [
  airFunctions,
  trimFunctions,
  fuelFunctions,
  sensorFunctions,
  mechanicalFunctions,
  electricalFunctions,
];

export function engineFunctions(): readonly FunctionRow[] {
  return engineFamilies.flatMap((family) => family());
}

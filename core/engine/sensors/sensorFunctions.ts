import type { FunctionRow } from '../../expression/functionRow.ts';
import { sensorRows } from './sensorRows.ts';

/** The functions about sensors and their curves. */
export function sensorFunctions(): readonly FunctionRow[] {
  return sensorRows;
}

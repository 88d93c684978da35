import type { FunctionRow } from '../../expression/functionRow.ts';
import { fuelRows } from './fuelRows.ts';

/** The functions about fuel, its injection and what its burning leaves. */
export function fuelFunctions(): readonly FunctionRow[] {
  return fuelRows;
}

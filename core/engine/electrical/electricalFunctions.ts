import type { FunctionRow } from '../../expression/functionRow.ts';
import { electricalRows } from './electricalRows.ts';

/** The functions about the electrical system. */
export function electricalFunctions(): readonly FunctionRow[] {
  return electricalRows;
}

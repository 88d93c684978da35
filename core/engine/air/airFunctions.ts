import type { FunctionRow } from '../../expression/functionRow.ts';
import { airRows } from './airRows.ts';

/** The functions about the air that an engine breathes. */
export function airFunctions(): readonly FunctionRow[] {
  return airRows;
}

import type { FunctionRow } from '../../expression/functionRow.ts';
import { compressionRows } from './compressionRows.ts';
import { mechanicalRows } from './mechanicalRows.ts';
import { orderRows } from './orderRows.ts';
import { pistonRows } from './pistonRows.ts';
import { valveRows } from './valveRows.ts';

/** The functions about cylinders, valves and what turns. */
export function mechanicalFunctions(): readonly FunctionRow[] {
  return [...mechanicalRows, ...pistonRows, ...compressionRows, ...valveRows, ...orderRows];
}

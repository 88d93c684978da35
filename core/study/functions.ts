import { engineFunctions } from '../engine/functionTable.ts';
import type { FunctionRow } from '../expression/functionRow.ts';
import { seriesFunctions } from '../expression/functions/series.ts';
import { valueFunctions } from '../expression/functions/values.ts';
import { waveformFunctions } from '../waveform/functionTable.ts';

/** Every function of the expression language, in the order of the reference page. */
export const allFunctions: readonly FunctionRow[] = [
  ...valueFunctions,
  ...seriesFunctions,
  ...waveformFunctions,
  ...engineFunctions,
];

const byName: ReadonlyMap<string, FunctionRow> = new Map(allFunctions.map((row) => [row.name, row]));

export function functionRow(name: string): FunctionRow | undefined {
  return byName.get(name);
}

export function functionNames(): readonly string[] {
  return [...byName.keys()];
}

import { engineFamilies, engineFunctions } from '../engine/engineFunctions.ts';
import { trimFunctions } from '../engine/fuel/trimFunctions.ts';
import type { FunctionRow } from '../expression/functionRow.ts';
import { seriesFunctions } from '../expression/functions/series.ts';
import { valueFunctions } from '../expression/functions/values.ts';
import { waveformFunctions } from '../waveform/waveformFunctions.ts';

/** Every function of the expression language, in the order of the reference page. */
export function allFunctions(): readonly FunctionRow[] {
  all ??= [...valueFunctions, ...seriesFunctions, ...waveformFunctions(), ...engineFunctions()];
  return all;
}

/** The function of this name. The large tables are made, and in the command line read, when they are first asked. */
export function functionRow(name: string): FunctionRow | undefined {
  for (const [at, table] of tables.entries()) {
    byName[at] ??= new Map(table().map((row) => [row.name, row]));
    const row = byName[at]?.get(name);
    if (row !== undefined) return row;
  }
  return undefined;
}

export function functionNames(): readonly string[] {
  return allFunctions().map((row) => row.name);
}

const tables: readonly (() => readonly FunctionRow[])[] = [
  () => [...valueFunctions, ...seriesFunctions],
  // The sum of the trims is what cases ask for most.
  trimFunctions,
  ...engineFamilies.filter((family) => family !== trimFunctions),
  waveformFunctions,
];
const byName: ReadonlyMap<string, FunctionRow>[] = [];
let all: readonly FunctionRow[] | undefined;

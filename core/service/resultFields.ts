import type { Value } from '../expression/value.ts';
import { functionRow } from '../study/functions.ts';
import type { Named } from '../study/names.ts';
import { computedOf, type Standing } from './standing.ts';

/** One of several values that a result has by name, with its value where the result has been computed. */
export interface ResultField {
  readonly name: string;
  readonly meaning: string;
  readonly value: Value | undefined;
}

/** What `events.` of a computed name has: nothing where it is one value. */
export function fieldsOfName(standing: Standing, named: Named): readonly ResultField[] {
  if (named.kind !== 'definition') return [];
  const computed = computedOf(standing, named.definition);
  const type = computed?.typed?.type;
  if (type?.kind !== 'fields') return [];
  const value = computed?.value;
  return type.fields.map(({ name, meaning }) => ({
    name,
    meaning,
    value: value?.kind === 'fields' ? value.fields.get(name) : undefined,
  }));
}

/** What `valve_events(…).` has, by the function's row. */
export function fieldsOfCall(functionName: string): readonly ResultField[] {
  const result = functionRow(functionName)?.result;
  if (result?.kind !== 'fields') return [];
  return result.fields.map(({ name, meaning }) => ({ name, meaning, value: undefined }));
}

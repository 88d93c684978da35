import { limits } from '../casefile/limits.ts';
import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { sourcesKept, tooManySources } from '../expression/tooManySources.ts';
import type { Value } from '../expression/value.ts';
import type { Source } from './cellFacts.ts';
import { readsOf } from './graph/reads.ts';
import { lookUp } from './names.ts';
import type { Evaluated, Surroundings } from './surroundings.ts';

/** Counts what the computed names of a case keep for their sources of uncertainty, in the order they are computed. */
export interface Crowd {
  kept: number;
}

/** A name's value while there is room for it in the case. */
export function whileThereIsRoom(evaluated: Evaluated, crowd: Crowd): Evaluated {
  crowd.kept += sourcesKept(evaluated.value);
  return crowd.kept > limits.sourcesOfCase ? { ...evaluated, value: tooManySources } : evaluated;
}

/** A finding where a value was refused for its many sources, and not where it only reads one that was. */
export function refusedHere(
  source: Source,
  cell: number,
  value: Value,
  around: Surroundings,
): readonly Diagnostic[] {
  if (!isRefused(value)) return [];
  for (const { parts, spans } of readsOf(source.expression).paths) {
    const named = lookUp(around.names, cell, parts, spans);
    if (named.kind !== 'definition') continue;
    const read = around.done.get(named.definition.id)?.value;
    if (read !== undefined && isRefused(read)) return [];
  }
  return [diagnose('too-many-sources', source.node.span, { most: limits.sources })];
}

function isRefused(value: Value): boolean {
  return (value.kind === 'absent' || value.kind === 'truth') && value.why === tooManySources.why;
}

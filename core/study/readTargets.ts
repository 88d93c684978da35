import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Type } from '../expression/type.ts';
import type { Value } from '../expression/value.ts';
import type { Signal } from '../signals/types.ts';
import { strokes } from './fourStroke.ts';
import { functionRow } from './functions.ts';
import type { Reads } from './graph/reads.ts';
import type { Named } from './names.ts';
import { type Role, roleOf } from './scope.ts';
import type { Evaluated, Surroundings } from './surroundings.ts';
import type { Reading } from './types.ts';

/** One thing that an expression's result depends on beside its own text and the barometers of its conversions. */
export type Target =
  | { readonly kind: 'reading'; readonly used: number; readonly of: WhatMatters }
  | { readonly kind: 'states'; readonly fullName: string; readonly of: readonly WhatMatters[] }
  | { readonly kind: 'definition'; readonly id: string; readonly result: Evaluated | undefined }
  | { readonly kind: 'not measured'; readonly fullName: string; readonly signal: Signal }
  | { readonly kind: 'problem'; readonly diagnostic: Diagnostic }
  | { readonly kind: 'header'; readonly name: string; readonly value: Value | undefined };

/** All of a reading that a result can depend on; its place in the file is none of it. */
interface WhatMatters {
  readonly fullName: string;
  readonly value: Value;
  readonly type: Type['kind'];
  readonly role: Role;
}

/** What an expression reads, in the order of the text. */
export function readTargets(
  named: readonly Named[],
  calls: Reads['calls'],
  around: Surroundings,
): readonly Target[] {
  const targets = named.map((each) => targetOf(each, around));
  for (const call of calls) {
    const row = functionRow(call.name);
    const names = row?.parameters.flatMap(({ header, otherwiseBy }) => [header, otherwiseBy?.header]) ?? [];
    for (const name of row?.fourStroke ? [...names, strokes] : names) {
      if (name === undefined) continue;
      targets.push({ kind: 'header', name, value: around.header.values.get(name)?.value });
    }
  }
  return targets;
}

function targetOf(named: Named, around: Surroundings): Target {
  switch (named.kind) {
    case 'reading':
      return { kind: 'reading', used: named.used, of: whatMatters(named.reading) };
    case 'states':
      return { kind: 'states', fullName: named.fullName, of: [...named.readings.values()].map(whatMatters) };
    case 'definition': {
      const { id } = named.definition;
      return { kind: 'definition', id, result: around.done.get(id) };
    }
    case 'not measured':
      return { kind: 'not measured', fullName: named.fullName, signal: named.signal };
    case 'problem':
      return { kind: 'problem', diagnostic: named.diagnostic };
  }
}

function whatMatters(reading: Reading): WhatMatters {
  const { fullName, value, type } = reading;
  return { fullName, value, type: type.kind, role: roleOf(reading) };
}

/** Whether the very same things are read: then what was computed from them is the same. */
export function sameTargets(a: readonly Target[], b: readonly Target[]): boolean {
  return a.length === b.length && a.every((each, at) => sameTarget(each, b[at]));
}

function sameTarget(a: Target, b: Target | undefined): boolean {
  switch (a.kind) {
    case 'reading':
      return b?.kind === a.kind && a.used === b.used && sameReading(a.of, b.of);
    case 'states':
      return (
        b?.kind === a.kind &&
        a.fullName === b.fullName &&
        a.of.length === b.of.length &&
        a.of.every((each, at) => sameReading(each, b.of[at]))
      );
    case 'definition':
      return b?.kind === a.kind && a.id === b.id && a.result === b.result;
    case 'not measured':
      return b?.kind === a.kind && a.fullName === b.fullName && a.signal === b.signal;
    case 'problem':
      return b?.kind === a.kind && sameProblem(a.diagnostic, b.diagnostic);
    case 'header':
      return b?.kind === a.kind && a.name === b.name && a.value === b.value;
  }
}

function sameReading(a: WhatMatters, b: WhatMatters | undefined): boolean {
  return a.fullName === b?.fullName && a.value === b.value && a.type === b.type && a.role === b.role;
}

/** The lists in them may be long, and are compared only after a change: those of cells that did not change are the very same. */
function sameProblem(a: Diagnostic, b: Diagnostic): boolean {
  if (a.code !== b.code) return false;
  const [before, after] = [Object.entries(a.facts), Object.entries(b.facts)];
  return (
    before.length === after.length &&
    before.every(([name, fact], at) => name === after[at]?.[0] && sameFact(fact, after[at]?.[1]))
  );
}

const sameFact = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b);

import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { checkExpression, type TypedExpression } from '../expression/check.ts';
import { evaluate } from '../expression/evaluate.ts';
import type { Expression } from '../expression/tree.ts';
import type { Absent, Value } from '../expression/value.ts';
import { type Barometer, barometerFor } from './barometer.ts';
import type { Source } from './cellFacts.ts';
import { circularBarometer, needsBarometer } from './circular.ts';
import { readsOf } from './graph/reads.ts';
import { lookUp, type Named, unreadValue } from './names.ts';
import { readTargets, sameTargets } from './readTargets.ts';
import { scopeFor } from './scope.ts';
import { type Evaluated, readingsBehind, type Standpoint, type Surroundings } from './surroundings.ts';
import type { Reading } from './types.ts';

/** Types, then values, of one expression; taken from the previous evaluation when nothing that it reads has changed. */
export function evaluateSource(source: Source, at: Standpoint, around: Surroundings): Evaluated {
  const { expression } = source;
  const { paths, calls } = readsOf(expression);
  const named = paths.map(({ parts, spans }) => lookUp(around.names, at.cell, parts, spans));
  const converts = calls.some((call) => needsBarometer.has(call.name));
  const barometer = converts ? barometerFor(around.barometers, cellsOf(named, at.cell)) : undefined;
  const read = [at.name, ...readTargets(named, around, calls, barometer)];
  const before = around.before(at.cell)?.get(expression);
  const same = before !== undefined && sameTargets(before.read, read);
  const result = same ? before : { ...compute(source, named, barometer, at, around), read };
  if (!same) around.fresh.count++;
  remember(around, at.cell, expression, result, named);
  return result;
}

function remember(
  around: Surroundings,
  cell: number,
  expression: Expression,
  result: Evaluated,
  named: readonly Named[],
): void {
  let results = around.now.get(cell);
  let reads = around.reads.get(cell);
  if (results === undefined || reads === undefined) {
    results = new Map();
    reads = new Set();
    around.now.set(cell, results);
    around.reads.set(cell, reads);
  }
  results.set(expression, result);
  for (const each of named) {
    if (each.kind === 'definition') reads.add(each.definition.cell);
  }
  for (const each of cellsOf(named, cell)) reads.add(each);
}

function compute(
  source: Source,
  named: readonly Named[],
  barometer: Barometer | undefined,
  at: Standpoint,
  around: Surroundings,
): Omit<Evaluated, 'read'> {
  const { scope, values } = scopeFor(around, at);
  const { value: typed, diagnostics } = checkExpression(source.expression, scope);
  const found: Diagnostic[] = [...source.diagnostics, ...diagnostics];
  const { value, asked } = valueOf(source, typed, values, barometer, around);
  if (asked && barometer?.value.kind === 'absent') found.push(...noBarometer(source));
  const barometers = new Set<string>(asked ? barometer?.from : []);
  const from = new Set<string>();
  for (const each of named) {
    for (const name of readingsBehind(each, around)) from.add(name);
    if (each.kind !== 'definition') continue;
    for (const name of around.done.get(each.definition.id)?.barometer ?? []) barometers.add(name);
  }
  const circle =
    barometers.size === 0 ? undefined : circularBarometer(source.expression, at.cell, around, barometer);
  if (circle !== undefined) {
    found.push(diagnose('circular-check', circle.span, { barometer: circle.barometer }));
  }
  return { typed, value, from: [...from], barometer: [...barometers], diagnostics: found };
}

/** The value, and whether the barometer was asked for on the way. */
function valueOf(
  source: Source,
  typed: TypedExpression,
  values: ReadonlyMap<string, Value>,
  barometer: Barometer | undefined,
  around: Surroundings,
): { readonly value: Value; readonly asked: boolean } {
  // What was misread has a tree for the editor, but no value: half of "a > 3 V b" must not hold.
  if (source.diagnostics.some(({ severity }) => severity === 'error'))
    return { value: inError, asked: false };
  // Where nothing is wrong here, the reason is what could not be read there.
  const unread = [...values.values()].find((each) => each === unreadValue);
  if (unread !== undefined) return { value: unread, asked: false };
  let asked = false;
  const value = evaluate(typed, {
    value: (id) => values.get(id) ?? nothing,
    header: (name) => around.header.values.get(name)?.value,
    barometer: () => {
      asked = true;
      return barometer?.value ?? nothing;
    },
  });
  return { value, asked };
}

function noBarometer(source: Source): readonly Diagnostic[] {
  const call = readsOf(source.expression).calls.find((each) => needsBarometer.has(each.name));
  if (call === undefined) return [];
  return [diagnose('no-barometer', call.nameSpan, { what: `\`${call.name}(…)\`` })];
}

/** The cells that an expression's values were taken in, and its own. */
function cellsOf(named: readonly Named[], cell: number): Set<number> {
  const cells = new Set([cell]);
  const add = (reading: Reading): void => {
    if (reading.from !== 'header') cells.add(reading.cell);
  };
  for (const each of named) {
    if (each.kind === 'reading') add(each.reading);
    if (each.kind === 'states') for (const reading of each.readings.values()) add(reading);
  }
  return cells;
}

const inError: Absent = { kind: 'absent', status: 'cannot compute', why: 'the expression has an error' };
const nothing: Absent = { kind: 'absent', status: 'cannot compute', why: 'it is not known' };

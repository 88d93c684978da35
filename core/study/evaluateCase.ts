import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { checkExpression, type TypedExpression } from '../expression/check.ts';
import { evaluate } from '../expression/evaluate.ts';
import type { Call, Expression } from '../expression/tree.ts';
import type { Absent, Value } from '../expression/value.ts';
import { type Barometer, type Barometers, barometerFor } from './barometer.ts';
import type { Definition, Source } from './cellFacts.ts';
import { circularBarometer } from './circular.ts';
import { functionRow } from './functions.ts';
import { orderByNeed } from './graph/order.ts';
import { readsOf } from './graph/reads.ts';
import type { Header } from './header.ts';
import { lookUp, type Named, type Names } from './names.ts';
import { roleOf, scopeFor } from './scope.ts';
import type { Reading } from './types.ts';

/** What one expression came to, and all that it came from: if none of that changes, neither does this. */
export interface Evaluated {
  readonly typed: TypedExpression;
  readonly value: Value;
  /** Full names of the readings behind it, in the order they are first read. */
  readonly from: readonly string[];
  /** The readings that conversions used as the barometer, here or in a name that is used here. */
  readonly barometer: readonly string[];
  /** Spans count in the expression's text. */
  readonly diagnostics: readonly Diagnostic[];
  /** The very objects that were read; equal objects mean equal results. */
  readonly read: readonly unknown[];
}

/** All of a case that expressions can see. */
export interface Surroundings {
  readonly names: Names;
  readonly header: Header;
  readonly barometers: Barometers;
  /** Computed names that are done; a member of a circle never is. */
  readonly done: Map<string, Evaluated>;
  /** What a previous evaluation of the case came to. */
  readonly before: ReadonlyMap<Expression, Evaluated>;
  /** Filled with what this one comes to. */
  readonly now: Map<Expression, Evaluated>;
  /** Counts the expressions that had to be computed anew. */
  readonly fresh: { count: number };
}

/** Evaluates every computed name in an order in which each comes after what it needs. */
export function evaluateDefinitions(around: Surroundings): readonly Diagnostic[][] {
  const definitions = new Map<string, Definition>();
  const needs = new Map<string, string[]>();
  for (const cell of around.names.cells) {
    for (const definition of cell.definitions) {
      if (definitions.has(definition.id)) continue;
      definitions.set(definition.id, definition);
      needs.set(definition.id, neededBy(definition, around.names));
    }
  }
  const { order, circles } = orderByNeed(needs);
  const found: Diagnostic[][] = around.names.cells.map(() => []);
  for (const id of order) {
    const definition = definitions.get(id);
    if (definition === undefined) continue;
    const circle = circles.get(id);
    if (circle !== undefined) {
      const members = circle.map((each) => spoken(definitions.get(each) ?? definition));
      found[definition.cell]?.push(diagnose('cycle', definition.source.node.span, { members }));
      continue;
    }
    around.done.set(id, evaluateSource(definition.source, definition.cell, around));
  }
  return found;
}

/** A computed name as its author writes it. */
function spoken({ id, name, cell }: Definition): string {
  return id === `${cell + 1}.${name}` ? name : id;
}

function neededBy(definition: Definition, names: Names): string[] {
  const needs: string[] = [];
  for (const { parts, spans } of readsOf(definition.source.expression).paths) {
    const named = lookUp(names, definition.cell, parts, spans);
    if (named.kind === 'definition') needs.push(named.definition.id);
  }
  return needs;
}

/** Types, then values, of one expression; taken from the previous evaluation when nothing that it reads has changed. */
export function evaluateSource(source: Source, cell: number, around: Surroundings): Evaluated {
  const { expression } = source;
  const reads = readsOf(expression);
  const named = reads.paths.map(({ parts, spans }) => lookUp(around.names, cell, parts, spans));
  const conversions = reads.calls.filter((call) => needsBarometer.has(call.name));
  const barometer =
    conversions.length > 0 ? barometerFor(around.barometers, cellsOf(named, cell)) : undefined;
  const read = targetsOf(named, around, reads.calls, barometer);
  const before = around.before.get(expression);
  const same = before !== undefined && sameObjects(before.read, read);
  const result = same ? before : compute(source, named, conversions, barometer, read, cell, around);
  if (!same) around.fresh.count++;
  around.now.set(expression, result);
  return result;
}

function compute(
  source: Source,
  named: readonly Named[],
  conversions: readonly Call[],
  barometer: Barometer | undefined,
  read: readonly unknown[],
  cell: number,
  around: Surroundings,
): Evaluated {
  const { scope, values } = scopeFor(around, cell);
  const { value: typed, diagnostics } = checkExpression(source.expression, scope);
  const found: Diagnostic[] = [...source.diagnostics, ...diagnostics];
  let used = false;
  // What was misread has a tree for the editor, but no value: half of "a > 3 V b" must not hold.
  const misread = source.diagnostics.some(({ severity }) => severity === 'error');
  const value = misread
    ? inError
    : evaluate(typed, {
        value: (id) => values.get(id) ?? nothing,
        header: (name) => around.header.values.get(name)?.value,
        barometer: () => {
          used = true;
          return barometer?.value ?? nothing;
        },
      });
  const first = conversions[0];
  if (used && first !== undefined && barometer?.value.kind === 'absent') {
    const what = `\`${first.name}(…)\``;
    found.push(diagnose('no-barometer', first.nameSpan, { what }));
  }
  const barometers = new Set<string>(used && barometer !== undefined ? barometer.from : []);
  const from = new Set<string>();
  for (const each of named) {
    for (const name of readingsBehind(each, around)) from.add(name);
    if (each.kind !== 'definition') continue;
    for (const name of around.done.get(each.definition.id)?.barometer ?? []) barometers.add(name);
  }
  const circular =
    barometers.size === 0 ? undefined : circularBarometer(source.expression, cell, around, barometer);
  if (circular !== undefined) {
    const facts = { barometer: circular.barometer };
    found.push(diagnose('circular-check', circular.span, facts));
  }
  return { typed, value, from: [...from], barometer: [...barometers], diagnostics: found, read };
}

/** The readings behind a name, through computed names. */
export function readingsBehind(named: Named, around: Surroundings): readonly string[] {
  switch (named.kind) {
    case 'reading':
      return [named.reading.fullName];
    case 'states':
      return [...named.readings.values()].map((each) => each.fullName);
    case 'definition':
      return around.done.get(named.definition.id)?.from ?? [];
    case 'not measured':
      return [named.fullName];
    case 'problem':
      return [];
  }
}

function targetsOf(
  named: readonly Named[],
  around: Surroundings,
  calls: readonly Call[],
  barometer: Barometer | undefined,
): unknown[] {
  const targets: unknown[] = [];
  for (const each of named) {
    switch (each.kind) {
      case 'reading':
        targets.push(...whatMatters(each.reading), each.used);
        break;
      case 'states':
        for (const reading of each.readings.values()) targets.push(...whatMatters(reading));
        targets.push(each.fullName);
        break;
      case 'definition':
        targets.push(around.done.get(each.definition.id) ?? each.definition.id);
        break;
      case 'not measured':
        targets.push(each.fullName, each.signal);
        break;
      case 'problem':
        targets.push(JSON.stringify([each.diagnostic.code, each.diagnostic.facts]));
        break;
    }
  }
  for (const call of calls) {
    for (const { header } of functionRow(call.name)?.parameters ?? []) {
      if (header !== undefined) targets.push(around.header.values.get(header)?.value);
    }
  }
  if (barometer !== undefined) {
    const { value } = barometer;
    targets.push(value.kind === 'one' ? value.amount.si : value.why, barometer.from.join());
    targets.push(value.kind === 'one' ? JSON.stringify(value.amount.spread) : '');
  }
  return targets;
}

/** All of a reading that a result can depend on; its place in the file is none of it. */
function whatMatters(reading: Reading): readonly unknown[] {
  return [reading.fullName, reading.value, reading.type.kind, roleOf(reading)];
}

function sameObjects(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((each, i) => Object.is(each, b[i]));
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

/** Functions that turn one kind of pressure into another. */
export const needsBarometer: ReadonlySet<string> = new Set(['absolute', 'gauge', 'vacuum']);

const inError: Absent = { kind: 'absent', status: 'cannot compute', why: 'the expression has an error' };
const nothing: Absent = { kind: 'absent', status: 'cannot compute', why: 'it is not known' };

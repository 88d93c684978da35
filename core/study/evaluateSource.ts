import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import type { TypedExpression } from '../expression/check.ts';
import { evaluate } from '../expression/evaluate.ts';
import type { Environment } from '../expression/scope.ts';
import type { Expression } from '../expression/tree.ts';
import type { Typed } from '../expression/typed.ts';
import type { Absent, Value } from '../expression/value.ts';
import type { Span } from '../text/span.ts';
import type { Source } from './cellFacts.ts';
import { checked } from './checked.ts';
import { circleOf, sharedInside } from './circular.ts';
import type { Conversion } from './conversions.ts';
import { notFourStroke } from './fourStroke.ts';
import { readsOf } from './graph/reads.ts';
import { lookUp, type Named, unreadValue } from './names.ts';
import { readTargets, sameTargets } from './readTargets.ts';
import { scopeFor } from './scope.ts';
import { barometersAreSame, supplying, type Told } from './supplies.ts';
import { type Evaluated, readingsBehind, type Standpoint, type Surroundings } from './surroundings.ts';
import type { Reading } from './types.ts';

/** Types, then values, of one expression; taken from the previous evaluation when nothing that it reads has changed. */
export function evaluateSource(source: Source, at: Standpoint, around: Surroundings): Evaluated {
  const { expression } = source;
  const { paths, calls } = readsOf(expression);
  const named = paths.map(({ parts, spans }) => lookUp(around.names, at.cell, parts, spans));
  const read = readTargets(named, calls, around);
  const before = around.before(at.cell)?.get(expression);
  const same =
    before !== undefined &&
    before.place === at.name &&
    sameTargets(before.read, read) &&
    barometersAreSame(before.conversions, at.cell, named, around);
  const result = same ? before : { ...compute(source, named, at, around, before), place: at.name, read };
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
  reads.add(cell);
  for (const each of named) addCellsOf(each, reads);
}

function compute(
  source: Source,
  named: readonly Named[],
  at: Standpoint,
  around: Surroundings,
  before: Evaluated | undefined,
): Omit<Evaluated, 'place' | 'read'> {
  const types = checked(source.expression, scopeFor(around, at), before?.types);
  const { typed, diagnostics } = types;
  const { environment, supplies } = supplying(at.cell, named, around);
  const value =
    notFourStroke(readsOf(source.expression).calls, around.header) ??
    valueFrom(source, typed, named, environment);
  const supplied = supplies();
  const readings = new Set<string>();
  for (const each of named) for (const name of readingsBehind(each, around)) readings.add(name);
  const found = [
    ...source.diagnostics,
    ...diagnostics,
    ...noBarometer(supplied.conversions),
    ...supplied.cautions.map(diagnosed),
  ];
  const place = { cell: at.cell, supplies: supplied, around };
  const circle = circleOf(source.expression, place);
  if (circle !== undefined) {
    const { barometer, both } = circle;
    found.push(diagnose('circular-check', circle.span, { barometer, both }));
  }
  return {
    typed,
    types,
    value,
    readings: [...readings],
    from: [...new Set([...readings, ...supplied.supplied])],
    ...supplied,
    sharedInside: sharedInside(source.expression, place),
    diagnostics: found,
  };
}

function valueFrom(
  source: Source,
  typed: TypedExpression,
  named: readonly Named[],
  environment: Environment,
): Value {
  // What was misread has a tree for the editor, but no value: half of "a > 3 V b" must not hold.
  if (source.diagnostics.some(({ severity }) => severity === 'error')) return inError;
  // Where nothing is wrong here, the reason is what could not be read there.
  if (named.some((each) => each.kind === 'reading' && each.reading.value === unreadValue)) return unreadValue;
  return evaluate(typed, environment);
}

/** The first conversion that found no barometer; the others mostly lack the same one. */
function noBarometer(conversions: readonly Conversion[]): readonly Diagnostic[] {
  const first = conversions.find(
    ({ node, barometer: { value, among } }) =>
      // A function that lacks the case's barometer has a substitute, but not among several.
      value.kind === 'absent' && (node.kind === 'convert' || among.length > 0),
  );
  if (first === undefined) return [];
  const { node, barometer } = first;
  const name = node.kind === 'convert' ? node.to : node.row.name;
  const facts = { what: `\`${name}(…)\``, among: barometer.among };
  return [diagnose('no-barometer', nameSpan(name, node), facts)];
}

/** What was found of a call that was computed all the same. */
function diagnosed({ call, caution }: Told): Diagnostic {
  const { name } = call.row;
  const span = nameSpan(name, call);
  if (caution.kind === 'standard barometer')
    return diagnose('standard-barometer', span, { name, parameter: caution.parameter, taken: caution.taken });
  if (caution.kind === 'fits as well')
    return diagnose('fits-as-well', span, { name, got: caution.got, also: caution.also });
  const { of, got, limits, meaning } = caution;
  return diagnose('outside-range', span, { name, of, got, limits, meaning });
}

const nameSpan = (name: string, { span }: Typed): Span => ({
  start: span.start,
  end: span.start + name.length,
});

/** The cells that a name's value is taken from. */
function addCellsOf(named: Named, cells: Set<number>): void {
  if (named.kind === 'definition') cells.add(named.definition.cell);
  if (named.kind === 'reading') addCellOf(named.reading, cells);
  if (named.kind === 'states') for (const each of named.readings.values()) addCellOf(each, cells);
}

function addCellOf({ from, cell }: Reading, cells: Set<number>): void {
  if (from !== 'header') cells.add(cell);
}

/** Stands for a value whose expression was misread; what is wrong is told where it stands. */
export const inError: Absent = {
  kind: 'absent',
  status: 'cannot compute',
  why: 'the expression has an error',
};

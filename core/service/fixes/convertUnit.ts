import { sourceSpan } from '../../casefile/tree.ts';
import type { Expression } from '../../expression/tree.ts';
import { otherUnit, qualifierOf } from '../../quantity/format.ts';
import { isAbsence, isRange, parseReading } from '../../quantity/parse.ts';
import type { Kind, Quantity, Unit } from '../../quantity/types.ts';
import { plainUnit, unitOf } from '../../quantity/unit.ts';
import { signalOf } from '../../signals/lookup.ts';
import type { Span } from '../../text/span.ts';
import { decodedOffset, expressionOf, nodesAround } from '../expressionAt.ts';
import { type Spot, spotAt } from '../spots.ts';
import type { Standing } from '../standing.ts';
import { kindAt } from '../typedAt.ts';
import type { CodeFix } from '../types.ts';
import { numberIn, typeOf, writtenIn } from '../writtenIn.ts';
import { rewrite } from './rewrite.ts';

/** Writes a value in another unit: the other system's, and those that its signal is mostly read in. */
export function convertUnit(standing: Standing, span: Span): readonly CodeFix[] {
  const spot = spotAt(standing, span.start);
  if (spot === undefined) return [];
  const { node, role } = spot;
  if (role === 'expression') return inExpression(standing, spot, span);
  const inTable = spot.path[1] === 'table';
  if ((role !== 'reading' && role !== 'quantity') || inTable) return [];
  const { value } = parseReading(node.text);
  if (value === undefined || isAbsence(value)) return [];
  const trimmed = node.text.trim();
  const start = node.text.indexOf(trimmed);
  const place = sourceSpan(node, { start, end: start + trimmed.length });
  const kind = kindOf(standing, spot);
  const one = isRange(value) ? (value.high ?? value.low) : value;
  if (one === undefined) return [];
  return unitsFor(one, kind, signalUnits(standing, spot)).flatMap((unit) => {
    const text = isRange(value)
      ? rangeIn(unit, value.low, value.high, kind, trimmed)
      : writtenIn(unit, value, kind, trimmed);
    return text === undefined
      ? []
      : [rewrite(`Write it as ${text}`, standing.index, [{ span: place, newText: text }])];
  });
}

function inExpression(standing: Standing, { node }: Spot, span: Span): readonly CodeFix[] {
  const expression = expressionOf(standing, node);
  const around = nodesAround(expression, decodedOffset(node, span.start));
  const literal: Expression | undefined = around[around.length - 1];
  if (literal?.kind !== 'quantity') return [];
  const kind = kindAt(standing, expression, literal);
  if (kind === undefined) return [];
  const { quantity } = literal;
  const written = node.text.slice(literal.span.start, literal.span.end);
  return unitsFor(quantity, kind, []).flatMap((unit) => {
    const newText = writtenIn(unit, quantity, kind, written);
    if (newText === undefined) return [];
    return [
      rewrite(`Write it as ${newText}`, standing.index, [{ span: sourceSpan(node, literal.span), newText }]),
    ];
  });
}

/** The kind that a value has by its key: its signal's; an accuracy and an offset are differences. */
function kindOf({ names }: Standing, { under, path }: Spot): Kind | undefined {
  const name = under?.text ?? '';
  if (name === 'accuracy' || name === 'offset') return 'difference';
  const signal =
    name === 'possible'
      ? names.ownSignals.get(path[2] ?? '')
      : (names.ownSignals.get(name) ?? signalOf(name));
  return signal?.forms[0]?.kind;
}

function signalUnits({ names }: Standing, { under }: Spot): readonly Unit[] {
  const signal = names.ownSignals.get(under?.text ?? '') ?? signalOf(under?.text ?? '');
  return (signal?.forms ?? []).flatMap(({ unit: symbol, kind }) => {
    const unit = unitOf(symbol);
    if (unit === undefined) return [];
    const other = otherUnit(unit, kind);
    return other === undefined ? [unit] : [unit, other];
  });
}

/** The units to offer, the other system's first; none that it has already or that measures something else. */
function unitsFor(
  { unit, kindGiven, kind }: Quantity,
  of: Kind | undefined,
  more: readonly Unit[],
): readonly Unit[] {
  const other = otherUnit(unit, kindGiven ? kind : of);
  const all = other === undefined ? more : [other, ...more];
  const fitting = all.filter(
    (each) => each !== unit && each.dimension === unit.dimension && each !== plainUnit && unit !== plainUnit,
  );
  return [...new Set(fitting)].slice(0, 4);
}

function rangeIn(
  unit: Unit,
  low: Quantity | undefined,
  high: Quantity | undefined,
  of: Kind | undefined,
  written: string,
): string | undefined {
  const [first = '', last = ''] = written.split('..');
  const lowText = low === undefined ? undefined : numberIn(unit, low, of, first.replace(/^at least/, ''));
  const highText =
    high === undefined
      ? undefined
      : numberIn(unit, high, of, last === '' ? first.replace(/^at most/, '') : last);
  const given = high ?? low;
  const qualifier = given?.kindGiven === true ? qualifierOf(typeOf(given, of)) : undefined;
  const behind = [unit.symbol, ...(qualifier === undefined ? [] : [qualifier])].join(' ');
  if (lowText === undefined) return highText === undefined ? undefined : `at most ${highText} ${behind}`;
  if (highText === undefined) return `at least ${lowText} ${behind}`;
  return `${lowText} .. ${highText} ${behind}`;
}

import { otherUnit } from '../quantity/format.ts';
import { qualifiersOf } from '../quantity/scan.ts';
import type { Dimension, Unit } from '../quantity/types.ts';
import { allUnits, unitOf } from '../quantity/unit.ts';
import { unitRows } from '../quantity/unitTable.ts';
import type { Signal } from '../signals/types.ts';
import { offer } from './offer.ts';
import type { Completion } from './types.ts';
import type { Typing } from './typing.ts';

/** A number, perhaps with its ±, behind which a unit has begun or may begin. */
const afterNumber =
  /(?:^|[^\p{L}\p{N}_.])[-+]?\d+(?:\.\d*)?(?:\s*(?:±|\+\/-)\s*\d+(?:\.\d*)?)?\s*([^\s\d.,()[\]]*)$/u;
const afterUnit = /\d\s*([^\s\d]+)\s+(\p{L}*)$/u;

/**
 * Units behind a number: those of these units' dimensions, the usual ones first; with `only` no others.
 * Behind a pressure's or a temperature's unit: the words that say its kind. Nothing where no number stands.
 */
export function completeUnit(
  { before, start }: Pick<Typing, 'before' | 'start'>,
  wanted: readonly string[],
  only: boolean,
): readonly Completion[] {
  const end = start + before.length;
  const [, unit = '', begun = ''] = afterUnit.exec(before) ?? [];
  const written = unitOf(unit);
  if (written !== undefined) {
    const span = { start: end - begun.length, end };
    return qualifiersOf(written)
      .filter((kind) => kind.startsWith(begun))
      .map((kind, rank) => ({ ...offer('word', kind, `${unit} ${kind}`, span), rank }));
  }
  const number = afterNumber.exec(before);
  if (number === null) return [];
  const span = { start: end - (number[1]?.length ?? 0), end };
  // A unit stands apart from its number.
  const apart =
    span.start > start && /[\d.]/.test(before[before.length - 1 - (number[1]?.length ?? 0)] ?? '');
  return unitsFor(wanted, only).map(({ symbol, rank }) => ({
    ...offer('unit', symbol, unitNames().get(symbol) ?? '', span),
    newText: apart ? ` ${symbol}` : symbol,
    rank,
    filter: [symbol, ...(spellings().get(symbol) ?? [])].join(' '),
  }));
}

/** The units that a signal is mostly read in: of each of its forms, in both systems. */
export function unitsOf(signal: Signal | undefined): readonly string[] {
  return (signal?.forms ?? []).flatMap(({ unit: symbol, kind }) => {
    const unit = unitOf(symbol);
    const other = unit === undefined ? undefined : otherUnit(unit, kind);
    return other === undefined ? [symbol] : [symbol, other.symbol];
  });
}

/** The wanted units first, in their order, then the other system's, then all of their dimensions, then all the rest. */
function unitsFor(wanted: readonly string[], only: boolean): readonly { symbol: string; rank: number }[] {
  const known = wanted.map((symbol) => unitOf(symbol)).filter((unit) => unit !== undefined);
  const others = known.map((unit) => otherUnit(unit)).filter((unit) => unit !== undefined);
  const dimensions = new Set<Dimension>(known.map((unit) => unit.dimension));
  const ranked = new Map<string, number>();
  const add = (unit: Unit, rank: number): void => {
    if (unit.symbol !== '1' && !ranked.has(unit.symbol)) ranked.set(unit.symbol, rank);
  };
  known.forEach((unit, at) => {
    add(unit, Math.min(at, 17));
  });
  for (const unit of others) add(unit, 18);
  for (const unit of allUnits()) if (dimensions.has(unit.dimension)) add(unit, 19);
  if (!only) for (const unit of [...allUnits(), ...joinedUnits()]) add(unit, 20);
  return [...ranked].map(([symbol, rank]) => ({ symbol, rank }));
}

/** Joined units that the trade writes. */
function joinedUnits(): readonly Unit[] {
  return ['g/s', 'kg/h', 'lb/min', 'km/h', 'L/h', 'gal/h', 'cc/min', 'L/min'].flatMap((symbol) => {
    const unit = unitOf(symbol);
    return unit === undefined ? [] : [unit];
  });
}

let named: ReadonlyMap<string, string> | undefined;
let spelled: ReadonlyMap<string, readonly string[]> | undefined;

function unitNames(): ReadonlyMap<string, string> {
  named ??= new Map(unitRows.map((row) => [row.symbol, row.name]));
  return named;
}

/** A unit is also found by its other spellings: `degF` finds `°F`. */
function spellings(): ReadonlyMap<string, readonly string[]> {
  spelled ??= new Map(unitRows.map((row) => [row.symbol, [...row.also, row.name]]));
  return spelled;
}

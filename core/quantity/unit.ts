import { plain, power, root, times } from './dimension.ts';
import { exactFactor } from './exactFactor.ts';
import type { Dimension, Unit } from './types.ts';
import { type UnitRow, unitRows } from './unitTable.ts';

/** What a unit is joined from: single units and their powers, in the order of writing. */
type Factors = ReadonlyMap<Unit, number>;

/** Every spelling read so far, the table's own first. */
const bySpelling = new Map<string, Unit>();
/** The table's other ways to write a unit: `N·m`, `A·h`. */
const tabledSpelling = new Map<string, Unit>();
/** Units by canonical symbol: equal units are the same object. */
const bySymbol = new Map<string, Unit>();
/** Of every joined unit, also of those that are not kept: without them its factor could not be carried on. */
const factorsOf = new WeakMap<Unit, Factors>();
const rowOf = new Map<Unit, UnitRow>();

/** Joined spellings are kept up to here: a text full of made-up combinations must not fill the memory. */
const mostKept = 5000;

for (const row of unitRows) readRow(row);

/** The unit of numbers without one, `1`. */
export const plainUnit: Unit = tabled('1');
export const percentUnit: Unit = tabled('%');

/**
 * The unit that this text names: one known symbol, or symbols joined by `/` or `·` (in ASCII `.`),
 * each with an optional integer power (`m²`, `m^2`, `s⁻¹`; after a length also `cm3`).
 * No spaces. A product after a `/` is not read, since `a/b·c` means two things. Anything else is undefined.
 * Equal units are the same object; the symbol is the canonical one.
 */
export function unitOf(text: string): Unit | undefined {
  const known = bySpelling.get(text);
  if (known !== undefined) return known;
  const factors = readFactors(text);
  if (factors === undefined) return undefined;
  const unit = join(factors);
  if (bySpelling.size < mostKept) bySpelling.set(text, unit);
  return unit;
}

/**
 * The unit of a product: the joined symbols. Beside a plain number the other's unit stays (2 % of 10 g/s is in g/s);
 * what has no dimension is `1`, or `%` where an operand is.
 */
export function productUnit(a: Unit, b: Unit): Unit {
  if (a.dimension === plain) return b.dimension === plain ? withoutDimension(a, b) : b;
  if (b.dimension === plain) return a;
  return joined(a, b, 1);
}

/** The unit of a quotient, by the same rules; a percentage over a unit keeps its sign (`%/s`). */
export function quotientUnit(a: Unit, b: Unit): Unit {
  if (b.dimension === plain) return a.dimension === plain ? withoutDimension(a, b) : a;
  return joined(a, b, -1);
}

/** The unit of an integer power. */
export function powerUnit(a: Unit, exponent: number): Unit {
  if (exponent === 0) return plainUnit;
  if (a.dimension === plain) return withoutDimension(a, a);
  const factors = new Map<Unit, number>();
  for (const [unit, count] of partsOf(a)) factors.set(unit, count * exponent);
  return join(factors);
}

/** The unit of an n-th root: the symbols' where their powers divide, otherwise coherent SI; undefined where no unit is. */
export function rootUnit(a: Unit, degree: number): Unit | undefined {
  const dimension = root(a.dimension, degree);
  if (dimension === undefined) return undefined;
  if (a.dimension === plain) return withoutDimension(a, a);
  const factors = new Map<Unit, number>();
  for (const [unit, count] of partsOf(a)) {
    if (count % degree !== 0) return siUnit(dimension);
    factors.set(unit, count / degree);
  }
  return join(factors);
}

/** The coherent SI unit of a dimension, joined from the bases: `kg/m/s²`. */
export function siUnit(dimension: Dimension): Unit {
  const factors = new Map<Unit, number>();
  siBases.forEach((symbol, at) => {
    const exponent = dimension.exponents[at] ?? 0;
    if (exponent !== 0) factors.set(tabled(symbol), exponent);
  });
  return join(factors);
}

const siBases = ['m', 'kg', 's', 'A', 'K', 'turn'];

/** The units that stand by themselves, in the table's order. */
export function allUnits(): Unit[] {
  return unitRows.map((row) => tabled(row.symbol));
}

function withoutDimension(a: Unit, b: Unit): Unit {
  return a === percentUnit || b === percentUnit ? percentUnit : plainUnit;
}

function joined(a: Unit, b: Unit, sign: 1 | -1): Unit {
  const factors = new Map(partsOf(a));
  for (const [unit, count] of partsOf(b)) {
    const sum = (factors.get(unit) ?? 0) + sign * count;
    if (sum === 0) factors.delete(unit);
    else factors.set(unit, sum);
  }
  const unit = join(factors);
  if (unit.dimension !== plain) return unit;
  return factors.has(percentUnit) ? percentUnit : plainUnit;
}

function partsOf(unit: Unit): Factors {
  return factorsOf.get(unit) ?? new Map([[unit, 1]]);
}

function readRow(row: UnitRow): void {
  const { symbol, dimension, factor, offset = 0, kind } = row;
  const unit: Unit =
    kind === undefined ? { symbol, dimension, factor, offset } : { symbol, dimension, factor, offset, kind };
  rowOf.set(unit, row);
  bySymbol.set(symbol, unit);
  bySpelling.set(symbol, unit);
  for (const spelling of row.also) {
    bySpelling.set(spelling, unit);
    tabledSpelling.set(spelling, unit);
  }
  // In a joined unit a stroke is not counted, and a crank position is an angle.
  const joinsAs = row.joinsAs ?? (kind === undefined ? undefined : '°');
  if (symbol === '1') factorsOf.set(unit, new Map());
  else if (joinsAs !== undefined) factorsOf.set(unit, new Map([[tabled(joinsAs), 1]]));
}

function tabled(symbol: string): Unit {
  const unit = bySymbol.get(symbol);
  if (unit === undefined) throw new Error(`the unit table has no ${symbol}`);
  return unit;
}

/** Reads the symbols around `/` and `·`; a pair that the table knows as one (`lb·ft`) is one. */
function readFactors(text: string): Factors | undefined {
  if (text.length > longestUnit) return undefined;
  const pieces = text.split(/([/·.⋅])/);
  const factors = new Map<Unit, number>();
  let divides = false;
  for (let at = 0; at < pieces.length; at += 2) {
    const joiner = pieces[at - 1];
    if (joiner === '/') divides = true;
    else if (joiner !== undefined && divides) return undefined;
    let part: readonly [Unit, number] | undefined;
    const pair = divides ? undefined : bySpelling.get(pieces.slice(at, at + 3).join(''));
    if (pair !== undefined && pieces.length > at + 2 && isTabled(pair)) {
      part = [pair, 1];
      if (pieces[at + 1] === '/') divides = true;
      at += 2;
    } else {
      part = readPower(pieces[at] ?? '');
    }
    if (part === undefined || part[0] === plainUnit || part[0].kind !== undefined) return undefined;
    for (const [unit, count] of partsOf(part[0])) {
      const power = (factors.get(unit) ?? 0) + (joiner === '/' ? -1 : 1) * part[1] * count;
      if (power === 0) return undefined;
      factors.set(unit, power);
    }
  }
  return factors;
}

const longestUnit = 60;

function isTabled(unit: Unit): boolean {
  return bySymbol.get(unit.symbol) === unit && !factorsOf.has(unit);
}

function readPower(piece: string): readonly [Unit, number] | undefined {
  const whole = bySpelling.get(piece);
  if (whole !== undefined) return [whole, 1];
  const parts = /^([^^⁻²³¹⁰⁴-⁹]+?)(?:\^(-?[1-9])|(⁻?[¹²³⁴-⁹])|([23]))$/u.exec(piece);
  const unit = bySpelling.get(parts?.[1] ?? '');
  if (parts === null || unit === undefined) return undefined;
  if (parts[4] !== undefined) return unit.dimension.name === 'length' ? [unit, Number(parts[4])] : undefined;
  const raised = parts[2] ?? lower(parts[3] ?? '');
  return [unit, Number(raised)];
}

const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';

function lower(raised: string): string {
  return [...raised].map((each) => (each === '⁻' ? '-' : superscripts.indexOf(each))).join('');
}

function raise(exponent: number): string {
  return [...String(exponent)].map((each) => (each === '-' ? '⁻' : superscripts[Number(each)])).join('');
}

/** The unit of these powers: products first, then one `/` for each divisor, so that reading it back is unambiguous. */
function join(factors: Factors): Unit {
  let above = '';
  let below = '';
  for (const [unit, power] of factors) {
    if (power > 0) above += `${above === '' ? '' : '·'}${unit.symbol}${power === 1 ? '' : raise(power)}`;
  }
  for (const [unit, power] of factors) {
    if (power > 0) continue;
    if (above !== '') below += `/${unit.symbol}${power === -1 ? '' : raise(-power)}`;
    else below += `${below === '' ? '' : '·'}${unit.symbol}${raise(power)}`;
  }
  const symbol = above + below;
  if (symbol === '') return plainUnit;
  const dimension = dimensionOf(factors);
  const known = bySymbol.get(symbol) ?? tabledSpelling.get(symbol);
  if (known?.dimension === dimension) return known;
  // Pounds of mass times feet are no torque, though `lb·ft` is how that is written: SI says which is meant.
  if (known !== undefined || readsOtherwise(symbol, dimension)) return siUnit(dimension);
  const unit = { symbol, dimension, factor: factorOf(factors), offset: 0 };
  factorsOf.set(unit, factors);
  if (bySymbol.size < mostKept) bySymbol.set(symbol, unit);
  return unit;
}

/** Whether a joined symbol is read as another one: a squared torque `lb·ft²` as pounds of mass times square feet. */
function readsOtherwise(symbol: string, dimension: Dimension): boolean {
  const read = readFactors(symbol);
  return read !== undefined && dimensionOf(read) !== dimension;
}

function factorOf(factors: Factors): number {
  const parts: [UnitRow, number][] = [];
  for (const [unit, count] of factors) {
    const row = rowOf.get(unit);
    if (row !== undefined) parts.push([row, count]);
  }
  return exactFactor(parts);
}

function dimensionOf(factors: Factors): Dimension {
  let dimension = plain;
  for (const [unit, count] of factors) dimension = times(dimension, power(unit.dimension, count));
  return dimension;
}

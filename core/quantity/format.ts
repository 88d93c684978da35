import { fromSi } from './convert.ts';
import type { Kind, QuantityType, Unit } from './types.ts';
import { plainUnit, unitOf } from './unit.ts';

/** Rounded to 12 significant digits: what is left is measurement, not the computer's last bits. */
export function round12(value: number): number {
  if (Number.isInteger(value) && Math.abs(value) < 1e12) return value + 0;
  return Number.isFinite(value) ? Number(value.toPrecision(12)) + 0 : value;
}

/**
 * A number as a technician would write it, never with a power of ten between 1e-9 and 1e21.
 * With a half-width: to its second significant digit. Without: up to 6 significant digits as they are,
 * a longer number to 5 (or so many as `digits` says), its whole part never cut.
 */
export function formatNumber(value: number, halfWidth = 0, digits = 5): string {
  if (!Number.isFinite(value)) return Number.isNaN(value) ? 'no number' : value < 0 ? '-∞' : '∞';
  if (halfWidth > 0) return besideWidth(value, halfWidth);
  const short = fewDecimals(value);
  if (short !== undefined) return String(short);
  // Most numbers have six digits and at most the computer's last bits behind them: twelve digits say the same.
  const six = Number(value.toPrecision(6));
  if (Math.abs(value) >= 1e-6 && Math.abs(value) < 1e15 && Math.abs(six - value) <= 1e-14 * Math.abs(value))
    return written(six);
  const rounded = round12(value);
  const magnitude = Math.abs(rounded);
  if (magnitude !== 0 && (magnitude < 1e-9 || magnitude >= 1e21))
    return String(Number(rounded.toPrecision(5)));
  if (six === rounded) return written(rounded);
  if (magnitude >= 10 ** digits) return fixed(rounded, 0);
  return written(Number(rounded.toPrecision(digits)));
}

/**
 * The number of at most six digits and two decimals that this one is but for the computer's last bits, found without writing it out:
 * what instruments show is such a number. A whole number divided by 10 or 100 is the double that its decimals are read as.
 */
function fewDecimals(value: number): number | undefined {
  for (let scale = 1; scale <= 100; scale *= 10) {
    const whole = Math.round(value * scale);
    if (Math.abs(whole) >= 1e6) return undefined;
    const near = whole / scale;
    if (near !== 0 && Math.abs(near - value) <= 1e-14 * Math.abs(value)) return near;
  }
  return undefined;
}

/** "19.8 ± 0.2 inHg": an SI number in the type's unit, with its half-width (SI) when there is one. */
export function formatQuantity(si: number, type: QuantityType, halfWidth = 0): string {
  const { unit, kind } = type;
  const value = fromSi(si, unit, kind);
  const width = Math.abs(halfWidth / unit.factor);
  const number = formatNumber(value, width);
  return withUnit(width > 0 ? `${number} ± ${formatWidth(width)}` : number, unit);
}

/** The same with the word that a reader needs to take it as the same kind: "45 psi gauge", "10 °F difference". */
export function formatWithKind(si: number, type: QuantityType, halfWidth = 0): string {
  const word = qualifierOf(type);
  const text = formatQuantity(si, type, halfWidth);
  return word === undefined ? text : `${text} ${word}`;
}

/** The qualifier that a quantity of this type is written with; undefined when the unit says enough. */
export function qualifierOf(type: QuantityType): Kind | undefined {
  switch (type.kind) {
    case 'absolute':
    case 'gauge':
    case 'vacuum':
    case 'difference':
      return type.kind;
    default:
      return undefined;
  }
}

/**
 * "-10 .. 10 %", "at least 142 psi", "at most 3 psi": ends in SI units; an open end is undefined.
 * A limit converted from another unit is said to 4 significant digits: it was not known to more.
 */
export function formatRange(low: number | undefined, high: number | undefined, type: QuantityType): string {
  const end = (si: number): string => formatNumber(fromSi(si, type.unit, type.kind), 0, 4);
  if (low === undefined) return high === undefined ? 'anything' : `at most ${withUnit(end(high), type.unit)}`;
  if (high === undefined) return `at least ${withUnit(end(low), type.unit)}`;
  return `${end(low)} .. ${withUnit(end(high), type.unit)}`;
}

/** The unit in which a reader of the other system would want it; undefined where both use the same. */
export function otherUnit(unit: Unit, kind?: Kind): Unit | undefined {
  // Manifold pressures are read in inches of mercury, line pressures in psi.
  const low = kind === 'absolute' || kind === 'vacuum';
  const symbol = low && unit.symbol === 'kPa' ? 'inHg' : otherSymbols.get(unit.symbol);
  return symbol === undefined ? undefined : unitOf(symbol);
}

const otherSymbols: ReadonlyMap<string, string> = new Map([
  ['inHg', 'kPa'],
  ['cmHg', 'kPa'],
  ['mmHg', 'kPa'],
  ['inH2O', 'kPa'],
  ['mmH2O', 'inH2O'],
  ['psi', 'kPa'],
  ['kPa', 'psi'],
  ['hPa', 'inHg'],
  ['mbar', 'inHg'],
  ['Pa', 'inH2O'],
  ['bar', 'psi'],
  ['MPa', 'psi'],
  ['kgf/cm²', 'psi'],
  ['atm', 'kPa'],
  ['°F', '°C'],
  ['°C', '°F'],
  ['g/s', 'lb/min'],
  ['lb/min', 'g/s'],
  ['kg/h', 'lb/h'],
  ['lb/h', 'kg/h'],
  ['km/h', 'mph'],
  ['mph', 'km/h'],
  ['km', 'mi'],
  ['mi', 'km'],
  ['m', 'ft'],
  ['ft', 'm'],
  ['mm', 'inch'],
  ['inch', 'mm'],
  ['cm', 'inch'],
  ['thou', 'mm'],
  ['L', 'qt'],
  ['qt', 'L'],
  ['gal', 'L'],
  ['cc', 'inch³'],
  ['cm³', 'inch³'],
  ['inch³', 'cc'],
  ['L/h', 'gal/h'],
  ['gal/h', 'L/h'],
  ['L/min', 'gal/min'],
  ['gal/min', 'L/min'],
  ['cfm', 'L/min'],
  ['ft³/min', 'L/min'],
  ['kg', 'lb'],
  ['lb', 'kg'],
  ['oz', 'g'],
  ['Nm', 'lb·ft'],
  ['lb·ft', 'Nm'],
  ['inch·lb', 'Nm'],
  ['N', 'lbf'],
  ['lbf', 'N'],
  ['kW', 'hp'],
  ['hp', 'kW'],
]);

function withUnit(number: string, unit: Unit): string {
  return unit === plainUnit ? number : `${number} ${unit.symbol}`;
}

/**
 * To the last digit of the half-width. Of one that is a single digit the second is a nought that is not written:
 * where the number ends there it stands whole, so that what an author wrote is not rounded away.
 */
function besideWidth(value: number, width: number): string {
  const decimals = decimalsOf(width);
  if (Number(width.toPrecision(1)) === Number(width.toPrecision(2))) {
    const finer = fixed(value, decimals + 1);
    if (Number(finer) === round12(value) && !finer.endsWith('0')) return finer;
  }
  return fixed(value, decimals);
}

/** The decimals that show a half-width to two significant digits, without a trailing zero. */
function decimalsOf(width: number): number {
  const text = formatWidth(width);
  const point = text.indexOf('.');
  return point === -1 ? 0 : text.length - point - 1;
}

function formatWidth(width: number): string {
  if (!Number.isFinite(width)) return formatNumber(width);
  return written(Number(width.toPrecision(2)));
}

function fixed(value: number, decimals: number): string {
  const text = value.toFixed(Math.min(decimals, 100));
  return /^-0(\.0*)?$/.test(text) ? text.slice(1) : text;
}

/** A double's shortest digits, written out without a power of ten. */
function written(value: number): string {
  const text = String(value + 0);
  if (!text.includes('e')) return text;
  const [digits = '', exponent] = text.split('e');
  const decimals = Math.max(0, (digits.split('.')[1]?.length ?? 0) - Number(exponent));
  return decimals > 100 ? text : value.toFixed(decimals);
}

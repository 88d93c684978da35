/**
 * The words that the whole core uses for what a number measures.
 * Inside, a number is in coherent SI units (kg, m, s, A, K, and the turn for angles); units are for reading and writing.
 */

/** Exact integer exponents of the base dimensions, interned: equal dimensions are the same object. */
export interface Dimension {
  /** length, mass, time, current, temperature, turn */
  readonly exponents: readonly [number, number, number, number, number, number];
  /** A stable name for maps and messages: "pressure" where the trade has a word, otherwise "m^2·s^-1". */
  readonly name: string;
}

/**
 * What pressures, temperatures and crank positions carry beside their dimension.
 * - pressure: absolute, gauge (above the barometer), vacuum (below it, positive), difference; open: not said yet.
 * - temperature: point or difference.
 * - crank angle: a position before or after a dead centre (btdc, atdc, bbdc, abdc), or a difference.
 * - everything else: none.
 */
export type Kind =
  | 'none'
  | 'open'
  | 'absolute'
  | 'gauge'
  | 'vacuum'
  | 'difference'
  | 'point'
  | 'btdc'
  | 'atdc'
  | 'bbdc'
  | 'abdc';

/** A unit, single or joined: si = value × factor + offset (offset only for temperature points). */
export interface Unit {
  /** The canonical symbol, as printed: "inHg", "°C", "g/s". Plain numbers have the unit "1". */
  readonly symbol: string;
  readonly dimension: Dimension;
  readonly factor: number;
  readonly offset: number;
  /** Where the symbol itself says it: °BTDC. */
  readonly kind?: Kind;
}

/** What a number means, and the unit that its author would read it in. Percent is a plain number whose unit is "%". */
export interface QuantityType {
  readonly dimension: Dimension;
  readonly kind: Kind;
  readonly unit: Unit;
}

/** Identifies one independent source of uncertainty (a reading's own ±, a tool's accuracy, an encoding's step). */
export type SourceId = string;

/** First-order contributions by source: signed, in SI, sensitivity × half-width. Sorted by source. */
export type Spread = readonly { readonly source: SourceId; readonly by: number }[];

/** A number in SI units with the sources of its uncertainty; `exact` shares one empty spread. */
export interface Amount {
  readonly si: number;
  readonly spread: Spread;
}

/** A quantity as it was written. */
export interface Quantity {
  /** The number before the unit, as written. */
  readonly value: number;
  readonly unit: Unit;
  /** From the qualifier or the unit; without them: open for pressure, point for °C °F K, none otherwise. */
  readonly kind: Kind;
  /** True when a qualifier or the unit said the kind; otherwise the place may decide. */
  readonly kindGiven: boolean;
  /** The half-width in `unit` (a difference), 0 when none is stated. */
  readonly plusMinus: number;
}

/** `17 .. 22 inHg`, `at least 142 psi`, `at most 3 psi`: both ends in SI terms of their own quantity. */
export interface QuantityRange {
  readonly low: Quantity | undefined;
  readonly high: Quantity | undefined;
}

/** What a cell may say instead of a value. */
export type Absence = 'not taken' | 'not supported' | 'no reading';

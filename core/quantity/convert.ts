import type { Kind, Quantity, Unit } from './types.ts';

/** The number in coherent SI units. Only a temperature point has an offset: a difference of 18 °F is 10 K. */
export function toSi(value: number, unit: Unit, kind: Kind): number {
  return kind === 'point' ? value * unit.factor + unit.offset : value * unit.factor;
}

/** The number in the unit, from coherent SI units. */
export function fromSi(si: number, unit: Unit, kind: Kind): number {
  return kind === 'point' ? (si - unit.offset) / unit.factor : si / unit.factor;
}

/**
 * The same quantity in another unit of its dimension; undefined when the dimensions differ.
 * A temperature is a point unless `kind` says difference.
 */
export function convert(value: number, from: Unit, to: Unit, kind?: Kind): number | undefined {
  if (from.dimension !== to.dimension) return undefined;
  if (from === to) return value;
  const as = kind ?? (from.offset !== 0 || to.offset !== 0 ? 'point' : 'none');
  return fromSi(toSi(value, from, as), to, as);
}

/** A written quantity in SI units, taken as `kind` (its own when not given). */
export function quantitySi(quantity: Quantity, kind: Kind = quantity.kind): number {
  return toSi(quantity.value, quantity.unit, kind);
}

/** Its half-width in SI units. */
export function halfWidthSi(quantity: Quantity): number {
  return quantity.plusMinus * quantity.unit.factor;
}

/** A pressure of one kind from another's: `own` × the pressure + `barometer` × the barometer. */
export interface PressureChange {
  readonly own: 1 | -1;
  readonly barometer: -1 | 0 | 1;
}

type PressureKind = 'absolute' | 'gauge' | 'vacuum';

/** Each kind as absolute pressure: gauge lies above the barometer, vacuum below it and counts positive. */
const asAbsolute: Readonly<Record<PressureKind, { own: 1 | -1; barometer: 0 | 1 }>> = {
  absolute: { own: 1, barometer: 0 },
  gauge: { own: 1, barometer: 1 },
  vacuum: { own: -1, barometer: 1 },
};

function isPressureKind(kind: Kind): kind is PressureKind {
  return kind === 'absolute' || kind === 'gauge' || kind === 'vacuum';
}

/**
 * How a pressure of one kind becomes another (ISO 80000-4: gauge pressure is the excess over the ambient pressure).
 * The barometer is the station's, never the sea-level figure. Undefined for kinds that have no zero: difference, open.
 */
export function pressureChange(from: Kind, to: Kind): PressureChange | undefined {
  if (!isPressureKind(from) || !isPressureKind(to)) return undefined;
  const a = asAbsolute[from];
  const b = asAbsolute[to];
  // p_to = (p_abs − b.barometer·baro) / b.own, and ±1 is its own inverse.
  const own = (a.own * b.own) as 1 | -1;
  return { own, barometer: ((a.barometer - b.barometer) * b.own + 0) as -1 | 0 | 1 };
}

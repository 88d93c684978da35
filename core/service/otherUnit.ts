import { otherUnit } from '../quantity/format.ts';
import type { QuantityType, Unit } from '../quantity/types.ts';
import { unitOf } from '../quantity/unit.ts';
import type { UnitPreference } from './types.ts';

/** The unit beside the written one: of the other system, or of the one that the reader prefers, unless it is that already. */
export function secondUnit(type: QuantityType, preference: UnitPreference): Unit | undefined {
  const other = otherUnit(type.unit, type.kind);
  if (other === undefined || preference === 'as written') return other;
  const wanted = preference === 'US';
  if (isUsCustomary(type.unit) === wanted) return undefined;
  return isUsCustomary(other) === wanted ? other : undefined;
}

/** Units of the inch and pound, and the two columns that are read where those are. */
function isUsCustomary(unit: Unit): boolean {
  usCustomary ??= new Set(symbols.map((symbol) => unitOf(symbol)));
  return usCustomary.has(unit);
}

let usCustomary: ReadonlySet<Unit | undefined> | undefined;

const symbols = [
  ...['inHg', 'inH2O', 'psi', '°F', 'lb/min', 'lb/h', 'mph', 'mi', 'ft', 'inch', 'thou', 'qt', 'pt', 'gal'],
  ...['inch³', 'gal/h', 'gal/min', 'cfm', 'ft³/min', 'lb', 'oz', 'lb·ft', 'inch·lb', 'lbf', 'hp'],
];

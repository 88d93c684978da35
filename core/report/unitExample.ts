import { fromSi, toSi } from '../quantity/convert.ts';
import { plain } from '../quantity/dimension.ts';
import { formatNumber, otherUnit } from '../quantity/format.ts';
import type { Dimension, Unit } from '../quantity/types.ts';
import { allUnits, plainUnit, siUnit } from '../quantity/unit.ts';

/** "1 inHg = 3.3864 kPa": a unit in the one that the other system reads, or in SI. Nothing for a unit of SI itself. */
export function unitExample(unit: Unit): string | undefined {
  const other = otherUnit(unit) ?? namedSi(unit.dimension);
  if (other === unit) return undefined;
  // A temperature point of 0 or 1 would hide the offset behind its rounding.
  const isScale = unit.offset !== 0;
  const kind = isScale ? 'point' : 'none';
  const value = isScale ? 20 : 1;
  return `${value} ${unit.symbol} = ${withSymbol(formatNumber(fromSi(toSi(value, unit, kind), other, kind), 0, 6), other)}`;
}

/** The unit of SI that has a name of its own for it, such as the pascal; otherwise the joined one. */
function namedSi(dimension: Dimension): Unit {
  if (dimension === plain) return plainUnit;
  const named = allUnits().find(
    (unit) =>
      unit.dimension === dimension && unit.factor === 1 && unit.offset === 0 && unit.kind === undefined,
  );
  return named ?? siUnit(dimension);
}

function withSymbol(value: string, { symbol }: Unit): string {
  return symbol === '1' ? value : `${value} ${symbol}`;
}

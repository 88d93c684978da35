import { fromSi, toSi } from '../quantity/convert.ts';
import { plain } from '../quantity/dimension.ts';
import { formatNumber, otherUnit } from '../quantity/format.ts';
import type { Unit } from '../quantity/types.ts';
import { plainUnit, siUnit } from '../quantity/unit.ts';

/** "1 inHg = 3.3864 kPa": a unit in the one that the other system reads, or in SI. Nothing for a unit of SI itself. */
export function unitExample(unit: Unit): string | undefined {
  const other = otherUnit(unit) ?? (unit.dimension === plain ? plainUnit : siUnit(unit.dimension));
  if (other === unit) return undefined;
  // A temperature point of 0 or 1 would hide the offset behind its rounding.
  const isScale = unit.offset !== 0;
  const kind = isScale ? 'point' : 'none';
  const value = isScale ? 20 : 1;
  return `${value} ${unit.symbol} = ${withSymbol(formatNumber(fromSi(toSi(value, unit, kind), other, kind), 0, 6), other)}`;
}

function withSymbol(value: string, { symbol }: Unit): string {
  return symbol === '1' ? value : `${value} ${symbol}`;
}

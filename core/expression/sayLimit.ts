import { halfWidth } from '../quantity/amount.ts';
import { fromSi } from '../quantity/convert.ts';
import { formatNumber, formatQuantity, formatRange } from '../quantity/format.ts';
import type { Amount, QuantityType } from '../quantity/types.ts';
import type { Relation } from './tree.ts';

/** "below 14 inHg", "at least 142 psi". */
export function sayRelation(relation: Relation, limit: Amount | undefined, type: QuantityType): string {
  const text = sayAmount(limit, type);
  switch (relation) {
    case '<':
      return `below ${text}`;
    case '<=':
      return `at most ${text}`;
    case '>':
      return `above ${text}`;
    case '>=':
      return `at least ${text}`;
  }
}

/** "-10 .. 10 %"; what must stay outside is said so. */
export function sayBetween(
  low: Amount | undefined,
  high: Amount | undefined,
  lowType: QuantityType,
  highType: QuantityType,
  negated: boolean,
): string {
  const exact = (low?.spread.length ?? 0) === 0 && (high?.spread.length ?? 0) === 0;
  const oneUnit = lowType.unit === highType.unit || low?.si === 0;
  let range: string;
  if (low === undefined || high === undefined || (exact && oneUnit))
    range = formatRange(low?.si, high?.si, highType);
  else range = `${sayAmount(low, lowType)} .. ${sayAmount(high, highType)}`;
  return negated ? `outside ${range}` : range;
}

/** "0.5 inHg of 29.6 inHg", "2 % of 29.6 inHg". */
export function sayWithin(
  tolerance: Amount | undefined,
  right: Amount | undefined,
  toleranceType: QuantityType,
  rightType: QuantityType,
  negated: boolean,
): string {
  const text = `${sayAmount(tolerance, toleranceType)} of ${sayAmount(right, rightType)}`;
  return negated ? `more than ${text}` : text;
}

export function sayAmount(amount: Amount | undefined, type: QuantityType): string {
  if (amount === undefined || Number.isNaN(amount.si)) return '?';
  return formatQuantity(amount.si, type, halfWidth(amount));
}

/** A number in its type's unit, for a sentence about a cylinder or an index. */
export function sayNumber(amount: Amount, type: QuantityType): string {
  return formatNumber(fromSi(amount.si, type.unit, type.kind));
}

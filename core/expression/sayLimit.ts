import { halfWidth } from '../quantity/amount.ts';
import { formatQuantity, formatRange } from '../quantity/format.ts';
import type { Amount, QuantityType } from '../quantity/types.ts';
import { plainUnit } from '../quantity/unit.ts';
import { denial, type Relation } from './tree.ts';
import type { Comparing, Typed } from './typed.ts';
import type { Range } from './value.ts';

/**
 * The limit of a comparison as its author would write it; `amounts` are its operands' in order.
 * Under `not` the statement is `denied`: what had to be below a limit must be at least there.
 */
export function sayLimit(
  node: Comparing,
  range: Range | undefined,
  amounts: readonly Amount[],
  denied: boolean,
): string {
  const [, second, third] = amounts;
  switch (node.kind) {
    case 'compare':
      return sayRelation(denied ? denial[node.relation] : node.relation, second, quantityOf(node.right));
    case 'between':
      return sayBetween(second, third, quantityOf(node.low), quantityOf(node.high), node.negated !== denied);
    case 'within':
      return sayWithin(
        second,
        third,
        quantityOf(node.tolerance),
        quantityOf(node.right),
        node.negated !== denied,
      );
    case 'in range': {
      const type = quantityOf(node.range);
      return sayBetween(range?.low, range?.high, type, type, node.negated !== denied);
    }
  }
}

export function quantityOf({ type }: Typed): QuantityType {
  return 'quantity' in type ? type.quantity : plainNumber;
}

const plainNumber: QuantityType = { dimension: plainUnit.dimension, kind: 'none', unit: plainUnit };

/** "below 14 inHg", "at least 142 psi". */
function sayRelation(relation: Relation, limit: Amount | undefined, type: QuantityType): string {
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
function sayBetween(
  low: Amount | undefined,
  high: Amount | undefined,
  lowType: QuantityType,
  highType: QuantityType,
  negated: boolean,
): string {
  // Outside a range with one end is beyond that end.
  if (negated && low === undefined && high !== undefined) return sayRelation('>', high, highType);
  if (negated && high === undefined && low !== undefined) return sayRelation('<', low, lowType);
  const exact = (low?.spread.length ?? 0) === 0 && (high?.spread.length ?? 0) === 0;
  const oneUnit = lowType.unit === highType.unit || low?.si === 0;
  let range: string;
  if (low === undefined || high === undefined || (exact && oneUnit))
    range = formatRange(low?.si, high?.si, highType);
  else range = `${sayAmount(low, lowType)} .. ${sayAmount(high, highType)}`;
  return negated ? `outside ${range}` : range;
}

/** "0.5 inHg of 29.6 inHg", "2 % of 29.6 inHg". */
function sayWithin(
  tolerance: Amount | undefined,
  right: Amount | undefined,
  toleranceType: QuantityType,
  rightType: QuantityType,
  negated: boolean,
): string {
  const text = `${sayAmount(tolerance, toleranceType)} of ${sayAmount(right, rightType)}`;
  return negated ? `more than ${text}` : text;
}

function sayAmount(amount: Amount | undefined, type: QuantityType): string {
  if (amount === undefined || Number.isNaN(amount.si)) return '?';
  return formatQuantity(amount.si, type, halfWidth(amount));
}

import type { Absent, Value } from '../expression/value.ts';
import type { Amount, QuantityType } from '../quantity/types.ts';
import { figureIn, figureOf, inWords } from '../report/figure.ts';
import { typeOf, unitWords, valueFigure } from '../report/readingTable.ts';
import { secondUnit } from './otherUnit.ts';
import type { UnitPreference } from './types.ts';

/** A value in a line: "13.1 ± 0.2 inHg absolute (44.4 ± 0.7 kPa)". `written`: the decimals that its author wrote. */
export function valueWords(value: Value, units: UnitPreference = 'as written', written?: number): string {
  if (units !== 'as written' || written !== undefined) return worded(value, units, written);
  let words = known.get(value);
  if (words === undefined) {
    words = worded(value, units);
    known.set(value, words);
  }
  return words;
}

/** A list of all that is in scope words the same values at every key that is pressed. */
const known = new WeakMap<Value, string>();

function worded(value: Value, units: UnitPreference, written?: number): string {
  return value.kind === 'one' ? amountWords(value.amount, value.type, units, written) : ownWords(value);
}

/** In its own unit only. */
export function ownWords(value: Value): string {
  const type = typeOf(value);
  return inWords(valueFigure(value), type === undefined ? '' : unitWords(type));
}

export function amountWords(
  amount: Amount,
  type: QuantityType,
  units: UnitPreference = 'as written',
  written?: number,
): string {
  const own = inWords(figureOf(amount, type, written), unitWords(type));
  const other = otherWords(amount, type, units, written);
  return other === undefined ? own : `${own} (${other})`;
}

/** The same in the second unit: "44.4 ± 0.7 kPa"; nothing where there is none. */
export function otherWords(
  amount: Amount,
  type: QuantityType,
  units: UnitPreference = 'as written',
  written?: number,
): string | undefined {
  const unit = secondUnit(type, units);
  if (unit === undefined) return undefined;
  return inWords(figureIn(unit, amount, type, figureOf(amount, type, written)), unit.symbol);
}

export const isAbsent = (member: Amount | Absent): member is Absent => 'kind' in member;

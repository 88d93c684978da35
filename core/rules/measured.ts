import { halfWidth } from '../quantity/amount.ts';
import { formatQuantity } from '../quantity/format.ts';
import type { Amount, QuantityType } from '../quantity/types.ts';
import type { Form } from '../signals/types.ts';
import type { Reading } from '../study/types.ts';

/** One number of a reading: the whole of it, or a member of a map. */
export interface Measured {
  readonly reading: Reading;
  readonly form: Form;
  readonly type: QuantityType;
  readonly si: number;
  readonly halfWidth: number;
  /** `map`, `compression[3]` */
  readonly name: string;
  /** As it is said in a sentence: "101 inHg". */
  readonly written: string;
}

/** The numbers of those readings that were measured on the car and fit a form of their signal. */
export function measuredIn(readings: readonly Reading[]): readonly Measured[] {
  const all: Measured[] = [];
  for (const reading of readings) {
    const { form, value, key } = reading;
    if (form === undefined || reading.from === 'reference' || reading.from === 'header') continue;
    if (value.kind === 'one') all.push(measured(reading, form, value.type, value.amount, key));
    if (value.kind !== 'members') continue;
    for (const [member, amount] of value.members) {
      if ('si' in amount) all.push(measured(reading, form, value.type, amount, `${key}[${member}]`));
    }
  }
  return all;
}

function measured(reading: Reading, form: Form, type: QuantityType, amount: Amount, name: string): Measured {
  return {
    reading,
    form,
    type,
    si: amount.si,
    halfWidth: halfWidth(amount),
    name,
    get written() {
      return formatQuantity(amount.si, type);
    },
  };
}

/** An interval in SI; either end may be open. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** Below or above the interval by more than the reading's own uncertainty and a rounding. */
export function isOutside({ si, halfWidth: width }: Measured, interval: Interval): boolean {
  const slack = width + 1e-9 * Math.max(Math.abs(si), 1e-9);
  return si + slack < interval.low || si - slack > interval.high;
}

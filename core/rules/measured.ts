import { halfWidth } from '../quantity/amount.ts';
import { formatQuantity } from '../quantity/format.ts';
import type { Amount, QuantityType } from '../quantity/types.ts';
import { type FormRanges, type Interval, rangesOf } from '../signals/ranges.ts';
import type { Form } from '../signals/types.ts';
import type { Reading } from '../study/types.ts';
import { physicalLimit } from './physicalLimit.ts';

/** One number of a reading: the whole of it, or a member of a map. */
export interface Measured {
  readonly reading: Reading;
  readonly form: Form;
  readonly type: QuantityType;
  readonly si: number;
  readonly halfWidth: number;
  /** `map`, `compression[3]` */
  readonly name: string;
  readonly ranges: FormRanges;
  /** What it can possibly be, where that is known, and whether it is not. */
  readonly limit: Interval | undefined;
  readonly isImpossible: boolean;
  /** The end of the scale, or the substitute, that it is: what a module shows for a failed circuit. */
  readonly end: FormRanges['failed'][number] | undefined;
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
  const { si } = amount;
  const width = halfWidth(amount);
  const ranges = rangesOf(form);
  const limit = physicalLimit(reading, ranges);
  const { failed } = ranges;
  return {
    reading,
    form,
    type,
    si,
    halfWidth: width,
    name,
    ranges,
    limit,
    isImpossible: limit !== undefined && isOutside(si, width, limit),
    end: failed.length === 0 ? undefined : failed.find((each) => Math.abs(each.si - si) < closeTo(each.si)),
  };
}

const closeTo = (si: number): number => Math.max(Math.abs(si), 1) * 1e-6;

/** As it is said in a sentence: "101 inHg". */
export const writtenAs = ({ si, type }: Measured): string => formatQuantity(si, type);

/** Below or above the interval by more than the reading's own uncertainty and a rounding. */
export function isOutside(si: number, width: number, interval: Interval): boolean {
  const slack = width + 1e-9 * Math.max(Math.abs(si), 1e-9);
  return si + slack < interval.low || si - slack > interval.high;
}

import { halfWidth } from '../quantity/amount.ts';
import { formatQuantity } from '../quantity/format.ts';
import type { Amount, QuantityType } from '../quantity/types.ts';
import type { FormRanges, Interval } from '../signals/ranges.ts';
import type { Form } from '../signals/types.ts';
import type { Reading } from '../study/types.ts';
import { closeTo, type Limits, limitsOf } from './limits.ts';

/** One number of a reading: the whole of it, or a member of a map. */
export interface Measured {
  readonly reading: Reading;
  readonly form: Form;
  readonly type: QuantityType;
  readonly si: number;
  readonly halfWidth: number;
  /** `map`, `compression[3]` */
  readonly name: string;
  readonly limits: Limits;
  /** What is odd about it alone, as bits of `oddities`; 0 for nearly all. */
  readonly odd: number;
  readonly isImpossible: boolean;
  /** The end of the scale, or the substitute, that it is: what a module shows for a failed circuit. */
  readonly end: FormRanges['failed'][number] | undefined;
}

/** What a number alone can be odd in, as bits beside those of `asked.ts`. A vacuum is always taken for unusual: what is usual for it depends on the place. */
export const oddities = { impossible: 1, 'end of scale': 2, 'beyond encoding': 4, unusual: 8 };
export type Oddity = keyof typeof oddities;

/**
 * The numbers of those readings that were measured on the car and fit a form of their signal.
 * Those of a reading that is the very same as before stay the same.
 */
export function measuredIn(
  readings: readonly Reading[],
  before: readonly Measured[] = [],
): readonly Measured[] {
  const all: Measured[] = [];
  const known = byReading(before);
  for (const reading of readings) {
    const old = known?.get(reading);
    if (old !== undefined) {
      for (const each of old) all.push(each);
      continue;
    }
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

function byReading(measured: readonly Measured[]): ReadonlyMap<Reading, readonly Measured[]> | undefined {
  if (measured.length === 0) return undefined;
  const known = new Map<Reading, Measured[]>();
  for (const one of measured) {
    const list = known.get(one.reading);
    if (list === undefined) known.set(one.reading, [one]);
    else list.push(one);
  }
  return known;
}

function measured(reading: Reading, form: Form, type: QuantityType, amount: Amount, name: string): Measured {
  const { si } = amount;
  const width = halfWidth(amount);
  const limits = limitsOf(reading, form);
  let odd = 0;
  let end: Measured['end'];
  if (!(si >= limits.low && si <= limits.high)) {
    const { ranges, possible, usual } = limits;
    end = ranges.failed.find((each) => Math.abs(each.si - si) < closeTo(each.si));
    if (end !== undefined) odd |= oddities['end of scale'];
    if (possible !== undefined && isOutside(si, width, possible)) odd |= oddities.impossible;
    if (ranges.encoding !== undefined && isOutside(si, width, ranges.encoding))
      odd |= oddities['beyond encoding'];
    if (usual !== undefined && (limits.field === 'vacuum' || isOutside(si, width, usual.range)))
      odd |= oddities.unusual;
  }
  return {
    reading,
    form,
    type,
    si,
    halfWidth: width,
    name,
    limits,
    odd,
    isImpossible: (odd & oddities.impossible) !== 0,
    end,
  };
}

/** As it is said in a sentence: "101 inHg". */
export const writtenAs = ({ si, type }: Measured): string => formatQuantity(si, type);

/** Below or above the interval by more than the reading's own uncertainty and a rounding. */
export function isOutside(si: number, width: number, interval: Interval): boolean {
  const slack = width + 1e-9 * Math.max(Math.abs(si), 1e-9);
  return si + slack < interval.low || si - slack > interval.high;
}

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

/** The numbers of those readings that were measured on the car and fit a form of their signal. */
export function measuredIn(readings: readonly Reading[]): readonly Measured[] {
  const all: Measured[] = [];
  for (const reading of readings) {
    const one = measuredOf(reading);
    if (one !== undefined) all.push(one);
    else addMembers(reading, all);
  }
  return all;
}

/** The number of a reading that holds one. */
export function measuredOf(reading: Reading): Measured | undefined {
  const { form, value } = reading;
  if (value.kind !== 'one' || form === undefined || !isOfCar(reading)) return undefined;
  return measured(reading, form, value.type, value.amount, reading.key);
}

/** Adds the numbers of a reading that holds several. */
export function addMembers(reading: Reading, all: Measured[]): void {
  const { form, value, key } = reading;
  if (value.kind !== 'members' || form === undefined || !isOfCar(reading)) return;
  for (const [member, amount] of value.members) {
    if ('si' in amount) all.push(measured(reading, form, value.type, amount, `${key}[${member}]`));
  }
}

const isOfCar = ({ from }: Reading): boolean => from !== 'reference' && from !== 'header';

/** It is made of every number of a case: what few of them need is worked out elsewhere. */
function measured(reading: Reading, form: Form, type: QuantityType, amount: Amount, name: string): Measured {
  const { si } = amount;
  const width = halfWidth(amount);
  const limits = limitsOf(reading, form);
  const isCalm = si >= limits.low && si <= limits.high;
  const end = isCalm ? undefined : endAt(si, limits);
  const odd = isCalm ? 0 : oddIn(si, width, limits) | (end === undefined ? 0 : oddities['end of scale']);
  const isImpossible = (odd & oddities.impossible) !== 0;
  return { reading, form, type, si, halfWidth: width, name, limits, odd, isImpossible, end };
}

function endAt(si: number, { ranges }: Limits): Measured['end'] {
  return ranges.failed.find(({ low, high }) => si > low - closeTo(low) && si < high + closeTo(high));
}

function oddIn(si: number, width: number, { ranges, possible, usual, field }: Limits): number {
  const { encoding } = ranges;
  let odd = 0;
  if (possible !== undefined && isOutside(si, width, possible)) odd |= oddities.impossible;
  if (encoding !== undefined && isOutside(si, width, encoding)) odd |= oddities['beyond encoding'];
  if (usual !== undefined && (field === 'vacuum' || isOutside(si, width, usual.range)))
    odd |= oddities.unusual;
  return odd;
}

/** As it is said in a sentence: "101 inHg". */
export const writtenAs = ({ si, type }: Measured): string => formatQuantity(si, type);

/** Below or above the interval by more than the reading's own uncertainty and a rounding. */
export function isOutside(si: number, width: number, interval: Interval): boolean {
  const slack = width + 1e-9 * Math.max(Math.abs(si), 1e-9);
  return si + slack < interval.low || si - slack > interval.high;
}

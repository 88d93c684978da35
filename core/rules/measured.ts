import { halfWidth } from '../quantity/amount.ts';
import { formatQuantity } from '../quantity/format.ts';
import type { Amount, QuantityType } from '../quantity/types.ts';
import type { FormRanges, Interval } from '../signals/ranges.ts';
import type { Form } from '../signals/types.ts';
import type { Reading } from '../study/types.ts';
import { closeTo, type Limits, limitsOf } from './limits.ts';
import { isBeyond } from './stateLimits.ts';

/**
 * One number of a reading: the whole of it, or a member of a map. It is made of every number of a case,
 * so it holds what it is made of, and works out what few are asked for.
 */
export class Measured {
  readonly reading: Reading;
  readonly type: QuantityType;
  readonly limits: Limits;
  /** What is odd about it alone, as bits of `oddities`; 0 for nearly all. */
  readonly odd: number;
  readonly amount: Amount;
  /** The cylinder or the label of a number that is one of several. */
  readonly member: string | undefined;

  constructor(reading: Reading, form: Form, type: QuantityType, amount: Amount, member?: string) {
    this.reading = reading;
    this.type = type;
    this.limits = limitsOf(reading, form);
    this.odd = oddIn(amount, this.limits);
    this.amount = amount;
    this.member = member;
  }

  get form(): Form {
    return this.limits.form;
  }

  /** The unit of its form: `kPa` of a pressure, `%` of a share. It says what is measured, not how it was written. */
  get unit(): string {
    return this.limits.unit;
  }

  get si(): number {
    return this.amount.si;
  }

  get halfWidth(): number {
    return halfWidth(this.amount);
  }

  /** `map`, `compression[3]` */
  get name(): string {
    const { key } = this.reading;
    return this.member === undefined ? key : `${key}[${this.member}]`;
  }

  get isImpossible(): boolean {
    return (this.odd & oddities.impossible) !== 0;
  }

  /** The end of the scale, or the substitute, that it is: what a module shows for a failed circuit. */
  get end(): FormRanges['failed'][number] | undefined {
    return (this.odd & oddities['end of scale']) === 0 ? undefined : endAt(this.si, this.limits);
  }
}

/** What a number alone can be odd in, as bits beside those of `asked.ts`. A vacuum is always taken for unusual: what is usual for it depends on the place. */
export const oddities = {
  impossible: 1,
  'end of scale': 2,
  'beyond encoding': 4,
  unusual: 8,
  'against its state': 16,
};
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
  return new Measured(reading, form, value.type, value.amount);
}

/** Adds the numbers of a reading that holds several. */
export function addMembers(reading: Reading, all: Measured[]): void {
  const { form, value } = reading;
  if (value.kind !== 'members' || form === undefined || !isOfCar(reading)) return;
  for (const [member, amount] of value.members) {
    if ('si' in amount) all.push(new Measured(reading, form, value.type, amount, member));
  }
}

const isOfCar = ({ from }: Reading): boolean => from !== 'reference' && from !== 'header';

function endAt(si: number, { ranges }: Limits): Measured['end'] {
  return ranges.failed.find(({ low, high }) => si > low - closeTo(low) && si < high + closeTo(high));
}

function oddIn(amount: Amount, limits: Limits): number {
  const { si } = amount;
  if (si >= limits.low && si <= limits.high) return 0;
  const { ranges, possible, usual, ofState, field } = limits;
  const { encoding } = ranges;
  const width = halfWidth(amount);
  let odd = endAt(si, limits) === undefined ? 0 : oddities['end of scale'];
  if (possible !== undefined && isOutside(si, width, possible)) odd |= oddities.impossible;
  if (encoding !== undefined && isOutside(si, width, encoding)) odd |= oddities['beyond encoding'];
  if (usual !== undefined && (field === 'vacuum' || isOutside(si, width, usual.range)))
    odd |= oddities.unusual;
  if (ofState !== undefined && isBeyond(si, width, ofState)) odd |= oddities['against its state'];
  return odd;
}

/** As it is said in a sentence: "101 inHg". */
export const writtenAs = ({ si, type }: Measured): string => formatQuantity(si, type);

/** The number in the form of this unit: air flow as `kg/s` is no volts. */
export function inForm(one: Measured | undefined, unit: string): Measured | undefined {
  return one !== undefined && one.unit === unit ? one : undefined;
}

/** Below or above the interval by more than the reading's own uncertainty and a rounding. */
export function isOutside(si: number, width: number, interval: Interval): boolean {
  const slack = width + 1e-9 * Math.max(Math.abs(si), 1e-9);
  return si + slack < interval.low || si - slack > interval.high;
}

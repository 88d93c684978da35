import { toSi } from '../quantity/convert.ts';
import { formatQuantity } from '../quantity/format.ts';
import { scanQuantity } from '../quantity/scan.ts';
import type { QuantityType } from '../quantity/types.ts';
import type { FunctionRow, Limits } from './functionRow.ts';
import { sayLimits } from './sayLimits.ts';
import type { Value } from './value.ts';

/** What has to be said of a call beside its value. */
export type Caution =
  /** A value lies beyond what the function is made for; `of` is a parameter, or undefined for the result. */
  | {
      readonly kind: 'beyond';
      readonly of: string | undefined;
      readonly got: string;
      readonly limits: string;
      readonly meaning: string;
    }
  /** The case has no barometer, and this one stands in. */
  | { readonly kind: 'standard barometer'; readonly parameter: string; readonly taken: string }
  /** Of what repeats itself, another value fits nearly as well. */
  | { readonly kind: 'fits as well'; readonly got: string; readonly also: string };

/** What lies beyond the limits of a call that are cautions: its arguments, then its result; and what else its row says. */
export function cautionsOf(
  row: FunctionRow,
  args: readonly (Value | undefined)[],
  result: Value,
): readonly Caution[] {
  const { parameters, answers } = row;
  if (row.form === 'whole' && row.cautions !== undefined) return row.cautions(args, result);
  const isCautious =
    answers?.caution !== undefined || parameters.some(({ within }) => within?.caution !== undefined);
  if (!isCautious) return none;
  const found: Caution[] = [];
  for (let at = 0; at < parameters.length; at++) {
    const parameter = parameters[at];
    if (parameter?.within?.caution === undefined) continue;
    const beyond = beyondOf(parameter.name, args[at], parameter.within);
    if (beyond !== undefined) found.push(beyond);
  }
  const beyond = answers?.caution === undefined ? undefined : beyondOf(undefined, result, answers);
  if (beyond !== undefined) found.push(beyond);
  return found;
}

const none: readonly Caution[] = [];

function beyondOf(of: string | undefined, value: Value | undefined, limits: Limits): Caution | undefined {
  const found = value === undefined ? undefined : firstBeyond(value, endsOf(limits));
  if (found === undefined) return undefined;
  const got = formatQuantity(found.si, found.type);
  return { kind: 'beyond', of, got, limits: sayLimits(limits), meaning: limits.caution ?? '' };
}

/** The first of a value's numbers that lies beyond. */
function firstBeyond(
  value: Value,
  { low, high }: Ends,
): { readonly si: number; readonly type: QuantityType } | undefined {
  const isBeyond = (si: number): boolean => si < low || si > high;
  switch (value.kind) {
    case 'one':
      return isBeyond(value.amount.si) ? { si: value.amount.si, type: value.type } : undefined;
    case 'members':
      for (const each of value.members.values())
        if ('si' in each && isBeyond(each.si)) return { si: each.si, type: value.type };
      return undefined;
    case 'series': {
      const si = value.samples.find(isBeyond);
      return si === undefined ? undefined : { si, type: value.type };
    }
    default:
      return undefined;
  }
}

interface Ends {
  readonly low: number;
  readonly high: number;
}

const known = new WeakMap<Limits, Ends>();

/** In SI units. */
function endsOf(limits: Limits): Ends {
  let ends = known.get(limits);
  if (ends === undefined) {
    const { from, to, above, below } = limits;
    ends = {
      low: siOf(from ?? above) ?? Number.NEGATIVE_INFINITY,
      high: siOf(to ?? below) ?? Number.POSITIVE_INFINITY,
    };
    known.set(limits, ends);
  }
  return ends;
}

function siOf(written: string | undefined): number | undefined {
  const quantity = written === undefined ? undefined : scanQuantity(written, 0)?.quantity;
  return quantity === undefined ? undefined : toSi(quantity.value, quantity.unit, quantity.kind);
}

import { divide, exact, linear, subtract } from '../../quantity/amount.ts';
import { plain } from '../../quantity/dimension.ts';
import type { Amount, QuantityType } from '../../quantity/types.ts';
import { percentUnit, plainUnit } from '../../quantity/unit.ts';
import { cannotCompute, worse } from '../absent.ts';
import type { Absent, Value } from '../value.ts';
import { amountsIn } from './numbers.ts';
import type { OfSamples } from './samplesStatistics.ts';

type Arguments = readonly (Value | undefined)[];

/** The type that a function's result is overwritten with by the checker's; only its dimension matters here. */
function typeIn(args: Arguments): QuantityType {
  for (const each of args) {
    if (each?.kind === 'one' || each?.kind === 'members' || each?.kind === 'series') return each.type;
  }
  return plainNumber;
}

const plainNumber: QuantityType = { dimension: plain, kind: 'none', unit: plainUnit };
const percentage: QuantityType = { dimension: plain, kind: 'none', unit: percentUnit };

/** A function of all the numbers in its arguments; of one series alone it is computed over the samples as they stand. */
export function ofAll(
  compute: (amounts: readonly Amount[]) => Amount | Absent,
  ofSamples: OfSamples,
): (args: Arguments) => Value {
  return (args) => {
    const [first] = args;
    const amount =
      first?.kind === 'series' && args.length === 1 ? ofSamples(first) : ofAmounts(args, compute);
    return 'si' in amount ? { kind: 'one', type: typeIn(args), amount } : amount;
  };
}

function ofAmounts(
  args: Arguments,
  compute: (amounts: readonly Amount[]) => Amount | Absent,
): Amount | Absent {
  const amounts = amountsIn(args);
  return Array.isArray(amounts) ? compute(amounts) : amounts;
}

const none: Amount = exact(Number.NaN);

/** The least, the first of equals. */
export function least(amounts: readonly Amount[]): Amount {
  return amounts.reduce((best, each) => (each.si < best.si ? each : best), amounts[0] ?? none);
}

export function greatest(amounts: readonly Amount[]): Amount {
  return amounts.reduce((best, each) => (each.si > best.si ? each : best), amounts[0] ?? none);
}

export function mean(amounts: readonly Amount[]): Amount {
  let sum = 0;
  for (const { si } of amounts) sum += si;
  const share = 1 / amounts.length;
  return linear(
    sum * share,
    amounts.map((each) => [share, each]),
  );
}

/** The middle value; of an even number of values the mean of the two in the middle. */
export function median(amounts: readonly Amount[]): Amount {
  const ordered = [...amounts].sort((a, b) => a.si - b.si);
  const middle = ordered.length / 2;
  const high = ordered[Math.floor(middle)] ?? none;
  return Number.isInteger(middle) ? mean([ordered[middle - 1] ?? none, high]) : high;
}

export function spreadOf(amounts: readonly Amount[]): Amount {
  return subtract(greatest(amounts), least(amounts));
}

/**
 * The experimental standard deviation, with n − 1 (JCGM 100:2008, 4.2.2).
 * At 0, where all values are equal, its slope has no value and no uncertainty is carried.
 */
export function standardDeviation(amounts: readonly Amount[]): Amount | Absent {
  const free = amounts.length - 1;
  if (free < 1) return cannotCompute('a standard deviation needs at least two values');
  // About the first of them, so that equal values have themselves as their mean, to the last bit.
  const zero = amounts[0]?.si ?? 0;
  let sum = 0;
  for (const { si } of amounts) sum += si - zero;
  const middle = zero + sum / amounts.length;
  let squares = 0;
  for (const { si } of amounts) squares += (si - middle) ** 2;
  const deviation = Math.sqrt(squares / free);
  if (deviation === 0) return exact(0);
  return linear(
    deviation,
    amounts.map((each) => [(each.si - middle) / (free * deviation), each]),
  );
}

/** How many values there are; one that was not taken does not count. */
export function count(args: Arguments): Value {
  let counted = 0;
  for (const each of args) {
    if (each?.kind === 'one') counted++;
    else if (each?.kind === 'members')
      for (const member of each.members.values()) counted += 'si' in member ? 1 : 0;
    else if (each?.kind === 'series')
      for (const sample of each.samples) counted += Number.isNaN(sample) ? 0 : 1;
  }
  return { kind: 'one', type: plainNumber, amount: exact(counted) };
}

/** The name of the lowest (−1) or highest (1) member, the first of equals. */
export function extreme(sign: 1 | -1): (args: Arguments) => Value {
  return ([value]) => {
    if (value?.kind !== 'members') return cannotCompute('it has no members');
    let name: string | undefined;
    let best = Number.NEGATIVE_INFINITY;
    let absent: Absent | undefined;
    for (const [each, member] of value.members) {
      if (!('si' in member)) absent = worse(absent, member);
      else if (name === undefined || sign * member.si > best) {
        name = each;
        best = sign * member.si;
      }
    }
    if (absent !== undefined) return absent;
    return name === undefined ? cannotCompute('it has no members') : { kind: 'words', text: name };
  };
}

export function lowestToHighest(args: Arguments): Value {
  const amounts = amountsIn(args);
  if (!Array.isArray(amounts)) return amounts;
  const highest = greatest(amounts);
  if (!(highest.si > 0)) return cannotCompute('the highest is not above 0');
  return { kind: 'one', type: percentage, amount: divide(least(amounts), highest) };
}

import { cannotCompute } from '../../expression/absent.ts';
import type { Absent, Value } from '../../expression/value.ts';
import { sayNumber } from '../sayValue.ts';

/** The number that an argument is, in SI units; where it was left out, the row's substitute. */
export function numberOf(value: Value | undefined, otherwise: number): number {
  if (value === undefined) return otherwise;
  return value.kind === 'one' ? value.amount.si : Number.NaN;
}

/** Why a function of a capture has no answer at a compression ratio of 1 or less. */
export function compressesNothing(name: string, ratio: number): Absent {
  return cannotCompute(`\`${name}\`: a compression ratio of ${sayNumber(ratio)} compresses nothing`);
}

import { limits } from '../casefile/limits.ts';
import { cannotCompute } from './absent.ts';
import type { Value } from './value.ts';

/** Instead of a value that would have to keep apart more sources of uncertainty than there is room for. */
export const tooManySources = cannotCompute(
  'it would have to keep apart too many sources of uncertainty: take fewer members, or leave out the ± of some',
);

/** The entries that a value keeps for its sources of uncertainty, over all its members. */
export function sourcesKept(value: Value): number {
  if (value.kind === 'one') return value.amount.spread.length;
  let count = 0;
  if (value.kind === 'fields') for (const each of value.fields.values()) count += sourcesKept(each);
  if (value.kind !== 'members') return count;
  for (const member of value.members.values()) if ('si' in member) count += member.spread.length;
  return count;
}

/**
 * Whether a result of these operands could keep more than it may, told before any of it is computed. One value beside
 * several members comes into each of them.
 */
export function isTooMany(operands: readonly (Value | undefined)[]): boolean {
  let members = 1;
  for (const each of operands) if (each?.kind === 'members') members = Math.max(members, each.members.size);
  let count = 0;
  for (const each of operands) {
    if (each !== undefined) count += sourcesKept(each) * (each.kind === 'one' ? members : 1);
  }
  return count > limits.sources;
}

/** The same for a series of so many samples. */
export function isTooManySampled(operands: readonly (Value | undefined)[], samples: number): boolean {
  let count = 0;
  for (const each of operands) {
    if (each?.kind === 'one') count += each.amount.spread.length;
    if (each?.kind === 'series') count += each.spread.length;
  }
  return count * samples > limits.sampledSources;
}

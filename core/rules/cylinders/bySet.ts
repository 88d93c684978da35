import { halfWidth } from '../../quantity/amount.ts';
import { formatQuantity } from '../../quantity/format.ts';
import type { Reading, When } from '../../study/types.ts';

/** One cylinder's figure out of a set. */
export interface OfCylinder {
  readonly reading: Reading;
  readonly cylinder: string;
  readonly si: number;
  readonly halfWidth: number;
}

/** The figures of a signal that was read by cylinder at one visit. */
export function byCylinder(sets: readonly Reading[], signal: string, when: When): readonly OfCylinder[] {
  const found: OfCylinder[] = [];
  for (const reading of sets) {
    const { from, value } = reading;
    if (from !== 'readings' || reading.signal?.name !== signal || reading.when !== when) continue;
    if (value.kind !== 'members' || value.by !== 'cylinder') continue;
    for (const [cylinder, amount] of value.members)
      if ('si' in amount) found.push({ reading, cylinder, si: amount.si, halfWidth: halfWidth(amount) });
  }
  return found;
}

/** The greatest of those figures, or with -1 the least; infinitely little, or much, where there is none. */
export function extremeOf(sets: readonly Reading[], signal: string, when: When, sign: 1 | -1): number {
  let extreme = -sign * Number.POSITIVE_INFINITY;
  for (const { from, value, signal: of, when: at } of sets) {
    if (from !== 'readings' || of?.name !== signal || at !== when) continue;
    if (value.kind !== 'members' || value.by !== 'cylinder') continue;
    for (const amount of value.members.values())
      if ('si' in amount && sign * (amount.si - extreme) > 0) extreme = amount.si;
  }
  return extreme;
}

/** The visits at which a signal was read by cylinder, each once. */
export function visitsOf(sets: readonly Reading[], signal: string): readonly When[] {
  const visits: When[] = [];
  for (const { signal: of, when } of sets)
    if (of?.name === signal && !visits.includes(when)) visits.push(when);
  return visits;
}

/** `before.compression[3]` */
export const nameOf = ({ reading, cylinder }: OfCylinder): string => `${reading.fullName}[${cylinder}]`;

/** "178 psi" */
export function writtenOf({ reading: { value }, si }: OfCylinder): string {
  return value.kind === 'members' ? formatQuantity(si, value.type) : '';
}

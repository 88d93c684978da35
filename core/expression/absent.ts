import type { Absent, Truth, Value } from './value.ts';

export function cannotCompute(why: string): Absent {
  return { kind: 'absent', status: 'cannot compute', why };
}

/** Nothing in the case says what the barometer was. */
export const noBarometer: Absent = cannotCompute('there is no certain barometer');

export function notMeasured(why: string): Absent {
  return { kind: 'absent', status: 'not measured', why };
}

/** Of two values that are not there, the one that says more: what cannot be computed before what was not measured. */
export function worse(a: Absent | undefined, b: Absent | undefined): Absent | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return a.status === 'not measured' && b.status === 'cannot compute' ? b : a;
}

/** The first that is not there among several, by the same order. */
export function absentOf(values: readonly (Value | undefined)[]): Absent | undefined {
  let absent: Absent | undefined;
  for (const value of values) if (value?.kind === 'absent') absent = worse(absent, value);
  return absent;
}

/** What a verdict lacks that no comparison of numbers gave. */
export const noNumbers = {
  left: undefined,
  margin: undefined,
  marginUncertainty: undefined,
  marginType: undefined,
  limit: undefined,
  member: undefined,
  why: undefined,
} as const;

/** A statement without a verdict. */
export function undecided({ status, why }: Absent): Truth {
  return { kind: 'truth', ...noNumbers, verdict: status, why };
}

/** Every value of a statement's type as a verdict. */
export function truthOf(value: Value): Truth {
  if (value.kind === 'truth') return value;
  return undecided(value.kind === 'absent' ? value : cannotCompute('it is no statement'));
}

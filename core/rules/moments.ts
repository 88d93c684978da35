import type { CellFacts } from '../study/cellFacts.ts';
import type { Reading, TakenAt, When } from '../study/types.ts';
import { failureOf } from './failedValue.ts';
import { addMembers, type Measured, measuredOf, oddities } from './measured.ts';
import { stateNumber } from './stateNumber.ts';
import { noValues, type Values } from './values.ts';

/**
 * What was read at one engine state: a readings cell, or one column of it.
 * A number that only a failed circuit gives, or that cannot be, is left out: it has a finding of its own,
 * and what it is compared with would be blamed for it.
 */
export interface Moment {
  readonly cell: number;
  readonly when: When;
  readonly state: TakenAt | undefined;
  /** The name of the state's column; undefined where the cell has one state. */
  readonly column: string | undefined;
  readonly values: Values;
  /** Whether fuel control follows its sensor, in the words of the reading. */
  readonly loop: string | undefined;
  /** What moments of the same visit and engine state share, in gear or not; undefined for free words, which are like nothing else. */
  readonly likeness: number | string | undefined;
}

/** What a cell's readings hold for rules: the numbers, and the moments that they were taken at. */
export interface Taken {
  readonly measured: readonly Measured[];
  readonly moments: readonly Moment[];
  /** The readings that hold several numbers, by cylinder or by label. */
  readonly sets: readonly Reading[];
  /** The bits of the rules that ask for one of its signals in its states, and of what is odd about its numbers. */
  readonly asked: number;
}

/**
 * What a cell's facts hold for rules; `askedFor` gives the bits of the rules that ask for a reading.
 * Given what the cell held before, numbers of which nothing changed stay the very same.
 */
export function takenIn({ readings }: CellFacts, askedFor: AskedFor, before?: Taken): Taken {
  if (readings.length === 0) return nothing;
  const known = byReading(before);
  const measured: Measured[] = [];
  const moments: Growing[] = [];
  let sets: Reading[] | undefined;
  let asked = 0;
  for (const reading of readings) {
    const { from, value, key } = reading;
    const moment = from === 'readings' ? momentAt(reading, moments) : undefined;
    if (value.kind === 'one') {
      const one = known?.get(reading) ?? measuredOf(reading);
      if (one === undefined) continue;
      measured.push(one);
      asked |= bitsOf(one, askedFor);
      if (moment !== undefined && one.end === undefined) put(one, moment);
    } else if (value.kind === 'members') {
      sets ??= [];
      sets.push(reading);
      const at = measured.length;
      addMembers(reading, measured);
      for (const one of measured.slice(at)) asked |= bitsOf(one, askedFor);
    } else if (value.kind === 'words' && moment !== undefined && key === 'loop') moment.loop = value.text;
  }
  if ((asked & oddities['end of scale']) !== 0) putAll(measured, moments);
  return { measured, moments, sets: sets ?? nothing.sets, asked };
}

type AskedFor = (reading: Reading) => number;

const nothing: Taken = { measured: [], moments: [], sets: [], asked: 0 };

/** The numbers of readings that hold one. */
function byReading(taken: Taken | undefined): ReadonlyMap<Reading, Measured> | undefined {
  if (taken === undefined) return undefined;
  const known = new Map<Reading, Measured>();
  for (const one of taken.measured) if (one.reading.value.kind === 'one') known.set(one.reading, one);
  return known;
}

function bitsOf({ limits, reading, odd }: Measured, askedFor: AskedFor): number {
  limits.asked ??= askedFor(reading);
  return limits.asked | odd;
}

interface Growing extends Moment {
  readonly values: ReturnType<typeof noValues>;
  loop: string | undefined;
}

function put(one: Measured, { values }: Growing): void {
  const { field } = one.limits;
  if (field !== undefined && !one.isImpossible) values[field] = one;
}

/** Whether the end of a scale says that a circuit failed depends on all that was read beside it. */
function putAll(measured: readonly Measured[], moments: Growing[]): void {
  for (const one of measured) {
    const { reading } = one;
    if (reading.from !== 'readings' || reading.value.kind !== 'one') continue;
    if (one.end === undefined || failureOf(one, measured) === undefined) put(one, momentAt(reading, moments));
  }
}

function momentAt(reading: Reading, moments: Growing[]): Growing {
  const { column } = reading;
  for (const each of moments) if (each.column === column) return each;
  const { cell, when, state } = reading;
  const likeness = likenessOf(when, state);
  const fresh: Growing = { cell, when, state, column, values: noValues(), loop: undefined, likeness };
  moments.push(fresh);
  return fresh;
}

function likenessOf(when: When, state: TakenAt | undefined): Moment['likeness'] {
  if (state?.known === undefined) return undefined;
  const number = stateNumber(state.known) * visits.length + visits.indexOf(when);
  const gear = state.more.size === 0 ? undefined : state.more.get('gear');
  return gear === undefined || gear === '' ? number : `${number} ${gear}`;
}

const visits: readonly When[] = ['before', 'after', 'known good', 'freeze frame'];

/** The name of the trade's engine state, if the moment has one. */
export const stateName = ({ state }: Moment): string | undefined => state?.known?.name;

/** The name by which an expression reads it: `before.idle.map`, `compression[3]`. */
export function fullNameOf({ name, reading }: Measured): string {
  return name === reading.key ? reading.fullName : reading.fullName + name.slice(reading.key.length);
}

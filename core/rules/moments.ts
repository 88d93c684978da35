import type { CellFacts } from '../study/cellFacts.ts';
import type { Reading, TakenAt, When } from '../study/types.ts';
import { failureOf } from './failedValue.ts';
import { type Measured, measuredIn } from './measured.ts';
import { stateNumber } from './stateNumber.ts';
import { noValues, type RuledSignal, type Values } from './values.ts';

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
export function takenIn(
  { readings }: CellFacts,
  askedFor: (reading: Reading) => number,
  before?: Taken,
): Taken {
  if (readings.length === 0) return nothing;
  const measured = measuredIn(readings, before?.measured);
  let asked = 0;
  for (const { limits, reading, odd } of measured) {
    limits.asked ??= askedFor(reading);
    asked |= limits.asked | odd;
  }
  return { measured, moments: momentsOf(readings, measured), sets: setsOf(readings), asked };
}

const nothing: Taken = { measured: [], moments: [], sets: [], asked: 0 };

function setsOf(readings: readonly Reading[]): readonly Reading[] {
  let sets: Reading[] | undefined;
  for (const reading of readings) {
    if (reading.value.kind !== 'members') continue;
    sets ??= [];
    sets.push(reading);
  }
  return sets ?? nothing.sets;
}

interface Growing extends Moment {
  readonly values: ReturnType<typeof noValues>;
  loop: string | undefined;
}

function momentsOf(readings: readonly Reading[], measured: readonly Measured[]): readonly Moment[] {
  const moments: Growing[] = [];
  for (const reading of readings) {
    if (reading.from !== 'readings') continue;
    const moment = momentAt(reading, moments);
    if (reading.value.kind === 'words' && reading.key === 'loop') moment.loop = reading.value.text;
  }
  for (const one of measured) {
    const { from, value } = one.reading;
    const { field } = one.limits;
    if (field === undefined || from !== 'readings' || value.kind !== 'one' || one.isImpossible) continue;
    if (one.end === undefined || failureOf(one, measured) === undefined)
      momentAt(one.reading, moments).values[field] = one;
  }
  return moments;
}

function momentAt({ cell, when, state, column }: Reading, moments: Growing[]): Growing {
  for (const each of moments) if (each.column === column) return each;
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

/** The reading of a signal in the form of this unit: air flow as `kg/s` is no volts. */
export function inForm({ values }: Moment, signal: RuledSignal, unit: string): Measured | undefined {
  const one = values[signal];
  return one?.form.unit === unit ? one : undefined;
}

/** The name of the trade's engine state, if the moment has one. */
export const stateName = ({ state }: Moment): string | undefined => state?.known?.name;

/** The name by which an expression reads it: `before.idle.map`, `compression[3]`. */
export function fullNameOf({ name, reading }: Measured): string {
  return name === reading.key ? reading.fullName : reading.fullName + name.slice(reading.key.length);
}

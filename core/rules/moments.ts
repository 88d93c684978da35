import type { CellFacts } from '../study/cellFacts.ts';
import type { Reading, TakenAt, When } from '../study/types.ts';
import { failureOf } from './failedValue.ts';
import { type Measured, measuredIn } from './measured.ts';

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
  readonly values: ReadonlyMap<string, Measured>;
  readonly words: ReadonlyMap<string, string>;
  /** What moments of the same visit and engine state share, in gear or not; undefined for free words, which are like nothing else. */
  readonly likeness: string | undefined;
}

/** What a cell's readings hold for rules: the numbers, and the moments that they were taken at. */
export interface Taken {
  readonly measured: readonly Measured[];
  readonly moments: readonly Moment[];
  /** The bits of the rules that ask for one of its signals. */
  readonly asked: number;
}

/** What a cell's facts hold for rules; `askedWith` gives the bits of the rules that ask for a signal. */
export function takenIn({ readings }: CellFacts, askedWith: (signal: string) => number): Taken {
  if (readings.length === 0) return nothing;
  const measured = measuredIn(readings);
  let asked = 0;
  for (const { reading } of measured)
    if (reading.signal !== undefined) asked |= askedWith(reading.signal.name);
  return { measured, moments: momentsOf(readings, measured), asked };
}

const nothing: Taken = { measured: [], moments: [], asked: 0 };

interface Growing extends Moment {
  readonly values: Map<string, Measured>;
  words: Map<string, string>;
}

const noWords: Map<string, string> = new Map();

function momentsOf(readings: readonly Reading[], measured: readonly Measured[]): readonly Moment[] {
  const moments: Growing[] = [];
  const at = ({ cell, when, state, column }: Reading): Growing => {
    for (const each of moments) if (each.column === column) return each;
    const likeness = likenessOf(when, state);
    const fresh: Growing = { cell, when, state, column, values: new Map(), words: noWords, likeness };
    moments.push(fresh);
    return fresh;
  };
  for (const reading of readings) {
    if (reading.from !== 'readings') continue;
    const moment = at(reading);
    if (reading.value.kind !== 'words') continue;
    if (moment.words === noWords) moment.words = new Map();
    moment.words.set(reading.key, reading.value.text);
  }
  for (const one of measured) {
    const { from, signal, value } = one.reading;
    if (from !== 'readings' || signal === undefined || value.kind !== 'one' || one.isImpossible) continue;
    if (failureOf(one, measured) === undefined) at(one.reading).values.set(signal.name, one);
  }
  return moments;
}

function likenessOf(when: When, state: TakenAt | undefined): string | undefined {
  return state?.known === undefined
    ? undefined
    : `${when} ${state.known.name} ${state.more.get('gear') ?? ''}`;
}

/** The reading of a signal in the form of this unit: air flow as `kg/s` is no volts. */
export function inForm(moment: Moment, signal: string, unit: string): Measured | undefined {
  const one = moment.values.get(signal);
  return one?.form.unit === unit ? one : undefined;
}

/** The name of the trade's engine state, if the moment has one. */
export const stateName = ({ state }: Moment): string | undefined => state?.known?.name;

/** The name by which an expression reads it: `before.idle.map`, `compression[3]`. */
export function fullNameOf({ name, reading }: Measured): string {
  return reading.fullName + name.slice(reading.key.length);
}

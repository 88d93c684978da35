import type { CellFacts } from '../study/cellFacts.ts';
import type { Reading, TakenAt, When } from '../study/types.ts';
import { failureOf } from './failedValue.ts';
import { isOutside, type Measured, measuredIn } from './measured.ts';
import { physicalLimit } from './physicalLimit.ts';

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
}

/** The moments of a cell; the very same ones while its facts are. */
export function momentsOf(facts: CellFacts): readonly Moment[] {
  const known = made.get(facts);
  if (known !== undefined) return known;
  const moments = readMoments(facts.readings);
  made.set(facts, moments);
  return moments;
}

const made = new WeakMap<CellFacts, readonly Moment[]>();

interface Growing extends Moment {
  readonly values: Map<string, Measured>;
  readonly words: Map<string, string>;
}

function readMoments(readings: readonly Reading[]): readonly Moment[] {
  const taken = readings.filter(({ from }) => from === 'readings');
  if (taken.length === 0) return none;
  const moments = new Map<string, Growing>();
  const measured = measuredIn(taken);
  const at = ({ cell, when, state, column }: Reading): Growing => {
    const found = moments.get(column ?? '');
    if (found !== undefined) return found;
    const fresh: Growing = { cell, when, state, column, values: new Map(), words: new Map() };
    moments.set(column ?? '', fresh);
    return fresh;
  };
  for (const reading of taken) {
    const moment = at(reading);
    if (reading.value.kind === 'words') moment.words.set(reading.key, reading.value.text);
  }
  for (const one of measured) {
    if (one.reading.signal === undefined || one.reading.value.kind !== 'one') continue;
    if (isBelievable(one, measured)) at(one.reading).values.set(one.reading.signal.name, one);
  }
  return [...moments.values()];
}

const none: readonly Moment[] = [];

function isBelievable(one: Measured, all: readonly Measured[]): boolean {
  const limit = physicalLimit(one);
  if (limit !== undefined && isOutside(one, limit)) return false;
  return failureOf(one, all) === undefined;
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

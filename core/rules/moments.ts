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
}

/** What a cell's readings hold for rules: the numbers, and the moments that they were taken at. */
export interface Taken {
  readonly measured: readonly Measured[];
  readonly moments: readonly Moment[];
}

/** What a cell's facts hold for rules. */
export function takenIn({ readings }: CellFacts): Taken {
  if (readings.length === 0) return nothing;
  const measured = measuredIn(readings);
  return { measured, moments: momentsOf(readings, measured) };
}

const nothing: Taken = { measured: [], moments: [] };

interface Growing extends Moment {
  readonly values: Map<string, Measured>;
  readonly words: Map<string, string>;
}

function momentsOf(readings: readonly Reading[], measured: readonly Measured[]): readonly Moment[] {
  const moments: Growing[] = [];
  const at = ({ cell, when, state, column }: Reading): Growing => {
    for (const each of moments) if (each.column === column) return each;
    const fresh: Growing = { cell, when, state, column, values: new Map(), words: new Map() };
    moments.push(fresh);
    return fresh;
  };
  for (const reading of readings) {
    if (reading.from !== 'readings') continue;
    const moment = at(reading);
    if (reading.value.kind === 'words') moment.words.set(reading.key, reading.value.text);
  }
  for (const one of measured) {
    const { from, signal, value } = one.reading;
    if (from !== 'readings' || signal === undefined || value.kind !== 'one' || one.isImpossible) continue;
    if (failureOf(one, measured) === undefined) at(one.reading).values.set(signal.name, one);
  }
  return moments;
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

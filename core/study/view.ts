import type { Environment } from '../expression/scope.ts';
import type { Absent, Members, Value } from '../expression/value.ts';
import type { Amount } from '../quantity/types.ts';
import type { Named } from './names.ts';
import type { Surroundings } from './surroundings.ts';
import type { Reading } from './types.ts';

/** An expression's names by the ids that its typed form reads them by, and what it is evaluated with. */
export interface View {
  /** The cell that the expression stands in. */
  readonly cell: number;
  readonly named: ReadonlyMap<string, Named>;
  readonly environment: Environment;
}

export function viewOf(
  cell: number,
  all: readonly Named[],
  around: Surroundings,
  barometer: Environment['barometer'],
): View {
  const named = new Map<string, Named>();
  for (const each of all) named.set(idOf(each), each);
  const environment: Environment = {
    value: (id) => {
      const one = named.get(id);
      return one === undefined ? nothing : valueNamed(one, around);
    },
    header: (name) => around.header.values.get(name)?.value,
    barometer,
    caution: () => {},
  };
  return { cell, named, environment };
}

/** Stands for a name in a typed expression; equal ids are the same value. */
export function idOf(named: Named): string {
  switch (named.kind) {
    case 'reading':
      return named.reading.fullName;
    case 'states':
      return named.fullName;
    case 'definition':
      return named.definition.id;
    case 'not measured':
      return `not measured: ${named.fullName}`;
    case 'problem':
      return '';
  }
}

export function valueNamed(named: Named, around: Surroundings): Value {
  switch (named.kind) {
    case 'reading':
      return named.reading.value;
    case 'states':
      return byState(named.readings) ?? notOneType;
    case 'definition':
      return around.done.get(named.definition.id)?.value ?? inCircle;
    case 'not measured':
      return notMeasured;
    case 'problem':
      return nothing;
  }
}

/** A signal's readings at several states, as one value with a member a state. */
function byState(readings: ReadonlyMap<string, Reading>): Members | undefined {
  const members = new Map<string, Amount | Absent>();
  let type: Members['type'] | undefined;
  for (const [state, { value, type: read }] of readings) {
    if (value.kind === 'one') {
      type ??= value.type;
      if (value.type.dimension !== type.dimension || value.type.kind !== type.kind) return undefined;
      members.set(state, value.amount);
    } else if (value.kind === 'absent') members.set(state, value);
    else return undefined;
    if (read.kind === 'one') type ??= read.quantity;
  }
  return type === undefined ? undefined : { kind: 'members', by: 'state', type, members };
}

const nothing: Absent = { kind: 'absent', status: 'cannot compute', why: 'it is not known' };
const notMeasured: Absent = { kind: 'absent', status: 'not measured', why: 'not measured' };
const inCircle: Absent = { kind: 'absent', status: 'cannot compute', why: 'it needs itself' };
const notOneType: Absent = {
  kind: 'absent',
  status: 'cannot compute',
  why: 'its states do not hold one sort of value',
};

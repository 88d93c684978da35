import type { FunctionRow } from '../expression/functionRow.ts';
import type { Resolution, Scope } from '../expression/scope.ts';
import type { Type } from '../expression/type.ts';
import type { Absent, Members, Value } from '../expression/value.ts';
import type { Amount } from '../quantity/types.ts';
import { isKeyOnManifold } from './barometer.ts';
import { functionNames, functionRow } from './functions.ts';
import { lookUp } from './names.ts';
import { typeOfSignal } from './readValue.ts';
import type { Standpoint, Surroundings } from './surroundings.ts';
import type { Reading } from './types.ts';

/** What names mean where an expression stands; `values` fills with those that were asked for. */
export function scopeFor(
  around: Surroundings,
  at: Standpoint,
): { readonly scope: Scope; readonly values: ReadonlyMap<string, Value> } {
  const values = new Map<string, Value>();
  const scope: Scope = {
    place: at.name,
    resolve: (path, spans) => {
      const named = lookUp(around.names, at.cell, path, spans);
      switch (named.kind) {
        case 'problem':
          return named;
        case 'reading': {
          const { fullName, value, type } = named.reading;
          values.set(fullName, value);
          return found(fullName, type, named.used, roleOf(named.reading));
        }
        case 'states': {
          const value = byState(named.readings);
          const type: Type =
            value === undefined
              ? { kind: 'unknown' }
              : { kind: 'members', by: 'state', quantity: value.type };
          values.set(named.fullName, value ?? notOneType);
          const roles = new Set([...named.readings.values()].map(roleOf));
          return found(named.fullName, type, named.used, roles.size === 1 ? [...roles][0] : undefined);
        }
        case 'definition': {
          const { id } = named.definition;
          const evaluated = around.done.get(id);
          values.set(id, evaluated?.value ?? inCircle);
          return found(id, evaluated?.typed.type ?? { kind: 'unknown' }, named.used, undefined);
        }
        case 'not measured': {
          const id = `not measured: ${named.fullName}`;
          values.set(id, notMeasured);
          return found(id, typeOfSignal(named.signal), named.used, undefined);
        }
      }
    },
    functionRow: (name): FunctionRow | undefined => functionRow(name),
    functionNames: () => functionNames(),
    headerType: (name) => around.header.values.get(name)?.type,
  };
  return { scope, values };
}

function found(id: string, type: Type, used: number, role: 'barometer' | 'manifold' | undefined): Resolution {
  return { kind: 'value', id, type, used, role };
}

/** What sums with a vacuum or a gauge pressure need to know of a pressure. */
export function roleOf(reading: Reading): 'barometer' | 'manifold' | undefined {
  const name = reading.signal?.name;
  if (name === 'baro' || isKeyOnManifold(reading)) return 'barometer';
  return name === 'map' ? 'manifold' : undefined;
}

/** A signal's readings at several states, as one value with a member a state. */
function byState(readings: ReadonlyMap<string, Reading>): Members | undefined {
  const members = new Map<string, Amount | Absent>();
  let type: Members['type'] | undefined;
  for (const [state, { value, type: read }] of readings) {
    if (value.kind === 'one') {
      type ??= value.type;
      members.set(state, value.amount);
    } else if (value.kind === 'absent') members.set(state, value);
    else return undefined;
    if (read.kind === 'one') type ??= read.quantity;
  }
  return type === undefined ? undefined : { kind: 'members', by: 'state', type, members };
}

const notMeasured: Absent = { kind: 'absent', status: 'not measured', why: 'not measured' };
const inCircle: Absent = { kind: 'absent', status: 'cannot compute', why: 'it needs itself' };
const notOneType: Absent = {
  kind: 'absent',
  status: 'cannot compute',
  why: 'its states do not hold one sort of value',
};

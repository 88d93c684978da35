import type { FunctionRow } from '../expression/functionRow.ts';
import type { Resolution, Scope } from '../expression/scope.ts';
import type { Type } from '../expression/type.ts';
import { plainUnit } from '../quantity/unit.ts';
import { isKeyOnManifold } from './barometer.ts';
import { functionNames, functionRow } from './functions.ts';
import { lookUp } from './names.ts';
import { typeOfSignal } from './readValue.ts';
import type { Evaluated, Standpoint, Surroundings } from './surroundings.ts';
import type { Reading } from './types.ts';
import { idOf, valueNamed } from './view.ts';

/** What names mean where an expression stands. */
export function scopeFor(around: Surroundings, at: Standpoint): Scope {
  return {
    place: at.name,
    resolve: (path, spans): Resolution => {
      const named = lookUp(around.names, at.cell, path, spans);
      if (named.kind === 'problem') return named;
      const found = (type: Type, role?: Role, number?: number): Resolution => ({
        kind: 'value',
        id: idOf(named),
        type,
        used: named.used,
        role,
        ...(number === undefined ? {} : { number }),
      });
      switch (named.kind) {
        case 'reading':
          return found(named.reading.type, roleOf(named.reading));
        case 'states': {
          const value = valueNamed(named, around);
          if (value.kind !== 'members') return found({ kind: 'unknown' });
          const roles = new Set([...named.readings.values()].map(roleOf));
          const type: Type = { kind: 'members', by: 'state', quantity: value.type };
          return found(type, roles.size === 1 ? [...roles][0] : undefined);
        }
        case 'definition': {
          const evaluated = around.done.get(named.definition.id);
          const number = evaluated === undefined ? undefined : constantOf(evaluated);
          return found(evaluated?.typed.type ?? { kind: 'unknown' }, undefined, number);
        }
        case 'not measured':
          return found(typeOfSignal(named.signal));
      }
    },
    functionRow: (name): FunctionRow | undefined => functionRow(name),
    functionNames: () => functionNames(),
    headerType: (name) => around.header.values.get(name)?.type,
  };
}

/** The number of a computed name that rests on no reading; undefined for what has a unit. */
function constantOf({ value, from }: Evaluated): number | undefined {
  if (value.kind !== 'one' || value.type.unit !== plainUnit || from.length > 0) return undefined;
  return value.amount.si;
}

export type Role = 'barometer' | 'manifold' | undefined;

/** What sums with a vacuum or a gauge pressure need to know of a pressure. */
export function roleOf(reading: Reading): Role {
  const name = reading.signal?.name;
  if (name === 'baro' || isKeyOnManifold(reading)) return 'barometer';
  return name === 'map' ? 'manifold' : undefined;
}

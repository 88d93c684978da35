import { exact } from '../quantity/amount.ts';
import { toSi } from '../quantity/convert.ts';
import { scanQuantity } from '../quantity/scan.ts';
import type { Parameter } from './functionRow.ts';
import { wantedType } from './sayType.ts';
import type { Value } from './value.ts';

const known = new WeakMap<Parameter, Value>();

/** What a parameter has when it is left out, as its row writes it: "0 %", "0.45 V", "E0". */
export function substitute(parameter: Parameter, otherwise: string): Value {
  let value = known.get(parameter);
  if (value === undefined) {
    value = read(parameter, otherwise);
    known.set(parameter, value);
  }
  return value;
}

function read(parameter: Parameter, otherwise: string): Value {
  if (parameter.takes.what === 'text') return { kind: 'words', text: otherwise };
  const quantity = scanQuantity(otherwise, 0)?.quantity;
  if (quantity === undefined) {
    return { kind: 'absent', status: 'cannot compute', why: `\`${parameter.name}\` is not given` };
  }
  const { unit } = quantity;
  const kind = wantedType(parameter.takes)?.kind ?? quantity.kind;
  return {
    kind: 'one',
    type: { dimension: unit.dimension, kind, unit },
    amount: exact(toSi(quantity.value, unit, kind)),
  };
}

import type { Amount, QuantityType } from '../../quantity/types.ts';
import { cannotCompute, worse } from '../absent.ts';
import type { ComputedType, Parameter } from '../functionRow.ts';
import { sampleAt } from '../series.ts';
import type { Type } from '../type.ts';
import type { Absent, Value } from '../value.ts';

/** Every number in the arguments, in the order as written; samples that are missing are left out. */
export function amountsIn(args: readonly (Value | undefined)[]): Amount[] | Absent {
  const amounts: Amount[] = [];
  let absent: Absent | undefined;
  for (const value of args) {
    switch (value?.kind) {
      case 'one':
        amounts.push(value.amount);
        break;
      case 'members':
        for (const member of value.members.values()) {
          if ('si' in member) amounts.push(member);
          else absent = worse(absent, member);
        }
        break;
      case 'series':
        for (let i = 0; i < value.samples.length; i++) {
          if (!Number.isNaN(value.samples[i] ?? Number.NaN)) amounts.push(sampleAt(value, i));
        }
        break;
      case 'absent':
        absent = worse(absent, value);
        break;
      default:
        break;
    }
  }
  if (absent !== undefined) return absent;
  return amounts.length > 0 ? amounts : cannotCompute('there are no values in it');
}

/** The type of the values in it, when they are numbers of any shape. */
export function quantityIn(type: Type | undefined): QuantityType | undefined {
  return type?.kind === 'one' || type?.kind === 'members' || type?.kind === 'series'
    ? type.quantity
    : undefined;
}

/** The type of several values of one sort: its unit is that of the first that has one. */
export function commonType(types: readonly (Type | undefined)[]): QuantityType | undefined {
  const quantities = types.map(quantityIn).filter((each) => each !== undefined);
  return quantities.find(({ unit }) => unit.symbol !== '1') ?? quantities[0];
}

export function one(quantity: QuantityType | undefined): ComputedType {
  if (quantity === undefined) return { wrong: 0, takes: 'numbers' };
  return { type: { kind: 'one', quantity } };
}

/** A parameter that takes values of one sort: several arguments, a map, samples. */
export const manyValues: Parameter = {
  name: 'x',
  takes: { what: 'many' },
  meaning: 'values of one sort, or one value by cylinder, label or state, or samples',
  repeats: true,
};

export const oneMap: Parameter = {
  name: 'x',
  takes: { what: 'many' },
  meaning: 'one value by cylinder, label or state',
};

import type { Absent, Curve, Members, Series, Value } from '../expression/value.ts';
import { describe } from '../quantity/operand.ts';
import type { QuantityType } from '../quantity/types.ts';
import type { Item } from './chart.ts';
import { unitWords } from './measure.ts';

/** What sort of value this is, for a sentence. */
export function sayValue(value: Value): string {
  switch (value.kind) {
    case 'one':
      return `a single value in ${unitOrNumber(value.type)}`;
    case 'members':
      return `values by ${value.by}`;
    case 'series':
      return `samples in ${unitOrNumber(value.type)}`;
    case 'curve':
      return 'a transfer curve';
    case 'range':
      return 'a limit';
    case 'fields':
      return 'several values at once (pick one by its name)';
    case 'words':
      return 'a word';
    case 'truth':
      return 'a statement that holds or fails';
    case 'absent':
      return value.status === 'not measured' ? 'not measured' : 'not computed';
  }
}

export const unitOrNumber = (type: QuantityType): string => {
  const words = unitWords(type);
  return words === '' ? 'plain numbers' : `${words} (${describe({ ...type })})`;
};

export interface SeriesItem extends Item {
  readonly value: Series;
}

export const isSeries = (item: Item): item is SeriesItem => item.value.kind === 'series';

export const isCurve = (item: Item): item is Item & { readonly value: Curve } => item.value.kind === 'curve';

export const isByCylinder = (item: Item): item is Item & { readonly value: Members } =>
  item.value.kind === 'members' && item.value.by === 'cylinder';

export const isAbsent = (item: Item): item is Item & { readonly value: Absent } =>
  item.value.kind === 'absent';

import { plain } from '../quantity/dimension.ts';
import { describe } from '../quantity/operand.ts';
import type { QuantityType } from '../quantity/types.ts';
import { percentUnit, unitOf } from '../quantity/unit.ts';
import type { Takes } from './functionRow.ts';
import type { Type } from './type.ts';

/** A type in words, for a sentence: "a number", "gauge pressure by cylinder", "samples of voltage". */
export function sayType(type: Type): string {
  switch (type.kind) {
    case 'one':
      return sayQuantity(type.quantity);
    case 'members':
      return `${sayQuantity(type.quantity)} by ${type.by}`;
    case 'fields':
      return `several values by name (${type.fields.map(({ name }) => name).join(', ')})`;
    case 'series':
      return `samples of ${sayQuantity(type.quantity)}`;
    case 'curve':
      return `a curve from ${sayQuantity(type.x)} to ${sayQuantity(type.y)}`;
    case 'range':
      return `a range of ${sayQuantity(type.quantity)}`;
    case 'words':
      return 'a word or text';
    case 'truth':
      return 'a statement that holds or fails';
    case 'unknown':
      return 'something that is already reported';
  }
}

function sayQuantity(quantity: QuantityType): string {
  if (quantity.dimension !== plain) return describe({ ...quantity });
  return quantity.unit === percentUnit ? 'a percentage' : 'a plain number';
}

/** What a parameter takes, for a sentence. */
export function sayTakes(takes: Takes): string {
  switch (takes.what) {
    case 'quantity':
      return sayWanted(takes);
    case 'series':
      return takes.unit === undefined ? 'samples of a capture' : `samples of ${sayWanted(takes)}`;
    case 'any':
      return 'a quantity';
    case 'text':
      return 'a text in quotes';
    case 'curve':
      return 'a curve from a `reference`';
    case 'many':
      return 'values of one sort, or one value by cylinder, label or state, or samples';
    case 'truth':
      return 'a statement that holds or fails';
  }
}

function sayWanted(takes: Takes): string {
  const wanted = wantedType(takes);
  if (wanted === undefined) return 'a quantity';
  if (wanted.dimension === plain) return sayQuantity(wanted);
  return `${describe(wanted)} (such as \`${wanted.unit.symbol}\`)`;
}

/** The quantity that a parameter wants; its kind is open where the row leaves it to the argument. */
export function wantedType(takes: Takes): QuantityType | undefined {
  const unit = takes.unit === undefined ? undefined : unitOf(takes.unit);
  if (unit === undefined) return undefined;
  const natural =
    unit.kind ??
    (unit.dimension.name === 'pressure' ? 'open' : unit.dimension.name === 'temperature' ? 'point' : 'none');
  return { dimension: unit.dimension, kind: takes.kind ?? natural, unit };
}

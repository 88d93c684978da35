import { plain } from '../quantity/dimension.ts';
import type { Kind, QuantityType } from '../quantity/types.ts';
import { unitOf } from '../quantity/unit.ts';
import type { Span } from '../text/span.ts';
import { type Checking, operandOf, paired } from './checking.ts';
import type { FunctionRow, Parameter, ResultField, Saying } from './functionRow.ts';
import { wantedType } from './sayType.ts';
import type { Call } from './tree.ts';
import type { Field, Type } from './type.ts';
import type { Typed } from './typed.ts';

/** An argument at its parameter. */
interface Placed {
  readonly parameter: Parameter;
  readonly typed: Typed;
}

/** What the call gives: by the row, with the shape of its arguments where the formula goes member by member; or the argument that does not fit. */
export function resultType(
  checking: Checking,
  row: FunctionRow,
  placed: readonly (Placed | undefined)[],
  tree: Call,
): Type | { readonly wrong: number; readonly takes: string } | undefined {
  const { result } = row;
  switch (result.kind) {
    case 'text':
      return { kind: 'words' };
    case 'fields':
      return fieldsType(row, result.fields, placed);
    case 'fixed': {
      const unit = unitOf(result.unit);
      if (unit === undefined) return undefined;
      const wanted = wantedType({ what: 'quantity', unit: result.unit });
      const kind: Kind = result.quantityKind ?? wanted?.kind ?? 'none';
      return shaped(checking, row, placed, { dimension: unit.dimension, kind, unit }, tree.span);
    }
    case 'like': {
      const at = row.parameters.findIndex(({ name }) => name === result.parameter);
      const like = placed[at];
      const operand =
        like === undefined ? headerQuantity(checking, row.parameters[at]) : operandOf(like.typed);
      if (operand === undefined) return undefined;
      const kind = result.quantityKind ?? operand.kind;
      return shaped(
        checking,
        row,
        placed,
        { dimension: operand.dimension, kind, unit: firstUnit(placed, operand) },
        tree.span,
      );
    }
    case 'computed': {
      const computed = result.typeOf(placed.map((each) => each?.typed.type));
      if (computed.wrong !== undefined) return computed;
      if (computed.type.kind !== 'words' || row.says === undefined) return computed.type;
      return wordsOf(row.says);
    }
  }
}

function fieldsType(
  row: FunctionRow,
  fields: readonly ResultField[],
  placed: readonly (Placed | undefined)[],
): Type {
  const said = fields.find(({ unit }) => unit === 'text');
  return {
    kind: 'fields',
    fields: fields.map((field) => {
      const at = row.parameters.findIndex(({ name }) => name === field.like);
      const like = placed[at];
      const typed = fieldOf(field, like === undefined ? undefined : operandOf(like.typed));
      return field === said && row.says !== undefined ? { ...typed, type: wordsOf(row.says) } : typed;
    }),
  };
}

function wordsOf(says: readonly Saying[]): { readonly kind: 'words'; readonly among: readonly string[] } {
  return { kind: 'words', among: says.map(({ words }) => words) };
}

function fieldOf(
  { name, meaning, unit: symbol, quantityKind, by }: ResultField,
  like: QuantityType | undefined,
): Field {
  const quantity = wantedType({ what: 'quantity', unit: symbol });
  if (quantity === undefined) return { name, meaning, type: { kind: 'words' } };
  const unit = like?.dimension === quantity.dimension ? like.unit : quantity.unit;
  const own: QuantityType = { ...quantity, kind: quantityKind ?? quantity.kind, unit };
  const type: Field['type'] =
    by === undefined ? { kind: 'one', quantity: own } : { kind: 'members', by, quantity: own };
  return { name, meaning, type };
}

/** The type of what a parameter takes from the header when the call lacks it. */
function headerQuantity({ scope }: Checking, parameter: Parameter | undefined): QuantityType | undefined {
  const type = parameter?.header === undefined ? undefined : scope.headerType(parameter.header);
  return type?.kind === 'one' ? type.quantity : undefined;
}

/** Of several plain values, the unit is that of the first that has one. */
function firstUnit(placed: readonly (Placed | undefined)[], like: QuantityType): QuantityType['unit'] {
  if (like.unit.symbol !== '1') return like.unit;
  for (const each of placed) {
    const operand = each?.parameter.repeats === true ? operandOf(each.typed) : undefined;
    if (operand?.dimension === plain && operand.unit.symbol !== '1') return operand.unit;
  }
  return like.unit;
}

/** A formula of single numbers goes member by member and sample by sample; a whole function gives one value. */
function shaped(
  checking: Checking,
  row: FunctionRow,
  placed: readonly (Placed | undefined)[],
  quantity: QuantityType,
  span: Span,
): Type | undefined {
  let type: Type = { kind: 'one', quantity };
  if (row.form !== 'scalar' && row.form !== 'conversion') return type;
  for (const each of placed) {
    if (each === undefined || each.typed.type.kind === 'curve') continue;
    const joined: Type | undefined = paired(checking, type, each.typed.type, quantity, span);
    if (joined === undefined) return undefined;
    type = joined;
  }
  return type;
}

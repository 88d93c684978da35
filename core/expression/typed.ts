import type { Operand } from '../quantity/kinds.ts';
import type { Quantity, QuantityType } from '../quantity/types.ts';
import type { Span } from '../text/span.ts';
import type { FunctionRow, Parameter } from './functionRow.ts';
import type { Expression, Logic, Relation } from './tree.ts';
import type { Type } from './type.ts';
import type { Value } from './value.ts';

/** An expression whose types are settled: what evaluation walks and what hover shows. */
export interface TypedExpression {
  readonly tree: Expression;
  readonly type: Type;
  readonly root: Typed;
}

export type Typed =
  | Broken
  | Constant
  | Literal
  | Read
  | Taken
  | Entry
  | FieldOf
  | Apply
  | Convert
  | Negative
  | Sum
  | Power
  | CutSeries
  | PickSamples
  | Compare
  | Between
  | Within
  | InRange
  | SameWord
  | Opposite
  | Both
  | Choice;

/** The nodes that compare numbers. */
export type Comparing = Compare | Between | Within | InRange;

interface Base {
  readonly type: Type;
  readonly span: Span;
}

/** Already reported as wrong; it cannot be computed. */
export interface Broken extends Base {
  readonly kind: 'broken';
}

/** A word or a truth as written. */
export interface Constant extends Base {
  readonly kind: 'constant';
  readonly value: Value;
}

/** A quantity as written, taken as the kind in its type: where none is written, its place decides. */
export interface Literal extends Base {
  readonly kind: 'literal';
  readonly written: Quantity;
  /** What the rules of kinds need to know about it. */
  readonly operand: Operand;
  /** Names its ± among the sources of the case. */
  readonly place: string | undefined;
}

export interface Read extends Base {
  readonly kind: 'read';
  readonly id: string;
  readonly operand: Operand | undefined;
}

/** A pressure whose kind was open, taken as the kind that its place asks for. */
export interface Taken extends Base {
  readonly kind: 'taken';
  readonly of: Typed;
}

/** `x[3]`, `x["label"]`, `x.state` */
export interface Entry extends Base {
  readonly kind: 'entry';
  readonly of: Typed;
  readonly index: Typed;
}

/** `events.evo`: one of several values that a result has by name. */
export interface FieldOf extends Base {
  readonly kind: 'field';
  readonly of: Typed;
  readonly name: string;
}

/** Where a parameter's value comes from: the call, the case's header, its barometer, the row's own substitute, nowhere. */
export type Supply =
  | { readonly from: 'call'; readonly value: Typed }
  | { readonly from: 'header'; readonly name: string }
  | {
      readonly from: 'barometer';
      readonly otherwise: Value;
      /** The number of the header that makes a better substitute. */
      readonly by: Parameter['otherwiseBy'] | undefined;
    }
  | { readonly from: 'row'; readonly value: Value }
  | { readonly from: 'nowhere' };

export interface Apply extends Base {
  readonly kind: 'apply';
  readonly row: FunctionRow;
  /** In the order of the row's parameters; the last may repeat. */
  readonly supplies: readonly Supply[];
}

/** `absolute(x)`, `gauge(x)`, `vacuum(x)`: through the barometer. */
export interface Convert extends Base {
  readonly kind: 'convert';
  readonly of: Typed;
  readonly to: 'absolute' | 'gauge' | 'vacuum';
}

export interface Negative extends Base {
  readonly kind: 'negative';
  readonly of: Typed;
}

/** A sum, difference, product or quotient of numbers whose types go together. */
export interface Sum extends Base {
  readonly kind: 'sum';
  readonly operator: '+' | '-' | '*' | '/';
  readonly quantity: QuantityType;
  readonly left: Typed;
  readonly right: Typed;
}

export interface Power extends Base {
  readonly kind: 'power';
  readonly quantity: QuantityType;
  readonly of: Typed;
  readonly exponent: number;
}

export interface CutSeries extends Base {
  readonly kind: 'cut';
  readonly of: Typed;
  readonly start: Typed;
  readonly end: Typed;
}

export interface PickSamples extends Base {
  readonly kind: 'pick';
  readonly of: Typed;
  readonly condition: Typed;
}

export interface Compare extends Base {
  readonly kind: 'compare';
  readonly relation: Relation;
  readonly left: Typed;
  readonly right: Typed;
}

export interface Between extends Base {
  readonly kind: 'between';
  readonly negated: boolean;
  readonly of: Typed;
  readonly low: Typed;
  readonly high: Typed;
}

export interface Within extends Base {
  readonly kind: 'within';
  readonly negated: boolean;
  /** The tolerance is a share of the right side. */
  readonly relative: boolean;
  readonly left: Typed;
  readonly tolerance: Typed;
  readonly right: Typed;
}

/** `x in spec`: a reference's range, either end of which may be open. */
export interface InRange extends Base {
  readonly kind: 'in range';
  readonly negated: boolean;
  readonly of: Typed;
  readonly range: Typed;
}

export interface SameWord extends Base {
  readonly kind: 'same word';
  readonly negated: boolean;
  readonly left: Typed;
  readonly right: Typed;
}

export interface Opposite extends Base {
  readonly kind: 'opposite';
  readonly of: Typed;
}

export interface Both extends Base {
  readonly kind: 'both';
  readonly operator: 'and' | 'or';
  readonly left: Typed;
  readonly right: Typed;
  /** The halves as written, for telling which of them decided. */
  readonly tree: Logic;
}

export interface Choice extends Base {
  readonly kind: 'choice';
  readonly condition: Typed;
  readonly yes: Typed;
  readonly no: Typed;
}

/** A parameter's place in a row: the last one serves all further arguments when it repeats. */
export function parameterAt(row: FunctionRow, at: number): Parameter | undefined {
  const last = row.parameters[row.parameters.length - 1];
  return row.parameters[at] ?? (last?.repeats === true ? last : undefined);
}

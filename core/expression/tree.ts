import type { Quantity } from '../quantity/types.ts';
import type { Span } from '../text/span.ts';

/** An expression as written, with holes for what is missing. Spans count in the expression's decoded text. */
export type Expression =
  | Hole
  | QuantityLiteral
  | TextLiteral
  | TruthLiteral
  | NameReference
  | Member
  | Index
  | Call
  | Sign
  | Arithmetic
  | Cut
  | Where
  | Comparison
  | Is
  | Between
  | Within
  | In
  | Not
  | Logic
  | Conditional;

export type Relation = '<' | '<=' | '>' | '>=';

/** What is so where a relation is not. */
export const denial: Readonly<Record<Relation, Relation>> = { '<': '>=', '<=': '>', '>': '<=', '>=': '<' };

interface At {
  readonly span: Span;
}

/** Where something should stand and does not. */
export interface Hole extends At {
  readonly kind: 'hole';
}
export interface QuantityLiteral extends At {
  readonly kind: 'quantity';
  readonly quantity: Quantity;
}
export interface TextLiteral extends At {
  readonly kind: 'text';
  readonly text: string;
}
/** `true`, `false`, and a test's outcomes `yes`, `no`, `unclear`. */
export interface TruthLiteral extends At {
  readonly kind: 'truth';
  readonly word: 'true' | 'false' | 'yes' | 'no' | 'unclear';
}
export interface NameReference extends At {
  readonly kind: 'name';
  readonly name: string;
}
/** `of.name` */
export interface Member extends At {
  readonly kind: 'member';
  readonly of: Expression;
  readonly name: string;
  readonly nameSpan: Span;
}
/** `of[3]`, `of["label"]` */
export interface Index extends At {
  readonly kind: 'index';
  readonly of: Expression;
  readonly index: Expression;
}
export interface Argument {
  readonly name: string | undefined;
  readonly nameSpan: Span | undefined;
  readonly value: Expression;
}
export interface Call extends At {
  readonly kind: 'call';
  readonly name: string;
  readonly nameSpan: Span;
  readonly arguments: readonly Argument[];
}
export interface Sign extends At {
  readonly kind: 'sign';
  readonly sign: '+' | '-';
  readonly of: Expression;
}
export interface Arithmetic extends At {
  readonly kind: 'arithmetic';
  readonly operator: '+' | '-' | '*' | '/' | '^';
  readonly left: Expression;
  readonly right: Expression;
}
/** `of from start to end` */
export interface Cut extends At {
  readonly kind: 'cut';
  readonly of: Expression;
  readonly start: Expression;
  readonly end: Expression;
}
/** `of where (condition)` */
export interface Where extends At {
  readonly kind: 'where';
  readonly of: Expression;
  readonly condition: Expression;
}
export interface Comparison extends At {
  readonly kind: 'comparison';
  readonly relation: Relation;
  readonly left: Expression;
  readonly right: Expression;
}
export interface Is extends At {
  readonly kind: 'is';
  readonly negated: boolean;
  readonly left: Expression;
  readonly right: Expression;
}
export interface Between extends At {
  readonly kind: 'between';
  readonly negated: boolean;
  readonly of: Expression;
  readonly low: Expression;
  readonly high: Expression;
}
/** `left within tolerance of right` */
export interface Within extends At {
  readonly kind: 'within';
  readonly negated: boolean;
  readonly left: Expression;
  readonly tolerance: Expression;
  readonly right: Expression;
}
/** `of in range` (a reference's range) or `of in low .. high` */
export interface In extends At {
  readonly kind: 'in';
  readonly negated: boolean;
  readonly of: Expression;
  readonly low: Expression;
  readonly high: Expression | undefined;
}
export interface Not extends At {
  readonly kind: 'not';
  readonly of: Expression;
}
export interface Logic extends At {
  readonly kind: 'logic';
  readonly operator: 'and' | 'or';
  /**
   * Written as `500 < rpm < 900`, so that the middle belongs to both sides. It is told while reading,
   * or once the middle's type is known, where its numbers lack units.
   */
  readonly chained?: 'told' | 'to be told';
  readonly left: Expression;
  readonly right: Expression;
}
export interface Conditional extends At {
  readonly kind: 'conditional';
  readonly condition: Expression;
  readonly yes: Expression;
  readonly no: Expression;
}

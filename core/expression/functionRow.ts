import type { Kind } from '../quantity/types.ts';
import type { Caution } from './cautions.ts';
import type { Type } from './type.ts';
import type { Value } from './value.ts';

/**
 * A function of the expression language is a row: what a reader, the editor, the checker and the tests need to know.
 * Formulas live in `engine/` and `waveform/` as plain functions of SI numbers; rows hand them over.
 */
export type FunctionRow = ScalarFunction | WholeFunction | ConversionFunction;

export type Family =
  | 'values'
  | 'series'
  | 'oxygen'
  | 'air'
  | 'fuel'
  | 'sensors'
  | 'mechanical'
  | 'electrical';

interface Documented {
  readonly name: string;
  readonly family: Family;
  /** One sentence: what it gives. */
  readonly summary: string;
  readonly parameters: readonly Parameter[];
  readonly result: Result;
  /** The formula as text, further definitions on lines of their own: "U = I · R". Words where words say it better. */
  readonly formula: string;
  /** The symbols in it that are no parameter's name, in the order of the formula. */
  readonly where?: readonly FormulaSymbol[];
  /** Between which ends its result can be relied on. */
  readonly answers?: Limits;
  /** What is to be known of where it holds, beside the limits of its parameters and its result. Empty when nothing is. */
  readonly range: string;
  /** When it cannot be computed, a sentence each. */
  readonly errors: readonly string[];
  /** It counts two turns of the crank for a cycle: it has no answer for an engine whose header says other than four strokes. */
  readonly fourStroke?: true;
  /** Where the formula comes from; a rule of the trade says "common practice". */
  readonly source: string;
  /** Recomputed by a test: the expression and its result as printed in a case. */
  readonly example: Example;
  /** For a function that answers in words: everything that it can say; of several fields in the first that holds a text. */
  readonly says?: readonly Saying[];
}

/** What a symbol of a formula stands for: a parameter by its name, or a meaning with its unit ("" where it has none). */
export type FormulaSymbol =
  | readonly [symbol: string, parameter: string]
  | readonly [symbol: string, meaning: string, unit: string];

export interface Example {
  readonly expression: string;
  readonly result: string;
  /** What a reference named `spec` holds for it, as it is written there: "maf_curve: [[0.4 V, 2 g/s], [1.1 V, 9 g/s]]". */
  readonly given?: string;
}

/** An answer in words, as `is` compares it, and what it usually means: cautious, since a pattern is no proof. */
export interface Saying {
  readonly words: string;
  readonly meaning: string;
}

/** What a parameter takes. A unit decides the dimension: "kPa" takes any pressure. */
export interface Takes {
  /** "quantity" of the unit's dimension; "number" (plain or percent, `unit` says which); "any" quantity at all. */
  readonly what: 'quantity' | 'any' | 'text' | 'curve' | 'series' | 'many' | 'truth';
  /** For quantities: the unit that fixes the dimension ("1" plain, "%" percent). */
  readonly unit?: string;
  readonly kind?: Exclude<Kind, 'open'>;
}

export interface Parameter {
  readonly name: string;
  readonly takes: Takes;
  /** One clause for signature help: "engine speed". */
  readonly meaning: string;
  /** Taken from the case's header when not given: "engine.displacement". */
  readonly header?: string;
  /** Left out, it is the barometer of what the call is about, as conversions find it. */
  readonly barometer?: true;
  /** Used when neither given nor in the header nor found: as it would be written ("0 %", "0.45 V", "E0"). */
  readonly otherwise?: string;
  /** A better substitute where the header has this number: both in SI; undefined where there is none for it. */
  readonly otherwiseBy?: { readonly header: string; readonly of: (si: number) => number | undefined };
  /** Beyond these it is not computed, or only with a caution. */
  readonly within?: Limits;
  /** May be left out without a substitute; the function then receives undefined. */
  readonly optional?: boolean;
  /** The last parameter may repeat: min(a, b, c). */
  readonly repeats?: boolean;
}

/** The ends of what a value may be, each as it would be written ("350 °C"). A test holds that they are kept. */
export interface Limits {
  readonly from?: string;
  readonly to?: string;
  /** Ends that the value itself may not reach. */
  readonly above?: string;
  readonly below?: string;
  /** What to make of a value beyond them, a sentence: it is computed all the same. Without it there is no answer. */
  readonly caution?: string;
}

/** What comes out: fixed, or that of the first argument, or decided from the arguments' types. */
export type Result =
  | { readonly kind: 'fixed'; readonly unit: string; readonly quantityKind?: Exclude<Kind, 'open'> }
  | { readonly kind: 'like'; readonly parameter: string; readonly quantityKind?: Exclude<Kind, 'open'> }
  | { readonly kind: 'text' }
  /** Several values of different sorts, each read as `name(…).field`. */
  | { readonly kind: 'fields'; readonly fields: readonly ResultField[] }
  | {
      readonly kind: 'computed';
      readonly says: string;
      /** The result's type from those of the arguments (undefined where one is left out), in the parameters' order. */
      readonly typeOf: (types: readonly (Type | undefined)[]) => ComputedType;
    };

/** One of the values of a result that has several, each with a name. */
export interface ResultField {
  readonly name: string;
  /** One clause: "exhaust valve opens". */
  readonly meaning: string;
  /** Its unit ("1" plain, "%" percent), or "text". */
  readonly unit: string;
  readonly quantityKind?: Exclude<Kind, 'open'>;
  /** Shown in the unit of this parameter's argument, where that is of the same dimension. */
  readonly like?: string;
  /** It has a value for each cylinder. */
  readonly by?: 'cylinder';
}

/** A result's type, or the argument (from 0) that does not fit and what it should be. */
export type ComputedType =
  | { readonly type: Type; readonly wrong?: never }
  | { readonly wrong: number; readonly takes: string };

/** A number in SI units (percent as its hundredth: 8 % is 0.08), a text, a curve in SI units, or nothing (optional, not given). */
export type Plain = number | string | PlainCurve | undefined;

export interface PlainCurve {
  /** Ascending. */
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** Why a formula has no answer for these arguments: a sentence in the trade's words. */
export interface NoAnswer {
  readonly noAnswer: string;
}

/**
 * A formula of single numbers. The evaluator converts to SI, takes what is left out from the header,
 * applies it member by member to maps and sample by sample to series,
 * and carries uncertainty through by numeric derivatives.
 */
export interface ScalarFunction extends Documented {
  readonly result: Result;
  readonly form: 'scalar';
  readonly compute: (args: readonly Plain[]) => number | NoAnswer;
}

/** A function of whole maps, series or lists: min, mean, lowest, percentile. */
export interface WholeFunction extends Documented {
  readonly result: Result;
  readonly form: 'whole';
  readonly evaluate: (args: readonly (Value | undefined)[]) => Value;
  /** What has to be said of a call besides, where its limits do not say it. */
  readonly cautions?: (args: readonly (Value | undefined)[], result: Value) => readonly Caution[];
}

/** A pressure counted from another zero: computed with the barometer of the place. */
export interface ConversionFunction extends Documented {
  readonly form: 'conversion';
  readonly to: 'absolute' | 'gauge' | 'vacuum';
}

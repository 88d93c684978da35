import type { Amount, QuantityType } from '../quantity/types.ts';

/** What evaluation gives. Nothing throws: a value that is not there says why. */
export type Value = One | Members | Fields | Series | Curve | Range | Words | Truth | Absent;

export interface One {
  readonly kind: 'one';
  readonly type: QuantityType;
  readonly amount: Amount;
}

/** A map: by cylinder ("1"), by label, or by engine state. Members may be absent. Order as written. */
export interface Members {
  readonly kind: 'members';
  readonly by: 'cylinder' | 'label' | 'state';
  readonly type: QuantityType;
  readonly members: ReadonlyMap<string, Amount | Absent>;
}

/** Several values of different sorts, each with its own name, in the order that its function declares. */
export interface Fields {
  readonly kind: 'fields';
  readonly fields: ReadonlyMap<string, Exclude<Value, Fields>>;
}

/** Samples over time (seconds); missing samples are NaN. `capture` names where it came from. */
export interface Series {
  readonly kind: 'series';
  readonly type: QuantityType;
  readonly capture: string;
  readonly time: Float64Array;
  readonly samples: Float64Array;
  /** Sources common to all samples: signed half-width contribution in SI, one number or one a sample. */
  readonly spread: readonly { readonly source: string; readonly by: number | Float64Array }[];
}

/** A transfer curve, x ascending, in SI. */
export interface Curve {
  readonly kind: 'curve';
  readonly xType: QuantityType;
  readonly yType: QuantityType;
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** A reference's limits: either end may be open. */
export interface Range {
  readonly kind: 'range';
  readonly type: QuantityType;
  readonly low: Amount | undefined;
  readonly high: Amount | undefined;
}

export interface Words {
  readonly kind: 'words';
  readonly text: string;
}

export type Verdict = 'holds' | 'fails' | 'too close to call' | 'not measured' | 'cannot compute';

/** A decided statement with what decided it. */
export interface Truth {
  readonly kind: 'truth';
  readonly verdict: Verdict;
  /** The left side of the deciding comparison; absent for and, or, is. */
  readonly left: { readonly type: QuantityType; readonly amount: Amount } | undefined;
  /** The distance to the limit (positive inside), in SI of `marginType`, with its half-width. */
  readonly margin: number | undefined;
  readonly marginUncertainty: number | undefined;
  readonly marginType: QuantityType | undefined;
  /** The limit as the author would write it: "-10 .. 10 %", "0.5 inHg of 29.6 inHg". */
  readonly limit: string | undefined;
  /** The cylinder, label, state or time that decided, where there were several. */
  readonly member: string | undefined;
  /** Why there is no verdict. */
  readonly why: string | undefined;
}

export interface Absent {
  readonly kind: 'absent';
  readonly status: 'not measured' | 'cannot compute';
  readonly why: string;
  /** Words that it may be within the readings' uncertainty, where it is one of several. */
  readonly mayBe?: readonly string[];
}

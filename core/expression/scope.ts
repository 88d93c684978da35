import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Span } from '../text/span.ts';
import type { Caution } from './cautions.ts';
import type { FunctionRow } from './functionRow.ts';
import type { Type } from './type.ts';
import type { Apply, Convert } from './typed.ts';
import type { Absent, One, Value } from './value.ts';

/** What names mean where an expression stands. The study implements it. */
export interface Scope {
  /** Tells this expression from all others of the case: a ± written in it is a source of its own. */
  readonly place?: string;
  /** The longest part of a dotted path that names a value; `used` counts the segments taken, the rest are members of the value. */
  readonly resolve: (path: readonly string[], spans: readonly Span[]) => Resolution;
  readonly functionRow: (name: string) => FunctionRow | undefined;
  readonly functionNames: () => readonly string[];
  /** The type of a header value ("engine.displacement"), undefined when the header does not give it. */
  readonly headerType: (name: string) => Type | undefined;
}

export type Resolution =
  | {
      readonly kind: 'value';
      /** Stands for the value in `Environment.value`; equal ids are the same value. */
      readonly id: string;
      readonly type: Type;
      readonly used: number;
      /** A barometer or a manifold pressure: sums of them with gauge or vacuum need no warning. */
      readonly role: 'barometer' | 'manifold' | undefined;
      /** The number that it always is: a computed name of plain numbers only. Beside a percentage it counts as written. */
      readonly number?: number;
    }
  | { readonly kind: 'problem'; readonly diagnostic: Diagnostic };

/** What takes the barometer of its place. */
export type NeedsBarometer = Convert | Apply;

/** Where values come from when a typed expression is evaluated. */
export interface Environment {
  readonly value: (id: string) => Value;
  /** What the header supplies the function with that lacks an argument. */
  readonly header: (name: string, call: Apply) => Value | undefined;
  /** The barometer of what is converted or computed, or of one of its states; or why there is none. */
  readonly barometer: (node: NeedsBarometer, state: string | undefined) => One | Absent;
  /** Takes what has to be said of a call that was computed all the same. */
  readonly caution: (call: Apply, caution: Caution) => void;
}

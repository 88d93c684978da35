import type { QuantityType } from '../quantity/types.ts';

/** What an expression will give, known before anything is computed. */
export type Type =
  | { readonly kind: 'one'; readonly quantity: QuantityType }
  | {
      readonly kind: 'members';
      readonly by: 'cylinder' | 'label' | 'state';
      readonly quantity: QuantityType;
    }
  /** Several values of different sorts, each with its own name: `events.evo`, `events.exhaust_plateau`. */
  | { readonly kind: 'fields'; readonly fields: readonly Field[] }
  | { readonly kind: 'series'; readonly quantity: QuantityType; readonly capture: string }
  | { readonly kind: 'curve'; readonly x: QuantityType; readonly y: QuantityType }
  | { readonly kind: 'range'; readonly quantity: QuantityType }
  /** A word or a text: `loop`, a test's outcome, a lowest cylinder's name. */
  | {
      readonly kind: 'words';
      /** All that it can be, where that is known. */
      readonly among?: readonly string[];
    }
  | { readonly kind: 'truth' }
  /** Something already reported as wrong: it is not complained about again. */
  | { readonly kind: 'unknown' };

/** One of the values that a result has by name. */
export interface Field {
  readonly name: string;
  /** One clause: "exhaust valve opens". */
  readonly meaning: string;
  readonly type: Exclude<Type, { readonly kind: 'fields' }>;
}

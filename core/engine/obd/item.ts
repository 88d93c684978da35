import type { Kind } from '../../quantity/types.ts';

/** One thing that an answer says. Its bytes are those from `from` to `to` of the tape that it was read from. */
export interface Item {
  readonly meaning: string;
  /** The signal that it is a reading of; undefined where it is none. */
  readonly signal: string | undefined;
  /** Its name within a signal that has several. */
  readonly member: string | undefined;
  readonly value: ItemValue;
  readonly from: number;
  readonly to: number;
}

export type ItemValue =
  /** `step` is the smallest difference that the encoding shows; 0 for what is counted. */
  | {
      readonly is: 'number';
      readonly value: number;
      readonly unit: string;
      readonly kind: Kind;
      readonly step: number;
    }
  | { readonly is: 'words'; readonly text: string }
  | { readonly is: 'absent'; readonly why: 'not supported' | 'no reading' };

import type { Cell } from '../casefile/cell.ts';
import type { Barometers } from './barometer.ts';
import type { Done } from './done.ts';
import type { DefinitionOrder } from './evaluateCase.ts';
import type { Header } from './header.ts';
import type { Names } from './names.ts';
import type { Outcome } from './outcome.ts';
import type { Readers } from './readers.ts';
import type { Parsed } from './source.ts';
import type { Reading, Study } from './types.ts';

/** What a study keeps for the next one of the same case: each part with what it was made from. */
export interface Memo {
  /** The header with the cell that it was read from, and what other cells see of it, as it is written. */
  readonly header: { readonly cell: Cell | undefined; readonly basis: string; readonly header: Header };
  /** Every name of the case, and what conversions take as the barometer: what an editor looks names up in. */
  readonly names: Names;
  readonly barometers: Barometers;
  /** The cells' readings by their full names. */
  readonly reading: (fullName: string) => Reading | undefined;
  readonly parsed: Parsed;
  readonly order: DefinitionOrder;
  readonly bareNames: ReadonlySet<string>;
  /** What computed names came to, by their ids. */
  readonly done: Done;
  /** What they keep for the sources of their uncertainty; with more than the case has room for, some were refused. */
  readonly kept: number;
  /** What each cell came to. */
  readonly outcomes: readonly Outcome[];
  readonly readers: Readers;
  /** Their findings, before any rule has looked at the case. */
  readonly cellFindings: Study['cellFindings'];
  /** How many expressions were computed anew. */
  readonly fresh: number;
}

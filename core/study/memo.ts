import type { Cell } from '../casefile/cell.ts';
import type { Expression } from '../expression/tree.ts';
import type { Barometers } from './barometer.ts';
import type { CellFacts } from './cellFacts.ts';
import type { Header } from './header.ts';
import type { Names } from './names.ts';
import type { Parsed } from './source.ts';
import type { Evaluated } from './surroundings.ts';
import type { Reading } from './types.ts';

/** What a study keeps for the next one of the same case: each part with what it was made from. */
export interface Memo {
  readonly header: { readonly cell: Cell | undefined; readonly header: Header };
  readonly facts: ReadonlyMap<Cell, CellFacts>;
  readonly readings: ReadonlyMap<string, Reading>;
  /** Every name of the case, and what conversions take as the barometer: what an editor looks names up in. */
  readonly names: Names;
  readonly barometers: Barometers;
  readonly parsed: Parsed;
  readonly evaluated: ReadonlyMap<Expression, Evaluated>;
  /** How many expressions were computed anew. */
  readonly fresh: number;
}

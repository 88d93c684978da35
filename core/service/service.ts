import type { Study } from '../study/types.ts';
import type { TextEdit } from '../text/edits.ts';
import type { Span } from '../text/span.ts';
import { type CellResult, cellResult } from './cellResult.ts';
import { type ChartAt, chartAt } from './chartAt.ts';
import { completions } from './completion.ts';
import { definitions, references } from './definitions.ts';
import { fixes } from './fixes.ts';
import { folds } from './folds.ts';
import { format } from './format.ts';
import { hover } from './hover.ts';
import { inlayHints } from './inlayHints.ts';
import { links } from './links.ts';
import { renamable, rename } from './rename.ts';
import { selections } from './selections.ts';
import { signature } from './signature.ts';
import { symbols } from './symbols.ts';
import { tokens } from './tokens.ts';
import type {
  CellSymbol,
  CodeFix,
  Completions,
  Definitions,
  Fold,
  Hover,
  InlayHint,
  Link,
  Reference,
  Refusal,
  Renamable,
  Renaming,
  Signature,
  Token,
  UnitPreference,
} from './types.ts';

/**
 * What an editor asks of a case. Every answer is a pure function of a study that is up to date with the text;
 * cells are indices into `study.file.cells`, offsets count UTF-16 units in the cell's text (`raw.text`).
 * All of it works on half-typed text; a cell index that is not there gives the empty answer.
 */
export interface Service {
  readonly hover: (study: Study, cell: number, offset: number, units?: UnitPreference) => Hover | undefined;
  /** The chart that belongs to what stands at the offset: one that is asked for, or the trace of a channel. */
  readonly chart: (study: Study, cell: number, offset: number) => ChartAt | undefined;
  readonly completions: (study: Study, cell: number, offset: number) => Completions;
  readonly signature: (study: Study, cell: number, offset: number) => Signature | undefined;

  readonly definitions: (study: Study, cell: number, offset: number) => Definitions | undefined;
  /** All places of the name at the offset, the definition's own with them, in the order of the file. */
  readonly references: (study: Study, cell: number, offset: number) => readonly Reference[];
  /** Whether and what can be renamed; undefined where no name stands. */
  readonly renamable: (study: Study, cell: number, offset: number) => Renamable | Refusal | undefined;
  readonly rename: (study: Study, cell: number, offset: number, newName: string) => Renaming | Refusal;

  /** The cell itself with what it defines; one root a cell, none for an empty cell. */
  readonly symbols: (study: Study, cell: number) => readonly CellSymbol[];
  readonly folds: (study: Study, cell: number) => readonly Fold[];
  readonly tokens: (study: Study, cell: number) => readonly Token[];
  /** Hints whose offset lies in the span, or all of the cell. */
  readonly inlayHints: (
    study: Study,
    cell: number,
    within?: Span,
    units?: UnitPreference,
  ) => readonly InlayHint[];
  /** From the smallest around the offset to the whole cell, each containing the one before. */
  readonly selections: (study: Study, cell: number, offset: number) => readonly Span[];
  /** Files beside the case that the cell names. */
  readonly links: (study: Study, cell: number) => readonly Link[];
  /** Aligns values and table columns; changes nothing that is read. */
  readonly format: (study: Study, cell: number) => readonly TextEdit[];
  /** What may be changed where the span touches: fixes of diagnostics first, then rewrites. */
  readonly fixes: (study: Study, cell: number, span: Span) => readonly CodeFix[];

  /** What stands under the cell as its output. */
  readonly result: (study: Study, cell: number, units?: UnitPreference) => CellResult;
}

export const service: Service = {
  hover,
  chart: chartAt,
  completions,
  signature,
  definitions,
  references,
  renamable,
  rename,
  symbols,
  folds,
  tokens,
  inlayHints,
  selections,
  links,
  format,
  fixes,
  result: cellResult,
};

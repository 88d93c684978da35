import type { ReadCell } from '../casefile/readCase.ts';
import type { Code, Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Header } from '../study/header.ts';
import type { Finding, Study } from '../study/types.ts';
import type { Measured } from './measured.ts';

/**
 * A check that always runs. Its page (what, why, wrong, right) and its words stand in the catalogue of diagnostics
 * under its code; the file holds what it looks at.
 */
export type Rule = CaseRule | CellRule;

/** Compares what stands in different cells. */
export interface CaseRule {
  readonly code: Code;
  readonly check: (study: Study) => readonly Finding[];
}

/** Looks at one cell at a time: asked again only when the cell or the header changes. */
export interface CellRule {
  readonly code: Code;
  readonly checkCell: (cell: RuledCell) => readonly Diagnostic[];
}

export interface RuledCell {
  readonly read: ReadCell;
  readonly header: Header;
  /** The numbers that were measured on the car. */
  readonly measured: readonly Measured[];
}

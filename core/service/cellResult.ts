import type { Severity } from '../diagnostics/row.ts';
import type {
  Caution,
  FindingLine,
  Paragraph,
  Sign,
  SuspectLine,
  Table,
  VerdictLine,
} from '../report/blocks.ts';

/**
 * A cell's results as plain JSON (mime type application/vnd.diag.result+json): what the report shows of the cell
 * beyond its own text, in the report's own words, with a Markdown alternative.
 */
export interface CellResult {
  readonly version: 1;
  /** The cell's kind, or "unread". */
  readonly kind: string;
  readonly title: string;
  /** In order, as they are to be shown. Empty: the cell has no output (a note, a header in order). */
  readonly blocks: readonly ResultBlock[];
  /** All blocks as Markdown; empty when there are none. */
  readonly markdown: string;
  /** The status bar's line; undefined for a cell that decides nothing and in which nothing is wrong. */
  readonly status: CellStatus | undefined;
}

/** Blocks of the report; the line and column of a finding count in the cell's own text, from 1. */
export type ResultBlock = Caution | Table | VerdictLine | SuspectLine | Paragraph | FindingLine;

export interface CellStatus {
  /** "3 of 4 hold, 1 fails", "2 errors" */
  readonly text: string;
  /** The worst of the verdicts, said with a sign. */
  readonly sign: Sign;
  /** The whole in a sentence, for a tooltip and for those who hear it. */
  readonly says: string;
  readonly severity: Severity | undefined;
  /** The first thing that fails or is wrong, as a place in the cell: where "show me" goes. */
  readonly first: { readonly start: number; readonly end: number } | undefined;
}

import type { TextNode } from '../../casefile/tree.ts';
import type { Diagnostic } from '../../diagnostics/diagnostic.ts';
import type { Quantity, QuantityType } from '../../quantity/types.ts';
import type { Span } from '../../text/span.ts';

/** A column that is read: its numbers × `factor` + `offset` are its samples in SI units. */
export interface Column {
  readonly at: number;
  /** What its numbers are, before any scale. */
  readonly raw: QuantityType;
  readonly factor: number;
  readonly offset: number;
  /** Clock times: seconds since the first of them. */
  readonly isClock: boolean;
}

/** What was read of the columns, in their order, the time first. */
export interface SampledColumns {
  readonly columns: readonly Float64Array[];
  /** The half-widths that samples state themselves, in SI: by column, 0 where one states none. */
  readonly widths: readonly (Float64Array | undefined)[];
  /** The first row whose time is earlier than that of the row before. */
  readonly back: Back | undefined;
}

export interface Back {
  /** As it is written, and where: "row 3", "line 17". */
  readonly time: string;
  readonly place: string;
  readonly span: Span;
}

/** Sampled columns, wherever they stand: written out in the cell, or in a file beside the case. */
export interface Samples {
  readonly headings: readonly string[];
  /** Where a finding about a column is shown. */
  readonly placeOf: (at: number) => TextNode;
  /** The unit that the column's heading or the row of units gives, as one of it. */
  readonly unitIn: (at: number) => Quantity | undefined;
  /** The column's first sample, which may carry the unit itself. */
  readonly firstValue: (at: number) => Quantity | undefined;
  readonly isClock: (at: number) => boolean;
  /** Not where its first rows hold nothing but words. */
  readonly holdsNumbers: (at: number) => boolean;
  /** A column that runs upward from row to row, and so may be the time. */
  readonly rises: (at: number) => boolean;
  /** Reads the time and the channels, in that order; what cannot be read is reported. */
  readonly read: (columns: readonly Column[], found: Diagnostic[]) => SampledColumns;
}

import type { TextNode } from '../../casefile/tree.ts';
import type { Diagnostic } from '../../diagnostics/diagnostic.ts';
import type { Quantity, QuantityType } from '../../quantity/types.ts';
import type { ClockForm } from '../../recording/clock.ts';
import type { Span } from '../../text/span.ts';

/** A column that is read: its numbers × `factor` + `offset` are its samples in SI units. */
export interface Column {
  readonly at: number;
  /** What its numbers are, before any scale. */
  readonly raw: QuantityType;
  readonly factor: number;
  readonly offset: number;
  /** How clock times are read: as seconds since the first of them. */
  readonly clock: ClockForm | undefined;
  /** Numbers that count from long ago are kept since the first of them. */
  readonly fromFirst: boolean;
}

/** A time and the channels that were taken by it. */
export interface Group {
  readonly time: Column;
  readonly channels: readonly Column[];
}

/** What was read of a group's columns. */
export interface SampledColumns {
  readonly time: Float64Array;
  /** In the order of the group's channels. */
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

/** A column that holds neither numbers nor a clock: nothing of it can be a channel or its time. */
export const isOfWords = (samples: Samples, at: number): boolean =>
  !samples.holdsNumbers(at) && samples.clock(at, undefined) === undefined;

/** Sampled columns, wherever they stand: written out in the cell, or in a file beside the case. */
export interface Samples {
  /** None stands twice. */
  readonly headings: readonly string[];
  /** The same as they are written, without what tells them apart. */
  readonly written: readonly string[];
  /** Where a finding about a column is shown. */
  readonly placeOf: (at: number) => TextNode;
  /** The unit that the column's heading or the row of units gives, as one of it. */
  readonly unitIn: (at: number) => Quantity | undefined;
  /** The column's first sample, which may carry the unit itself. */
  readonly firstValue: (at: number) => Quantity | undefined;
  /** The column's first sample as a plain number. */
  readonly firstNumber: (at: number) => number | undefined;
  /** How the column's clock is read; undefined where it is none. `said` tells what two groups of digits are. */
  readonly clock: (at: number, said: ClockForm['two'] | undefined) => ClockForm | 'two readings' | undefined;
  /** The column's first rows, as they are written. */
  readonly texts: (at: number) => readonly string[];
  /** Not where its first rows hold nothing but words or clock times. */
  readonly holdsNumbers: (at: number) => boolean;
  /** A column that runs upward from row to row, and so may be a time. */
  readonly rises: (at: number) => boolean;
  /** Reads each time with its channels; what cannot be read is reported. */
  readonly read: (groups: readonly Group[], found: Diagnostic[]) => readonly SampledColumns[];
}

import type { Encoding } from './encoding.ts';
import type { Delimiter } from './fields.ts';
import type { WhyNoFile } from './files.ts';
import type { Decimal } from './numbers.ts';

/** What an author says about how a file is written; what is not said is recognised. */
export interface Format {
  readonly delimiter: Delimiter | undefined;
  readonly decimal: Decimal | undefined;
  /** Rows above the samples that belong to the heading: names, and perhaps units. */
  readonly headingRows: number | undefined;
  /** Lines before the heading. */
  readonly skip: number | undefined;
}

export const noFormat: Format = {
  delimiter: undefined,
  decimal: undefined,
  headingRows: undefined,
  skip: undefined,
};

/** How a file is written: what its columns are, and where its samples start. */
export interface Layout {
  readonly encoding: Encoding | 'Windows-1252';
  readonly delimiter: Delimiter;
  readonly decimal: Decimal;
  /** One for each column, none twice: `O2 #1` and `O2 #2` where it stands twice, `column 1` where there is none. */
  readonly headings: readonly string[];
  /** The same as they stand in the file. */
  readonly written: readonly string[];
  /** What the row of units says for each column, if there is such a row. */
  readonly units: readonly string[] | undefined;
  readonly headingRows: number;
  /** Lines before the heading, and the first line with samples, counted from 1. */
  readonly skipped: number;
  readonly firstLine: number;
  /** There are quotes among the first rows: a field may go over several lines. */
  readonly hasQuotes: boolean;
  /** The first rows as they are written. */
  readonly sample: readonly (readonly string[])[];
}

/** Why a file has no layout, or more than one. */
export type Unclear =
  /** The host could not read it. */
  | { readonly is: 'lost'; readonly why: WhyNoFile }
  | { readonly is: 'empty' }
  /** `what`: what it looks like. The line of text that the byte stands in, counted from 1. */
  | {
      readonly is: 'binary';
      readonly offset: number;
      readonly line: number;
      readonly what: Other | undefined;
    }
  | { readonly is: 'no samples'; readonly first: string; readonly what: Other | undefined }
  | { readonly is: 'two readings'; readonly readings: readonly Layout[]; readonly line: string }
  /** Commas part more columns than the heading names: perhaps they are the decimal marks of whole columns. */
  | {
      readonly is: 'more columns than names';
      readonly line: string;
      readonly reading: Layout;
      readonly names: number;
    };

/** What a file is that holds no delimited text, as far as its first bytes show it. */
export type Other = 'a workbook or an archive' | 'a page of HTML or XML' | 'JSON' | 'text in UTF-32';

import type { ChartSpec } from '../chart/spec.ts';
import type { Severity } from '../diagnostics/row.ts';
import type { Element } from './markup/markup.ts';

/** What a page is made of, whatever it is written as: HTML and Markdown say the same. */
export interface CasePage {
  readonly title: string;
  /** One line under the title and in the contents: the vehicle, whether it is solved, how the checks came out. */
  readonly summary: readonly string[];
  readonly sections: readonly Section[];
  /** The answers to the case's questions, in order; they stand at its end. */
  readonly answers: readonly Answer[];
  /** Behind them what a teaching case tells only then: cause and repair, and the cells that its author kept back. */
  readonly after: readonly Section[];
}

/** One cell. */
export interface Section {
  /** The cell's number in the file, from 1. */
  readonly number: number;
  readonly title: string;
  /** In the margin: what the cell is and where it was taken: "Readings", "warm idle", "before". */
  readonly margin: readonly string[];
  /** The name that expressions use for the cell: `before`. */
  readonly as: string | undefined;
  /** Whom it is for, in words, when it is not for everyone. */
  readonly audience: string | undefined;
  /** True for a line that only points to the end of the page, where the cell itself stands. */
  readonly keptBack: boolean;
  readonly blocks: readonly Block[];
}

export type Block =
  | Paragraph
  | Prose
  | Facts
  | Bullets
  | Table
  | VerdictLine
  | Picture
  | Caution
  | SuspectLine
  | FindingLine
  | Source
  | ChartBlock;

/** A run of text: plain, or a name or an expression as it stands in the case, or stressed. */
export type Run = string | { readonly code: string } | { readonly strong: string };
export type Runs = readonly Run[];

export interface Paragraph {
  readonly kind: 'paragraph';
  /** Set before the text in small capitals: "Because", "If it fails". */
  readonly lead?: string;
  readonly runs: Runs;
}

/** The author's Markdown. */
export interface Prose {
  readonly kind: 'prose';
  readonly lead?: string;
  readonly markdown: string;
}

export interface Facts {
  readonly kind: 'facts';
  readonly rows: readonly { readonly name: string; readonly runs: Runs }[];
}

export interface Bullets {
  readonly kind: 'bullets';
  readonly lead?: string;
  readonly style: 'bullet' | 'letter';
  readonly items: readonly Runs[];
}

/** A number split for alignment: "13.1", its half-width "0.2", or words where there is no number. */
export interface Figure {
  readonly number: string | undefined;
  readonly plusMinus: string | undefined;
  readonly words: string | undefined;
}

/** A handbook's table: names left, figures aligned, units in a column of their own, the other system beside. */
export interface Table {
  readonly kind: 'table';
  readonly caption: string;
  /** What the rows are: "reading", "place", "computed". */
  readonly rowsAre: string;
  /** Empty when there is one column of figures. */
  readonly columns: readonly string[];
  readonly rows: readonly TableRow[];
  /** What the last column holds, where it is not remarks. */
  readonly remarksAre?: string;
}

export interface TableRow {
  readonly name: string;
  /** The key as it stands in the case, when the name is its meaning. */
  readonly key: string | undefined;
  readonly figures: readonly Figure[];
  readonly unit: string;
  /** The same figures in the other system of units. */
  readonly other: { readonly figures: readonly Figure[]; readonly unit: string } | undefined;
  readonly remarks: readonly Runs[];
  readonly strips: readonly Strip[];
}

/** A reading outside its usual range, drawn. Numbers are in one unit. */
export interface Strip {
  readonly low: number | undefined;
  readonly high: number | undefined;
  readonly value: number;
  readonly plusMinus: number;
  /** Said beside it: "usual at warm idle: 17 .. 22 inHg (common practice)". */
  readonly says: string;
}

export type Sign = '✓' | '✗' | '≈' | '–' | '?';

/** A verdict as a sentence with its word and sign. */
export interface VerdictLine {
  readonly kind: 'verdict';
  readonly text: string;
  readonly sign: Sign;
  /** "19.8 ± 0.2 inHg, 0.5 inHg below the limit". Empty when nothing was compared. */
  readonly measured: string;
  readonly word: string;
  /** Said after the word: "as the author expects of this fault", "so the repair is not proven". */
  readonly remark: string | undefined;
  readonly why: string | undefined;
  readonly ifFails: string | undefined;
  readonly from: readonly string[];
}

export interface Picture {
  readonly kind: 'picture';
  readonly file: string;
  readonly alt: string;
  /** Undefined when the file could not be had, and `missing` says why. */
  readonly dataUri: string | undefined;
  readonly missing: string | undefined;
}

export interface Caution {
  readonly kind: 'caution';
  readonly title: string;
  readonly text: string;
}

export interface SuspectLine {
  readonly kind: 'suspect';
  readonly name: string;
  readonly standing: string;
  readonly sign: Sign;
  readonly for: readonly Runs[];
  readonly against: readonly Runs[];
  readonly missing: readonly Runs[];
}

/** A finding at its cell, with the line of the file that it is about. */
export interface FindingLine {
  readonly kind: 'finding';
  readonly severity: Severity;
  readonly code: string;
  readonly message: string;
  readonly line: number;
  readonly column: number;
  readonly frame: { readonly before: string; readonly marked: string; readonly after: string };
  readonly offers: readonly string[];
}

export interface Answer {
  /** The question's cell number. */
  readonly number: number;
  readonly title: string;
  readonly blocks: readonly Block[];
}

/** A chart, with the same in words and in figures. */
export interface ChartBlock {
  readonly kind: 'chart';
  /** "Total fuel trim against air flow: before" */
  readonly title: string;
  readonly summary: readonly string[];
  readonly table: Table;
  /** What it is drawn from. */
  readonly spec: ChartSpec;
  /** The still drawing; undefined where somebody else draws it. */
  readonly drawing: Element | undefined;
  /** In an editor: the document of its cell, which can be asked for a closer look. */
  readonly cell?: string;
}

/** A cell's own text, where it could not be read as anything else. */
export interface Source {
  readonly kind: 'source';
  readonly text: string;
}

import type { TextNode } from '../casefile/tree.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Expression } from '../expression/tree.ts';
import type { Range } from '../expression/value.ts';
import type { FileContent } from '../recording/files.ts';
import type { Span } from '../text/span.ts';
import type { Part, Reading, TakenAt } from './types.ts';

/** What one cell brings to the case, before any name is looked up. */
export interface CellFacts {
  readonly cell: number;
  readonly as: string | undefined;
  /** The cell, or its file, could not be read: what it would bring is not known, and nobody else is to blame for that. */
  readonly unread: boolean;
  readonly asSpan: Span | undefined;
  /** The cell's states by their own names, when it has several side by side. */
  readonly states: ReadonlyMap<string, TakenAt>;
  /** Readings cells answer for every signal: one that they do not hold is "not measured". */
  readonly answersForSignals: boolean;
  /** Bare names look here: readings, captures and lets; never a reference. */
  readonly open: boolean;
  readonly readings: readonly Reading[];
  readonly definitions: readonly Definition[];
  readonly statements: readonly Statement[];
  /** The names of a suspects cell's faults. */
  readonly suspects: readonly string[];
  /** Expressions that are only computed, such as a question's answer. */
  readonly answers: readonly Source[];
  /** What a chart draws and marks. */
  readonly plots: readonly Plot[];
  /** The whole cell says `shows: fault`; the span of its title. */
  readonly meantToFail: Span | undefined;
  /** The trouble codes that a recording in the cell holds; undefined where none was asked for codes. */
  readonly givenCodes: GivenCodes | undefined;
  /** The vehicle identification numbers in it. */
  readonly givenVins: readonly GivenVin[];
  readonly diagnostics: readonly Diagnostic[];
  /** What the host gave for the file that a capture names. */
  readonly content: FileContent | undefined;
  /** How that file was read, in words. */
  readonly readAs: readonly string[];
  /** The columns that a capture's file or its rows have, by their headings. */
  readonly headings: readonly string[];
}

/** Trouble codes that controllers gave, and for which sorts of them they were asked. */
export interface GivenCodes {
  readonly codes: readonly {
    readonly id: string;
    readonly code: string;
    readonly status: 'stored' | 'pending' | 'permanent';
    readonly span: Span;
  }[];
  readonly stored: boolean;
  readonly pending: boolean;
  readonly permanent: boolean;
}

/** A vehicle identification number that a controller gave. */
export interface GivenVin {
  readonly id: string;
  readonly vin: string;
  readonly span: Span;
}

/** A `let`: a name and the expression that computes it. */
export interface Definition {
  readonly id: string;
  readonly name: string;
  readonly cell: number;
  readonly source: Source;
  readonly keySpan: Span;
}

/** An expression with the text node that it stands in; its spans and findings count in the node's text. */
export interface Source {
  readonly node: TextNode;
  /** The node's text on one line, as it is told. */
  readonly text: string;
  readonly expression: Expression;
  readonly diagnostics: readonly Diagnostic[];
}

/** An entry of a chart: an expression that is drawn or marked, or a limit as a range (`17 .. 22 inHg`). */
export interface Plot {
  readonly role: 'plot' | 'mark';
  readonly label: string | undefined;
  readonly drawn: Source | { readonly node: TextNode; readonly range: Range };
  readonly against: Source | undefined;
}

/** An expectation as written: what must hold, and what the author says about it. */
export interface Statement {
  readonly cell: number;
  readonly part: Part;
  readonly title: string;
  readonly source: Source;
  readonly ifFails: string | undefined;
  readonly because: string | undefined;
  readonly showsFault: boolean;
  readonly suspect: string | undefined;
}

import type { CaseFile } from '../casefile/readCase.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { TypedExpression } from '../expression/check.ts';
import type { Type } from '../expression/type.ts';
import type { Truth, Value } from '../expression/value.ts';
import type { EngineState, Form, Signal } from '../signals/types.ts';
import type { Span } from '../text/span.ts';
import type { Memo } from './memo.ts';

/** A case evaluated: text → cells → names and types → values → verdicts. Cells are named by their index, from 0. */
export interface Study {
  readonly text: string;
  readonly file: CaseFile;
  readonly title: string;
  readonly readings: readonly Reading[];
  readonly computed: readonly Computed[];
  readonly expectations: readonly Expectation[];
  readonly answers: readonly Answer[];
  readonly plotted: readonly Plotted[];
  readonly suspects: readonly Suspect[];
  /** The measurement or test not yet taken that would separate the most suspects. */
  readonly next: string | undefined;
  /** Everything found, in the order of the file. */
  readonly findings: readonly Finding[];
  /** The same in parts: what is about the file as a whole, and what is in each cell. A cell's list stays the same while nothing in it changes. */
  readonly fileFindings: readonly Finding[];
  readonly cellFindings: readonly (readonly Finding[])[];
  /** What the next study of the same case may take over. */
  readonly memo: Memo;
  /** What rules keep of it for the study after it; nobody else looks at it. */
  readonly keptByRules: unknown;
}

/** A diagnostic with its cell; the cell is undefined for findings about the file as a whole. */
export interface Finding {
  readonly cell: number | undefined;
  readonly diagnostic: Diagnostic;
}

export type When = 'before' | 'after' | 'known good' | 'freeze frame';

/** The engine state that a value was taken in. */
export interface TakenAt {
  /** As written: "warm idle", "cruise". */
  readonly name: string;
  /** The trade's state of that name, if it is one. */
  readonly known: EngineState | undefined;
  /** Further facts of a state map: gear, loop. */
  readonly more: ReadonlyMap<string, string>;
}

/** One value that stands in the case: a reading, a header value, a reference's figure, a capture's channel, a test's result. */
export interface Reading {
  /** `koeo.map`, `before.idle.map`, `engine.displacement`. */
  readonly fullName: string;
  /** The key as written: `map`. */
  readonly key: string;
  readonly from: 'readings' | 'reference' | 'header' | 'capture' | 'test' | 'picture';
  readonly cell: number;
  readonly when: When;
  readonly state: TakenAt | undefined;
  /** The cell's own name for that state, where it has several side by side: `idle`. */
  readonly column: string | undefined;
  readonly signal: Signal | undefined;
  readonly form: Form | undefined;
  readonly type: Type;
  readonly value: Value;
  /** Places in the cell's text. */
  readonly keySpan: Span;
  readonly valueSpan: Span;
  readonly tool: string | undefined;
  /** Where on the car: `at: brake booster port`, and what the needle did: `saw: steady`. */
  readonly at: string | undefined;
  readonly saw: string | undefined;
  /** Of a reading that was decoded from a recording: its bytes as written, `1A F8`; its spans are theirs. */
  readonly bytes?: string;
}

/** A `let`. */
export interface Computed {
  /** As the results key it: `trims.idle`, `baro_seen`, `5.trim`. */
  readonly fullName: string;
  readonly name: string;
  readonly cell: number;
  /** Undefined for a member of a circle. */
  readonly typed: TypedExpression | undefined;
  /** The expression on one line. */
  readonly text: string;
  readonly value: Value;
  /** Full names of the readings that it came from, in the order they are first read. */
  readonly from: readonly string[];
  readonly keySpan: Span;
  readonly valueSpan: Span;
}

export type Part = 'expect' | 'verify' | 'predicts' | 'ruled out if';

export interface Expectation {
  readonly cell: number;
  readonly part: Part;
  /** The cell's title. */
  readonly title: string;
  /** The expression on one line. */
  readonly text: string;
  readonly truth: Truth;
  readonly from: readonly string[];
  readonly span: Span;
  /** What the author says to do when it fails. */
  readonly ifFails: string | undefined;
  readonly because: string | undefined;
  /** The author means it to fail. */
  readonly showsFault: boolean;
  /** The suspect whose prediction it is. */
  readonly suspect: string | undefined;
}

/** The answer of a question, computed. */
export interface Answer {
  readonly cell: number;
  /** The expression on one line. */
  readonly text: string;
  readonly value: Value;
  readonly from: readonly string[];
}

/** What a chart draws or marks, computed: an entry of its `plot` or of its `mark`. */
export interface Plotted {
  readonly cell: number;
  readonly role: 'plot' | 'mark';
  /** The expression, or the limit, on one line. */
  readonly text: string;
  /** What the author writes beside it. */
  readonly label: string | undefined;
  readonly value: Value;
  /** What it is drawn against, where the author says so. */
  readonly against: { readonly text: string; readonly value: Value } | undefined;
  readonly from: readonly string[];
  readonly span: Span;
}

export type Standing = 'still possible' | 'ruled out' | 'not tested';

export interface Suspect {
  readonly cell: number;
  readonly name: string;
  readonly standing: Standing;
  /** The expectations that rule it out, or that speak for it. */
  readonly by: readonly string[];
  readonly speaksFor: readonly Expectation[];
  readonly against: readonly Expectation[];
  readonly missing: readonly Expectation[];
}

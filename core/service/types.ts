import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { TextEdit } from '../text/edits.ts';
import type { Span } from '../text/span.ts';

/** Cells are named by their index in the study, from 0; spans and offsets count UTF-16 units in that cell's own text. */
export interface Place {
  readonly cell: number;
  readonly span: Span;
}

/** Edits in one cell's text; they do not overlap. */
export interface CellEdits {
  readonly cell: number;
  readonly edits: readonly TextEdit[];
}

/** In which units a reader wants the second value: the other system than written, or always one of the two. */
export type UnitPreference = 'as written' | 'metric' | 'US';

export interface Hover {
  /** What the hover is about. */
  readonly span: Span;
  readonly markdown: string;
}

export type CompletionKind =
  | 'cell kind'
  | 'key'
  | 'word'
  | 'signal'
  | 'unit'
  | 'state'
  | 'name'
  | 'member'
  | 'function'
  | 'parameter'
  | 'keyword'
  | 'tool';

export interface Completion {
  /** What is listed: `map`, `total_trim`, `warm idle`. */
  readonly label: string;
  readonly kind: CompletionKind;
  /** On the same line, quieter: a signature, a meaning, a value. */
  readonly detail: string;
  /** Its page; undefined when the detail says it all. */
  readonly markdown: string | undefined;
  /** What is replaced: the word that the cursor stands in, or nothing. */
  readonly span: Span;
  readonly newText: string;
  /** `newText` holds places to fill in, written `${1:name}` and `$0`; literal `$`, `}` and `\` are escaped with `\`. */
  readonly snippet: boolean;
  /** Likeliest first: entries are to be sorted by this number, then by label. */
  readonly rank: number;
  /** What the typed text is compared with, where that is not the label: "manifold pressure map". */
  readonly filter: string | undefined;
}

export interface Completions {
  readonly items: readonly Completion[];
  /** False when further typing should ask again. */
  readonly complete: boolean;
}

export interface Signature {
  /** `total_trim(stft, ltft)` */
  readonly label: string;
  readonly markdown: string;
  readonly parameters: readonly { readonly span: Span; readonly markdown: string }[];
  /** The parameter that the cursor stands in; undefined when there are more arguments than parameters. */
  readonly active: number | undefined;
}

/** Where something is defined: the whole entry, and the name in it. */
export interface Target extends Place {
  readonly nameSpan: Span;
}

export interface Definitions {
  /** The name that was asked about. */
  readonly span: Span;
  readonly targets: readonly Target[];
}

export interface Reference extends Place {
  readonly defines: boolean;
}

/** A question that was turned down, with a reason for the person who asked. */
export interface Refusal {
  readonly refused: string;
}

/** What may be renamed at a place, as it is called now. */
export interface Renamable {
  readonly span: Span;
  readonly name: string;
}

export interface Renaming {
  readonly edits: readonly CellEdits[];
}

export type SymbolKind =
  | 'cell'
  | 'note heading'
  | 'reading'
  | 'computed'
  | 'expectation'
  | 'suspect'
  | 'signal'
  | 'tool';

export interface CellSymbol {
  readonly name: string;
  readonly detail: string;
  readonly kind: SymbolKind;
  /** All of it, and what to select when one goes there. */
  readonly span: Span;
  readonly nameSpan: Span;
  readonly children: readonly CellSymbol[];
}

export interface Fold {
  /** From the end of the line that stays visible to the end of the last one that is hidden. */
  readonly span: Span;
  readonly kind: 'region' | 'comment';
}

export const tokenTypes = [
  'kind',
  'key',
  'title',
  'text',
  'name',
  'signal',
  'function',
  'parameter',
  'state',
  'word',
  'keyword',
  'operator',
  'number',
  'unit',
  'comment',
] as const;

export type TokenType = (typeof tokenTypes)[number];

/** `defines`: the name's own place; `own`: the case's own word; `missing`: a name that means nothing here. */
export const tokenModifiers = ['defines', 'own', 'missing'] as const;

export type TokenModifier = (typeof tokenModifiers)[number];

/** In order, not overlapping, each on one line. */
export interface Token {
  readonly span: Span;
  readonly type: TokenType;
  readonly modifiers: readonly TokenModifier[];
}

export interface InlayHint {
  /** Stands behind this offset. */
  readonly offset: number;
  /** `= 25 %`, `100.2 kPa`, `✓ holds` */
  readonly text: string;
  readonly kind: 'other unit' | 'value' | 'verdict';
  readonly tooltip: string;
}

export interface Link {
  readonly span: Span;
  /** As written: relative to the case's own folder, with `/`; never leaves it. */
  readonly file: string;
}

/** A change that is offered at a place. */
export interface CodeFix {
  readonly title: string;
  /** `fix` puts right what a diagnostic says; `rewrite` is offered where nothing is wrong. */
  readonly kind: 'fix' | 'rewrite' | 'extract';
  readonly edits: readonly CellEdits[];
  /** What it puts right; empty for a rewrite. */
  readonly diagnostics: readonly Diagnostic[];
  /** The one offer that is most likely meant. */
  readonly preferred: boolean;
}

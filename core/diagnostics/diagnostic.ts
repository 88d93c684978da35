import type { TextEdit } from '../text/edits.ts';
import type { Span } from '../text/span.ts';
import { type CaptureFacts, captureRows } from './catalogue/captures.ts';
import { type ChartsFacts, chartsRows } from './catalogue/charts.ts';
import { type EditingFacts, editingRows } from './catalogue/editing.ts';
import { type ExpressionFacts, expressionRows } from './catalogue/expression.ts';
import { type FileFacts, fileRows } from './catalogue/file.ts';
import { type NamesFacts, namesRows } from './catalogue/names.ts';
import { type ObdFacts, obdRows } from './catalogue/obd.ts';
import { type ObdReadingFacts, obdReadingRows } from './catalogue/obdReadings.ts';
import { type QuantityFacts, quantityRows } from './catalogue/quantity.ts';
import { type RulesFacts, rulesRows } from './catalogue/rules.ts';
import { type StudyFacts, studyRows } from './catalogue/study.ts';
import type { Row, Rows, Severity } from './row.ts';

/** The facts of every finding, by its stable code. */
export type Facts = FileFacts &
  QuantityFacts &
  ExpressionFacts &
  NamesFacts &
  StudyFacts &
  CaptureFacts &
  RulesFacts &
  ObdFacts &
  ObdReadingFacts &
  ChartsFacts &
  EditingFacts;
export type Code = keyof Facts;

/** The one place that words them. */
export const catalogue: Rows<Facts> = {
  ...fileRows,
  ...quantityRows,
  ...expressionRows,
  ...namesRows,
  ...studyRows,
  ...captureRows,
  ...rulesRows,
  ...obdRows,
  ...obdReadingRows,
  ...chartsRows,
  ...editingRows,
};

/** A change that the author may accept: edits in the text that the diagnostic's span counts in. */
export interface Fix {
  /** What it does, as an offer: "Write 13.1 with a point". */
  readonly title: string;
  readonly edits: readonly TextEdit[];
}

/** A finding at its place. Spans count in the text of the cell (or of the file, for findings about the file). */
export type Diagnostic = {
  readonly [C in Code]: {
    readonly code: C;
    readonly facts: Facts[C];
    readonly severity: Severity;
    readonly span: Span;
    readonly fixes: readonly Fix[];
  };
}[Code];

/** A value together with what was found on the way to it. Nothing here throws on a user's text. */
export interface Found<T> {
  readonly value: T;
  readonly diagnostics: readonly Diagnostic[];
}

export function diagnose<C extends Code>(
  code: C,
  span: Span,
  facts: Facts[C],
  fixes: readonly Fix[] = [],
): Diagnostic {
  const row: Row<Facts[C]> = catalogue[code];
  return { code, facts, severity: row.severity, span, fixes } as Diagnostic;
}

export function message(diagnostic: Diagnostic): string {
  const row = catalogue[diagnostic.code] as Row<unknown>;
  return row.say(diagnostic.facts);
}

/** All codes, in the catalogue's order. */
export function allCodes(): Code[] {
  return Object.keys(catalogue) as Code[];
}

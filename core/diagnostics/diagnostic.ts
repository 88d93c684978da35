import type { TextEdit } from '../text/edits.ts';
import type { Span } from '../text/span.ts';
import type { CaptureFacts } from './catalogue/captures.ts';
import type { ChartsFacts } from './catalogue/charts.ts';
import type { EditingFacts } from './catalogue/editing.ts';
import type { ExpressionFacts } from './catalogue/expression.ts';
import type { FileFacts } from './catalogue/file.ts';
import type { NamesFacts } from './catalogue/names.ts';
import type { ObdFacts } from './catalogue/obd.ts';
import type { ObdReadingFacts } from './catalogue/obdReadings.ts';
import type { QuantityFacts } from './catalogue/quantity.ts';
import type { RulesFacts } from './catalogue/rules.ts';
import type { StudyFacts } from './catalogue/study.ts';
import type { Severity } from './row.ts';
import { severityOf } from './severities.ts';

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
  return { code, facts, severity: severityOf(code), span, fixes } as Diagnostic;
}

import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { message } from '../diagnostics/words.ts';
import type { Finding, Study } from '../study/types.ts';
import type { LineIndex } from '../text/lines.ts';
import { type Span, shift } from '../text/span.ts';
import type { FindingLine } from './blocks.ts';
import { sourceFrame } from './sourceFrame.ts';

/** A finding with its place in the file (whose text and lines these are), its line and what is offered. */
export function findingLine(study: Study, text: string, lines: LineIndex, finding: Finding): FindingLine {
  return findingIn(text, lines, spanInFile(study, finding), finding.diagnostic);
}

/** The same in any text in which the span counts: a cell's own, for its editor. */
export function findingIn(text: string, lines: LineIndex, span: Span, diagnostic: Diagnostic): FindingLine {
  const { line, column, before, marked, after } = sourceFrame(text, lines, span);
  return {
    kind: 'finding',
    severity: diagnostic.severity,
    code: diagnostic.code,
    message: message(diagnostic),
    line,
    column,
    frame: { before, marked, after },
    offers: diagnostic.fixes.map((fix) => fix.title),
  };
}

/** Spans of a finding in a cell count in the cell's text. */
function spanInFile(study: Study, { cell, diagnostic }: Finding): Span {
  const start = cell === undefined ? 0 : (study.file.stream.starts[cell] ?? 0);
  return shift(diagnostic.span, start);
}

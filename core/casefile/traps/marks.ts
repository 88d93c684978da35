import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { Mark } from '../readYaml.ts';

export function markDiagnostics(text: string, marks: readonly Mark[]): Diagnostic[] {
  return marks.map((mark) => {
    const facts = { text: text.slice(mark.span.start, mark.span.end) };
    return diagnose(mark.kind === 'question mark' ? 'question-mark-alone' : mark.kind, mark.span, facts);
  });
}

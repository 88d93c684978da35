import { type Diagnostic, diagnose, type Fix } from '../../diagnostics/diagnostic.ts';
import type { Mark } from '../readYaml.ts';
import { shortened } from '../shortened.ts';
import { quoteFix } from './quoted.ts';
import { linesOf, writtenEntryAt } from './writtenEntry.ts';

/**
 * Anchors, aliases, tags, directives and lone question marks, which cases do without; at most the first few.
 * A line that a trap has explained is left alone.
 */
export function markDiagnostics(
  text: string,
  marks: readonly Mark[],
  traps: readonly Diagnostic[],
): Diagnostic[] {
  if (marks.length === 0) return [];
  const lines = linesOf(text);
  return marks.slice(0, most).flatMap(({ kind, span }) => {
    const line = lines.find((each) => span.start <= each.end);
    if (traps.some((trap) => (line?.start ?? 0) <= trap.span.start && trap.span.start <= (line?.end ?? 0)))
      return [];
    const words = text.slice(span.start, kind === 'question mark' ? (line?.end ?? span.end) : span.end);
    const facts = { text: shortened(words) };
    if (kind === 'directive') {
      return diagnose('directive', span, facts, [
        { title: 'Delete the line', edits: [{ span, newText: '' }] },
      ]);
    }
    const entry = writtenEntryAt(text, lines, span.start);
    const fixes: Fix[] = [];
    if (entry !== undefined && entry.value.start === span.start && entry.below.length === 0) {
      fixes.push(quoteFix(text, withoutRemark(text, entry.value)));
    }
    return diagnose(kind === 'question mark' ? 'question-mark-alone' : kind, span, facts, fixes);
  });
}

const most = 20;

function withoutRemark(text: string, span: { start: number; end: number }): { start: number; end: number } {
  const remark = /[ \t]+#/.exec(text.slice(span.start, span.end));
  return remark === null ? span : { start: span.start, end: span.start + remark.index };
}

import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { TextEdit } from '../../text/edits.ts';
import { shortened } from '../shortened.ts';
import { isBlank, type Line } from './writtenEntry.ts';

/** Lines that are set in with tabs: one finding at the first. Its fix mends all of them, with two spaces a tab or none. */
export function tabTraps(text: string, lines: readonly Line[], offset: number): Diagnostic[] {
  const at = lines.findIndex((line) => offset <= line.end);
  const line = lines[at];
  if (line === undefined || !leadOf(text, line).includes('\t')) return [];
  const facts = { text: shortened(text.slice(line.start, line.end)) };
  const span = { start: line.start, end: line.start + line.column };
  return ['  ', ''].map((instead) => {
    const edits: TextEdit[] = [];
    for (const each of lines.slice(at)) {
      const lead = leadOf(text, each);
      if (!lead.includes('\t')) continue;
      edits.push({
        span: { start: each.start, end: each.start + lead.length },
        newText: isBlank(each) ? '' : lead.replaceAll('\t', instead),
      });
    }
    const title = instead === '' ? 'Take the tabs away' : 'Set the lines in with spaces';
    return diagnose('tab-indentation', span, facts, [{ title, edits }]);
  });
}

const leadOf = (text: string, line: Line): string => text.slice(line.start, line.start + line.column);

import type { Diagnostic } from '../../diagnostics/diagnostic.ts';
import { applyEdits, type TextEdit } from '../../text/edits.ts';
import { limits } from '../limits.ts';
import { readYaml, type YamlProblem } from '../readYaml.ts';
import { remarkInsideTrap } from './cutOff.ts';
import { deeperFirstLineTrap } from './deeperFirstLine.ts';
import { expressionInBracesTrap } from './expressionInBraces.ts';
import { noteLinesTrap } from './noteLines.ts';
import { sentenceTrap } from './sentence.ts';
import { strayIndentTrap } from './strayIndent.ts';
import { tabTraps } from './tabs.ts';
import { type Line, linesOf, type WrittenEntry, writtenEntryAt } from './writtenEntry.ts';
import { yamlError } from './yamlErrors.ts';

/** How many characters may still be read again to explain errors. Trying a fix reads the whole cell. */
export interface Patience {
  left: number;
}

/**
 * Explains why a text could not be read. Each complaint of the yaml package is looked at where it stands: if a trap of
 * handwriting is there and mending it makes the complaint go away, the trap is reported with that fix, and the search
 * goes on in the mended text. The first complaint that no trap explains is reported as such and ends the search,
 * since what follows it is mostly its consequence.
 */
export function trapsInText(text: string, errors: readonly YamlProblem[], patience: Patience): Diagnostic[] {
  const lines = linesOf(text);
  const found: Diagnostic[] = [];
  const mended: TextEdit[] = [];
  let open = errors;
  while (open.length > 0 && found.length < mostTraps) {
    const first = open[0];
    if (first === undefined) break;
    const error = { ...first, span: spanBefore(first.span, mended) };
    const named = yamlError(text, lines, error);
    const trap = [...candidates(text, lines, error), named].find((each) => helps(each));
    found.push(trap ?? named);
    if (trap === undefined) break;
  }
  return found;

  function helps(trap: Diagnostic): boolean {
    const edits = [...mended, ...(trap.fixes[0]?.edits ?? [])];
    if (edits.length === mended.length || overlapping(edits) || patience.left < text.length) return false;
    patience.left -= text.length;
    const next = readYaml(applyEdits(text, edits), limits.depth).errors;
    const before = open[0]?.span.start ?? 0;
    const now = next[0] === undefined ? Number.POSITIVE_INFINITY : spanBefore(next[0].span, edits).start;
    if (now <= spanBefore({ start: before, end: before }, mended).start || now <= trap.span.start)
      return false;
    mended.push(...(trap.fixes[0]?.edits ?? []));
    open = next;
    return true;
  }
}

/** What one cell is told at a time. */
const mostTraps = 20;

function candidates(text: string, lines: readonly Line[], error: YamlProblem): Diagnostic[] {
  const at = error.span.start;
  const entry = writtenEntryAt(text, lines, at);
  // A backslash is better doubled, a quote or bracket better closed, than all of it put in quotes.
  if (isUnclosed(error)) return [];
  if (error.code === 'BAD_DQ_ESCAPE') {
    const whole = entry && goesOnAfterQuote(text, entry) ? sentenceTrap(text, entry) : undefined;
    return whole === undefined ? [] : [whole];
  }
  const traps = [
    ...tabTraps(text, lines, at),
    noteLinesTrap(text),
    deeperFirstLineTrap(text, lines, at),
    strayIndentTrap(text, lines, at),
    entry && remarkInsideTrap(text, entry),
    entry && expressionInBracesTrap(text, entry),
    entry && sentenceTrap(text, entry),
  ];
  return traps.filter((trap) => trap !== undefined);
}

/** `"C:\path" rough`: words behind the closing quote, which belong to it. */
function goesOnAfterQuote(text: string, { value }: WrittenEntry): boolean {
  return /^"[^"\r\n]*"[ \t]*[^ \t\r\n#,}\]]/.test(text.slice(value.start, value.end));
}

const isUnclosed = ({ message }: YamlProblem): boolean =>
  message.includes('closing') || message.includes('and end with a') || message.includes('must end with a');

/** Where a stretch of the mended text stood before the edits. */
function spanBefore(span: { start: number; end: number }, edits: readonly TextEdit[]) {
  return { start: offsetBefore(span.start, edits), end: offsetBefore(span.end, edits) };
}

function offsetBefore(offset: number, edits: readonly TextEdit[]): number {
  let grown = 0;
  for (const { span, newText } of [...edits].sort((a, b) => a.span.start - b.span.start)) {
    if (span.start + grown >= offset) break;
    if (span.start + grown + newText.length > offset) return span.start;
    grown += newText.length - (span.end - span.start);
  }
  return Math.max(0, offset - grown);
}

function overlapping(edits: readonly TextEdit[]): boolean {
  const ordered = [...edits].sort((a, b) => a.span.start - b.span.start);
  return ordered.some((edit, index) => {
    const next = ordered[index + 1];
    return next !== undefined && next.span.start < Math.max(edit.span.end, edit.span.start + 1);
  });
}

import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { shortened } from '../shortened.ts';
import { isBlank, type Line } from './writtenEntry.ts';

/** A text after `|` or `>` whose first lines are set in deeper than a later one, which then falls out of it. */
export function deeperFirstLineTrap(
  text: string,
  lines: readonly Line[],
  offset: number,
): Diagnostic | undefined {
  let at = lines.findIndex((line) => offset <= line.end);
  if (at < 0) at = lines.length - 1;
  // The package may notice only at a later line, or at the end of the line before.
  for (const index of [at, at + 1, at - 1, at - 2]) {
    const found = trapAtLine(text, lines, index);
    if (found !== undefined) return found;
  }
  return undefined;
}

function trapAtLine(text: string, lines: readonly Line[], index: number): Diagnostic | undefined {
  const line = lines[index];
  if (line === undefined || isBlank(line)) return undefined;
  const deeper: Line[] = [];
  for (let above = index - 1; above >= 0 && above > index - mostLines; above--) {
    const each = lines[above];
    if (each === undefined || isBlank(each)) continue;
    if (each.column > line.column) {
      deeper.push(each);
      continue;
    }
    const head = text.slice(each.start, each.end);
    const keyColumn = /^[ \t]*(?:-[ \t]+)*/.exec(head)?.[0].length ?? 0;
    const opens = /(?:^|[:-])[ \t]+[|>][-+]?[ \t]*(?:[ \t]#.*)?$/.test(head);
    if (!opens || deeper.length === 0 || keyColumn >= line.column) return undefined;
    const surplus = Math.min(...deeper.map((one) => one.column)) - line.column;
    const edits = deeper.map((one) => ({
      span: { start: one.start, end: one.start + surplus },
      newText: '',
    }));
    const span = { start: line.start, end: line.end };
    const facts = { text: shortened(text.slice(line.start, line.end)) };
    const fix = { title: 'Start the first lines at the same column', edits };
    return diagnose('first-line-deeper', span, facts, [fix]);
  }
  return undefined;
}

const mostLines = 500;

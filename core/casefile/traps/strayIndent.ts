import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { keyNames } from '../kinds/keyNames.ts';
import { shortened } from '../shortened.ts';
import { type Line, writtenEntryAt } from './writtenEntry.ts';

/** A key that is set in deeper than the entry above it, which already has its value, so that it reads as its text. */
export function strayIndentTrap(
  text: string,
  lines: readonly Line[],
  offset: number,
): Diagnostic | undefined {
  const entry = writtenEntryAt(text, lines, offset);
  const first = entry?.below[0];
  if (entry === undefined || first === undefined) return undefined;
  const key = /^[ \t]*([A-Za-z_][A-Za-z0-9_ ]*):(?=[ \t]|$)/.exec(text.slice(first.start, first.end))?.[1];
  if (key === undefined) return undefined;
  const afterNumber = /^[-+]?[0-9]/.test(text.slice(entry.value.start, entry.value.end));
  if (!keyNames().every.has(key) && !afterNumber) return undefined;
  const surplus = first.column - entry.column;
  const edits = entry.below.map((line) => ({
    span: { start: line.start, end: line.start + surplus },
    newText: '',
  }));
  const span = { start: first.start + first.column, end: first.end };
  return diagnose('bad-indentation', span, { text: shortened(text.slice(first.start, first.end)) }, [
    { title: 'Start it at the same column as the line above', edits },
  ]);
}

import { type CaseFile, type ReadCell, readCase } from '../../core/casefile/readCase.ts';
import type { Diagnostic } from '../../core/diagnostics/diagnostic.ts';
import { message } from '../../core/diagnostics/words.ts';
import { applyEdits } from '../../core/text/edits.ts';
import { lineIndex, positionAt } from '../../core/text/lines.ts';

/** A finding as a test compares it: what, where, which words it covers, what it says. */
export interface Found {
  readonly code: string;
  /** Line and column of the file where it starts. */
  readonly at: string;
  readonly covers: string;
  readonly says: string;
}

/** Everything that is found when a whole file is read. */
export function findings(text: string): Found[] {
  const file = readCase(text);
  const lines = lineIndex(text);
  return placed(file).map(({ diagnostic, shift }) => {
    const start = diagnostic.span.start + shift;
    const { line, column } = positionAt(lines, start);
    const covers = text.slice(start, diagnostic.span.end + shift);
    return { code: diagnostic.code, at: `${line}:${column}`, covers, says: message(diagnostic) };
  });
}

export const codes = (text: string): string[] => findings(text).map((found) => found.code);

/** The text after the first fix of the only finding of that code. */
export function mended(text: string, code: string, fix = 0): string {
  const found = placed(readCase(text)).filter((each) => each.diagnostic.code === code);
  const first = found[0];
  if (first === undefined) throw new Error(`no ${code} in ${JSON.stringify(text)}`);
  const edits = first.diagnostic.fixes[fix]?.edits ?? [];
  return applyEdits(
    text,
    edits.map((edit) => ({
      ...edit,
      span: { start: edit.span.start + first.shift, end: edit.span.end + first.shift },
    })),
  );
}

function placed(file: CaseFile): { readonly diagnostic: Diagnostic; readonly shift: number }[] {
  return [
    ...file.diagnostics.map((diagnostic) => ({ diagnostic, shift: 0 })),
    ...file.cells.flatMap((cell, index) =>
      cell.diagnostics.map((diagnostic) => ({ diagnostic, shift: file.stream.starts[index] ?? 0 })),
    ),
  ];
}

export const header = 'diag: 1\ncase: A case\n---\n';

/** The cell of a text that stands behind a header. */
export function cellOf(text: string): ReadCell {
  const cell = readCase(header + text).cells[1];
  if (cell === undefined) throw new Error('no cell');
  return cell;
}

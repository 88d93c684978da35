import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { service } from '../../core/service/service.ts';
import { caseResult, type DiagnosticResult } from '../../core/study/results.ts';
import { lineIndex, offsetAt, positionAt } from '../../core/text/lines.ts';
import { placeNotebook } from '../../extension/shared/notebookText.ts';
import { sampleFiles, samples } from '../support/samples.ts';
import { Editor, type EditorNotebook } from './editor.ts';
import { mutated, mutations } from './mutations.ts';

/** What `casebook check` says of the file. */
const checked = (text: string): readonly DiagnosticResult[] =>
  caseResult(checkCase(text, undefined, sampleFiles), 'case.diag').diagnostics;

const severities = ['', 'error', 'warning', 'info'] as const;

type Told = Omit<DiagnosticResult, 'code'> & { readonly code: unknown };

/** What the editor shows under a uri, as if its text began at a line of the file. */
function told(editor: Editor, uri: string, line: number): Told[] {
  return (editor.findings.get(uri) ?? []).map(({ code, severity = 0, message, range: { start, end } }) => ({
    code,
    severity: severities[severity] as DiagnosticResult['severity'],
    message: String(message),
    line: start.line + line,
    column: start.character + 1,
    endLine: end.line + line,
    endColumn: end.character + 1,
  }));
}

const sorted = (list: readonly Told[]): string[] => list.map((each) => JSON.stringify(each)).sort();

/** What the notebook shows, cell by cell, at the places of the file. */
function toldInNotebook(editor: Editor, notebook: EditorNotebook): Told[] {
  const placed = placeNotebook({ ...notebook, cells: notebook.cells.map((each) => each.cell) });
  const lines = lineIndex(placed.text);
  return notebook.cells.flatMap(({ uri }, index) =>
    told(editor, uri, positionAt(lines, placed.cells[index]?.start ?? 0).line),
  );
}

/** A notebook has no `---` lines: what stands on one is shown at the start of the cell below. */
function belowSeparators(text: string, list: readonly DiagnosticResult[]): Told[] {
  const lines = lineIndex(text);
  const { cells: raws, starts } = checkCase(text, undefined, sampleFiles).file.stream;
  const cells = raws.map(({ text: { length } }, index) => ({ start: starts[index] ?? 0, length }));
  return list.map((each) => {
    const from = offsetAt(lines, { line: each.line, column: each.column });
    const to = offsetAt(lines, { line: each.endLine, column: each.endColumn });
    const cell = cells.find(({ start, length }) => to <= start + length) ?? cells.at(-1);
    const start = positionAt(lines, Math.max(cell?.start ?? 0, from));
    const end = positionAt(
      lines,
      Math.min(Math.max(cell?.start ?? 0, to), (cell?.start ?? 0) + (cell?.length ?? 0)),
    );
    return { ...each, line: start.line, column: start.column, endLine: end.line, endColumn: end.column };
  });
}

/** A note shows its Markdown only: of a finding about its source the cell counts, not the place in it. */
function asShown(notebook: EditorNotebook, list: readonly Told[]): Told[] {
  const placed = placeNotebook({ ...notebook, cells: notebook.cells.map((each) => each.cell) });
  const lines = lineIndex(placed.text);
  return list.map((each) => {
    const at = offsetAt(lines, { line: each.line, column: each.column });
    const cell = placed.cells.findIndex(({ start, end }) => start <= at && at <= end);
    if (notebook.cells[cell]?.cell.kind !== 'note') return each;
    return { ...each, line: -cell, column: 0, endLine: -cell, endColumn: 0 };
  });
}

async function expectAgreement(editor: Editor, text: string): Promise<void> {
  const expected = checked(text);
  const uri = 'file:///cases/case.diag';
  await editor.openText(uri, text);
  await editor.settled();
  expect(sorted(told(editor, uri, 1))).toEqual(sorted(expected));
  await editor.closeText(uri);
  const notebook = await editor.openNotebook(uri, text);
  await editor.settled();
  expect(notebook.text).toBe(text);
  if (notebook.cells.length > 0) {
    const inside = toldInNotebook(editor, notebook);
    const outside = belowSeparators(text, expected);
    expect(sorted(asShown(notebook, inside))).toEqual(sorted(asShown(notebook, outside)));
  }
  await notebook.close();
  await editor.settled();
  expect(editor.findings.size).toBe(0);
}

describe('the editor reports what `casebook check` reports, at the same places', () => {
  it.each([...samples])('in %s', async (_, text) => {
    await expectAgreement(await Editor.start({ service, filesBeside: () => sampleFiles }), text);
  });

  it('in a hundred mutated samples', async () => {
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...samples.keys()), mutations, async (name, list) => {
        await expectAgreement(
          await Editor.start({ service, filesBeside: () => sampleFiles }),
          mutated(samples.get(name) ?? '', list),
        );
      }),
      { numRuns: 100 },
    );
  });
});

import type { CodeAction } from 'vscode-languageserver';
import { splitCellCommand } from '../shared/protocol.ts';
import { type OpenCase, placeOfFile, startOf } from './openCase.ts';
import { actionKinds, diagnosticTo, fileEditTo } from './toLsp.ts';
import type { Stretch, View } from './view.ts';

/** Offers for findings about the file and between cells, where the asked stretch touches them. */
export function fixesInFile(open: OpenCase, view: View, stretch: Stretch): CodeAction[] {
  const from = startOf(open, view) + view.lines.offsetAt(stretch.start);
  const to = startOf(open, view) + view.lines.offsetAt(stretch.end);
  const actions: CodeAction[] = [];
  for (const finding of open.study.findings) {
    const { diagnostic } = finding;
    const { span } = diagnostic;
    if (finding.cell !== undefined || span.start > to || span.end < from) continue;
    const diagnostics = [diagnosticTo({ finding, place: placeOfFile(open, view, span) })];
    if (diagnostic.code === 'separator-in-cell') {
      const title = 'Split the cell here';
      const command = { title, command: splitCellCommand, arguments: [view.uri] };
      actions.push({ title, kind: actionKinds.fix, command, diagnostics, isPreferred: true });
    }
    for (const fix of diagnostic.fixes) {
      const edit = fileEditTo(open, view, fix.edits);
      if (edit !== undefined) actions.push({ title: fix.title, kind: actionKinds.fix, edit, diagnostics });
    }
  }
  return actions;
}

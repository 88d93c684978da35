import {
  commands,
  l10n,
  NotebookCellData,
  NotebookCellKind,
  NotebookEdit,
  NotebookRange,
  WorkspaceEdit,
  window,
  workspace,
} from 'vscode';
import { kinds } from '../../core/casefile/kinds/kinds.ts';
import { cellTemplates, type InsertedKind } from './cellTemplates.ts';
import { activeCase } from './notebookType.ts';

/** Puts a new cell after the selected one: of the kind that is given, or of one that the user chooses. */
export async function insertCell(given: unknown): Promise<void> {
  const editor = activeCase();
  if (editor === undefined) throw new Error(l10n.t('Open a case as a notebook first.'));
  const kind = isKind(given) ? given : await choose();
  if (kind === undefined) return;
  const at = editor.notebook.cellCount === 0 ? 0 : editor.selection.end;
  const text = cellTemplates[kind].trimEnd();
  const cell =
    kind === 'note'
      ? new NotebookCellData(NotebookCellKind.Markup, text, 'markdown')
      : new NotebookCellData(NotebookCellKind.Code, text, 'diag');
  const edit = new WorkspaceEdit();
  edit.set(editor.notebook.uri, [NotebookEdit.insertCells(at, [cell])]);
  await workspace.applyEdit(edit);
  const place = new NotebookRange(at, at + 1);
  editor.selection = place;
  editor.revealRange(place);
  await commands.executeCommand('notebook.cell.edit');
}

function isKind(given: unknown): given is InsertedKind {
  return typeof given === 'string' && Object.hasOwn(cellTemplates, given);
}

async function choose(): Promise<InsertedKind | undefined> {
  const items = Object.keys(cellTemplates)
    .filter(isKind)
    .map((kind) => ({ label: kind, description: kinds[kind].meaning }));
  const chosen = await window.showQuickPick(items, {
    title: l10n.t('Insert a Cell'),
    placeHolder: l10n.t('What is it?'),
    matchOnDescription: true,
  });
  return chosen?.label;
}

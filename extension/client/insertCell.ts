import {
  commands,
  l10n,
  NotebookCellData,
  NotebookCellKind,
  NotebookEdit,
  type NotebookEditor,
  NotebookRange,
  TabInputNotebook,
  WorkspaceEdit,
  window,
  workspace,
} from 'vscode';
import { kinds } from '../../core/casefile/kinds/kinds.ts';
import { cellTemplates, type InsertedKind, insertedKinds } from './cellTemplates.ts';
import { activeCase, isCase, notebookType } from './notebookType.ts';

/** Puts a new cell after the selected one: of the kind that is given, or of one that the user chooses. */
export async function insertCell(given: unknown): Promise<void> {
  const editor = activeCase() ?? (await otherCase());
  if (editor === undefined) return offerCase();
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

/** From a walkthrough or another file: the case that is seen beside it, or the only one that is open. */
async function otherCase(): Promise<NotebookEditor | undefined> {
  const seen = window.visibleNotebookEditors.find(({ notebook }) => isCase(notebook))?.notebook;
  const open = window.tabGroups.all
    .flatMap(({ tabs }) => tabs)
    .flatMap(({ input }) =>
      input instanceof TabInputNotebook && input.notebookType === notebookType ? input.uri : [],
    );
  const only = new Set(open.map(String)).size === 1 ? open[0] : undefined;
  const notebook = seen ?? (only === undefined ? undefined : await workspace.openNotebookDocument(only));
  return notebook === undefined ? undefined : window.showNotebookDocument(notebook);
}

async function offerCase(): Promise<void> {
  const offer = l10n.t('New Case');
  const chosen = await window.showInformationMessage(
    l10n.t('A cell stands in a case: open one as a notebook first.'),
    offer,
  );
  if (chosen === offer) await commands.executeCommand('diag.newCase');
}

function isKind(given: unknown): given is InsertedKind {
  return typeof given === 'string' && Object.hasOwn(cellTemplates, given);
}

async function choose(): Promise<InsertedKind | undefined> {
  const items = insertedKinds.map((kind) => ({ label: kind, description: kinds[kind].meaning }));
  const chosen = await window.showQuickPick(items, {
    title: l10n.t('Insert a Cell'),
    placeHolder: l10n.t('What is it?'),
    matchOnDescription: true,
    ignoreFocusOut: true,
  });
  return chosen?.label;
}

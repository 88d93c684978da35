import {
  commands,
  l10n,
  type NotebookCell,
  NotebookCellKind,
  NotebookRange,
  Range,
  type Uri,
  window,
  workspace,
} from 'vscode';
import { activeCase, isCase } from './notebookType.ts';
import type { ShownResults } from './showResults.ts';

/**
 * Selects the first thing that fails or is wrong: in the cell whose document's uri is given, or, without one,
 * in the next cell of the active notebook that has any, going round.
 */
export async function showFirstFailure(results: ShownResults, uri: unknown): Promise<void> {
  const cell = typeof uri === 'string' ? cellOf(uri) : nextFailing(results);
  const first = cell === undefined ? undefined : results.of(cell)?.status?.first;
  if (cell === undefined || first === undefined) {
    void window.showInformationMessage(l10n.t('Nothing fails in this case.'));
    return;
  }
  const at = new NotebookRange(cell.index, cell.index + 1);
  const editor = await window.showNotebookDocument(cell.notebook, { selections: [at] });
  editor.revealRange(at);
  // A page has no place in the text that stands behind it.
  if (cell.kind === NotebookCellKind.Markup) return;
  const selection = new Range(cell.document.positionAt(first.start), cell.document.positionAt(first.end));
  await showInCell(cell.document.uri, selection);
}

async function showInCell(uri: Uri, selection: Range): Promise<void> {
  await commands.executeCommand('vscode.open', uri, { selection });
}

function cellOf(uri: string): NotebookCell | undefined {
  for (const notebook of workspace.notebookDocuments) {
    const cell = isCase(notebook)
      ? notebook.getCells().find(({ document }) => document.uri.toString() === uri)
      : undefined;
    if (cell !== undefined) return cell;
  }
  return undefined;
}

function nextFailing(results: ShownResults): NotebookCell | undefined {
  const editor = activeCase();
  if (editor === undefined) return undefined;
  const cells = editor.notebook.getCells();
  const after = editor.selection.end;
  return [...cells.slice(after), ...cells.slice(0, after)].find(
    (cell) => results.of(cell)?.status?.first !== undefined,
  );
}

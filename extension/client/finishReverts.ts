import {
  type Disposable,
  type NotebookCellData,
  type NotebookDocument,
  NotebookEdit,
  NotebookRange,
  TabInputNotebook,
  WorkspaceEdit,
  window,
  workspace,
} from 'vscode';
import { isCase, notebookType } from './notebookType.ts';

/**
 * "Revert File" of the editor takes the mark of unsaved changes off a notebook and leaves its cells as they are
 * (microsoft/vscode#180193): what is on disk and what is shown differ, and nothing says so. A notebook that has lost
 * its mark and does not say what its file says is therefore given the file's cells.
 */
export function finishReverts(): Disposable {
  return window.tabGroups.onDidChangeTabs(({ changed }) => {
    for (const { input, isDirty } of changed) {
      if (isDirty || !(input instanceof TabInputNotebook) || input.notebookType !== notebookType) continue;
      const key = input.uri.toString();
      const notebook = workspace.notebookDocuments.find((each) => each.uri.toString() === key);
      if (notebook !== undefined && isCase(notebook) && !notebook.isUntitled) void finishRevert(notebook);
    }
  });
}

async function finishRevert(notebook: NotebookDocument): Promise<void> {
  const { notebookData, notebookFile } = await import('./serializer.ts');
  const bytes = await workspace.fs.readFile(notebook.uri);
  if (notebook.isDirty || notebook.isClosed) return;
  const file = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
  if (notebookFile(notebook) === file) return;
  const wanted = notebookData(file);
  const edit = new WorkspaceEdit();
  edit.set(notebook.uri, [
    NotebookEdit.updateNotebookMetadata(wanted.metadata ?? {}),
    replaceDifferent(notebook, wanted.cells),
  ]);
  // Saving writes what is there already, and takes the mark off again.
  if (await workspace.applyEdit(edit)) await notebook.save();
}

/** Replaces the cells between the first and the last that differ; the others keep their place, folding and results. */
function replaceDifferent(notebook: NotebookDocument, wanted: readonly NotebookCellData[]): NotebookEdit {
  const cells = notebook.getCells();
  const isSame = (at: number, want: number) => {
    const [cell, other] = [cells[at], wanted[want]];
    return (
      cell !== undefined &&
      other !== undefined &&
      cell.kind === other.kind &&
      cell.document.getText().replace(/\r\n?/g, '\n') === other.value.replace(/\r\n?/g, '\n') &&
      JSON.stringify(cell.metadata) === JSON.stringify(other.metadata ?? {})
    );
  };
  const shorter = Math.min(cells.length, wanted.length);
  let head = 0;
  while (head < shorter && isSame(head, head)) head++;
  let tail = 0;
  while (tail < shorter - head && isSame(cells.length - 1 - tail, wanted.length - 1 - tail)) tail++;
  return NotebookEdit.replaceCells(
    new NotebookRange(head, cells.length - tail),
    wanted.slice(head, wanted.length - tail),
  );
}

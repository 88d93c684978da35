import {
  l10n,
  type NotebookCell,
  NotebookCellData,
  NotebookEdit,
  NotebookRange,
  WorkspaceEdit,
  workspace,
} from 'vscode';
import { splitStream } from '../../core/casefile/stream.ts';
import { activeCase, isCase } from './notebookType.ts';

/**
 * Splits a cell at every `---` line that was typed into it, as the file will be split when it is read again.
 * The cell is named by the uri of its document; without one it is the selected cell.
 */
export async function splitCellAtSeparators(uri: unknown): Promise<void> {
  const cell = typeof uri === 'string' ? cellOf(uri) : selectedCell();
  if (cell === undefined) throw new Error(l10n.t('Select a cell of a case first.'));
  const parts = partsOf(cell);
  if (parts.length < 2 && parts[0]?.value === cell.document.getText())
    throw new Error(l10n.t('There is no line `---` in this cell.'));
  const edit = new WorkspaceEdit();
  edit.set(cell.notebook.uri, [
    NotebookEdit.replaceCells(new NotebookRange(cell.index, cell.index + 1), parts),
  ]);
  await workspace.applyEdit(edit);
}

function partsOf(cell: NotebookCell): NotebookCellData[] {
  const text = cell.document.getText();
  // With a line before it, what stands in front of the first `---` is a cell even when it is only a remark.
  const { cells } = splitStream(`---\n${text}`);
  const [first] = cells;
  const parts = first?.text.trim() === '' ? cells.slice(1) : cells;
  return parts.map(({ separator, text }, index) => {
    const part = new NotebookCellData(cell.kind, text, cell.document.languageId);
    part.metadata = index === 0 ? cell.metadata : { separator };
    return part;
  });
}

function cellOf(uri: string): NotebookCell | undefined {
  return workspace.notebookDocuments
    .filter(isCase)
    .flatMap((notebook) => notebook.getCells())
    .find(({ document }) => document.uri.toString() === uri);
}

function selectedCell(): NotebookCell | undefined {
  const editor = activeCase();
  if (editor === undefined || editor.selection.isEmpty) return undefined;
  return editor.notebook.cellAt(editor.selection.start);
}

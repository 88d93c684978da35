import { type Disposable, type NotebookCell, NotebookEdit, WorkspaceEdit, workspace } from 'vscode';
import type { CellMetadata } from '../shared/notebookText.ts';
import { isCase } from './notebookType.ts';

/**
 * The editor copies and pastes a cell without its metadata. Whom a note is for would be lost, and a remark on the
 * `---` line: so a new cell that says word for word what another says, or what one said that was taken out, gets them.
 */
export function keepMetadata(): Disposable {
  const takenOut = new Map<string, CellMetadata>();
  return workspace.onDidChangeNotebookDocument(({ notebook, contentChanges }) => {
    if (!isCase(notebook)) return;
    for (const cell of contentChanges.flatMap(({ removedCells }) => removedCells)) {
      if (!saysMore(cell.metadata)) continue;
      takenOut.set(wordsOf(cell), cell.metadata);
      const [oldest] = takenOut.keys();
      if (takenOut.size > most && oldest !== undefined) takenOut.delete(oldest);
    }
    const edits = contentChanges
      .flatMap(({ addedCells }) => addedCells)
      .filter(({ metadata }) => Object.keys(metadata).length === 0)
      .flatMap((cell) => {
        const words = wordsOf(cell);
        const metadata = twinOf(cell, words)?.metadata ?? takenOut.get(words);
        return metadata === undefined ? [] : NotebookEdit.updateCellMetadata(cell.index, { ...metadata });
      });
    if (edits.length === 0) return;
    const edit = new WorkspaceEdit();
    edit.set(notebook.uri, edits);
    void workspace.applyEdit(edit);
  });
}

const most = 200;

function twinOf(cell: NotebookCell, words: string): NotebookCell | undefined {
  return workspace.notebookDocuments
    .filter(isCase)
    .flatMap((notebook) => notebook.getCells())
    .find((each) => each !== cell && saysMore(each.metadata) && wordsOf(each) === words);
}

/** Whether metadata holds more than every cell has: a note's source, or a remark on the `---` line. */
function saysMore({ source, separator }: CellMetadata): boolean {
  return source !== undefined || (separator !== undefined && separator.trim().length > 3);
}

const wordsOf = ({ kind, document }: NotebookCell): string => `${kind} ${document.getText()}`;

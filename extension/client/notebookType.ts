import { type NotebookDocument, type NotebookEditor, window } from 'vscode';

/** The notebook's type and the language of its cells. */
export const notebookType = 'diag';

/** The case in front of the user, when it is one. */
export function activeCase(): NotebookEditor | undefined {
  const editor = window.activeNotebookEditor;
  return editor !== undefined && isCase(editor.notebook) ? editor : undefined;
}

export const isCase = (notebook: NotebookDocument): boolean => notebook.notebookType === notebookType;

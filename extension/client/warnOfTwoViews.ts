import { commands, Disposable, l10n, type Uri, window, workspace } from 'vscode';
import { isCase, notebookType } from './notebookType.ts';

/**
 * The same file can be open as a notebook and as text, and the editor does not keep the two in step.
 * When both have changes, whichever is saved last would undo the other: say so once, until one of them is saved.
 */
export function warnOfTwoViews(): Disposable {
  const warned = new Set<string>();
  const look = (uri: Uri): void => {
    const key = uri.toString();
    if (!isDirtyTwice(key)) warned.delete(key);
    else if (!warned.has(key)) {
      warned.add(key);
      void warn(uri);
    }
  };
  return Disposable.from(
    workspace.onDidChangeTextDocument(({ document }) => look(document.uri)),
    workspace.onDidSaveTextDocument(({ uri }) => look(uri)),
    workspace.onDidChangeNotebookDocument(({ notebook }) => {
      if (isCase(notebook)) look(notebook.uri);
    }),
    workspace.onDidSaveNotebookDocument(({ uri }) => look(uri)),
  );
}

function isDirtyTwice(key: string): boolean {
  const isIt = (each: { readonly isDirty: boolean; readonly uri: Uri }) =>
    each.isDirty && each.uri.toString() === key;
  return workspace.textDocuments.some(isIt) && workspace.notebookDocuments.some(isIt);
}

async function warn(uri: Uri): Promise<void> {
  const name = uri.path.slice(uri.path.lastIndexOf('/') + 1);
  const text = l10n.t('Show the Text');
  const notebook = l10n.t('Show the Notebook');
  const chosen = await window.showWarningMessage(
    l10n.t(
      '{0} is open as text and as a notebook, and both have changes. They are not kept in step: save one and revert the other, or what is saved last undoes what was saved first.',
      name,
    ),
    text,
    notebook,
  );
  if (chosen === text) await commands.executeCommand('vscode.openWith', uri, 'default');
  if (chosen === notebook) await commands.executeCommand('vscode.openWith', uri, notebookType);
}

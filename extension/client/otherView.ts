import { commands, l10n, TabInputNotebook, TabInputText, Uri, window, workspace } from 'vscode';
import { notebookType } from './notebookType.ts';

/** Shows the case as text, in the place of the notebook. */
export const openAsText = (given: unknown): Promise<void> => openAs('default', given);

/** Shows the case as a notebook, in the place of the text. */
export const openAsNotebook = (given: unknown): Promise<void> => openAs(notebookType, given);

/** The two views are not kept in step, so that what was changed in one is saved before the other opens. */
async function openAs(view: string, given: unknown): Promise<void> {
  const uri = given instanceof Uri ? given : activeUri();
  if (uri === undefined) throw new Error(l10n.t('Open a case first.'));
  if (uri.scheme === 'untitled') {
    throw new Error(l10n.t('Save the case first; then it can be opened in either way.'));
  }
  const open = [...workspace.notebookDocuments, ...workspace.textDocuments].find(
    (each) => each.isDirty && each.uri.toString() === uri.toString(),
  );
  if (open !== undefined && !(await open.save())) return;
  const other = window.tabGroups.all
    .flatMap((group) => group.tabs)
    .filter(({ input }) => (view === 'default' ? isNotebookOf(input, uri) : isTextOf(input, uri)));
  await commands.executeCommand('vscode.openWith', uri, view);
  await window.tabGroups.close(other.filter((tab) => !tab.isDirty));
}

function activeUri(): Uri | undefined {
  const input = window.tabGroups.activeTabGroup.activeTab?.input;
  return input instanceof TabInputNotebook || input instanceof TabInputText ? input.uri : undefined;
}

const isNotebookOf = (input: unknown, uri: Uri): boolean =>
  input instanceof TabInputNotebook && input.uri.toString() === uri.toString();

const isTextOf = (input: unknown, uri: Uri): boolean =>
  input instanceof TabInputText && input.uri.toString() === uri.toString();

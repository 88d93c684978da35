import {
  type Disposable,
  type Tab,
  TabInputNotebook,
  TabInputNotebookDiff,
  type Uri,
  window,
  workspace,
} from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type ShownParams, shownNotification } from '../shared/protocol.ts';
import { isCase } from './notebookType.ts';

/**
 * Tells the server which cases stand in a tab. The editor keeps a notebook open that was opened by a double click
 * after its tab was closed, and its findings would stay in the list of problems, beside those of the same file as text.
 */
export function tellShown(client: Promise<BaseLanguageClient>): Disposable {
  return window.tabGroups.onDidChangeTabs(({ opened, closed }) => {
    const changed = new Set([...opened, ...closed].flatMap(urisOf).map(String));
    const inTabs = new Set(window.tabGroups.all.flatMap(({ tabs }) => tabs.flatMap(urisOf)).map(String));
    for (const notebook of workspace.notebookDocuments) {
      const uri = notebook.uri.toString();
      if (!isCase(notebook) || !changed.has(uri)) continue;
      const params: ShownParams = { uri, shown: inTabs.has(uri) };
      void client.then((each) => each.sendNotification(shownNotification, params));
    }
  });
}

function urisOf({ input }: Tab): readonly Uri[] {
  if (input instanceof TabInputNotebook) return [input.uri];
  return input instanceof TabInputNotebookDiff ? [input.original, input.modified] : [];
}

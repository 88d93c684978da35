import { type Disposable, type ExtensionContext, window, workspace } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import { checkWorkspace } from './checkWorkspace.ts';
import { command } from './command.ts';
import { finishReverts } from './finishReverts.ts';
import { insertCell } from './insertCell.ts';
import { keepMetadata } from './keepMetadata.ts';
import { newCase } from './newCase.ts';
import { notebookType } from './notebookType.ts';
import { openAsNotebook, openAsText } from './otherView.ts';
import { provideStatusItems } from './provideStatusItems.ts';
import { serializer } from './serializer.ts';
import { showFirstFailure } from './showFirstFailure.ts';
import { showResults } from './showResults.ts';
import { splitCellAtSeparators } from './splitCellAtSeparators.ts';
import { warnOfTwoViews } from './warnOfTwoViews.ts';

/**
 * Composes the extension from its parts. `startClient` is the only thing that differs between a desktop and a browser.
 * Nothing here waits for the language server: the editor can show a case before it answers.
 */
export function activateCasebook(
  context: ExtensionContext,
  createClient: (options: LanguageClientOptions) => BaseLanguageClient,
): void {
  const log = window.createOutputChannel('Diagnostic Casebook', { log: true });
  const client = createClient({
    // Cells of a notebook, and files opened as text on any file system.
    documentSelector: [{ notebook: notebookType, language: 'diag' }, { language: 'diag' }],
    outputChannel: log,
  });
  const results = showResults(client, context.extension.id);
  const parts: Disposable[] = [
    log,
    workspace.registerNotebookSerializer(notebookType, serializer, { transientOutputs: true }),
    results,
    provideStatusItems(results),
    keepMetadata(),
    finishReverts(),
    warnOfTwoViews(),
    command('newCase', newCase),
    command('insertCell', insertCell),
    command('openAsText', openAsText),
    command('openAsNotebook', openAsNotebook),
    command('showFirstFailure', (cell) => showFirstFailure(results, cell)),
    command('splitCellAtSeparators', splitCellAtSeparators),
    command('checkWorkspace', () => checkWorkspace(client)),
  ];
  context.subscriptions.push(...parts, { dispose: () => void client.dispose() });
  client
    .start()
    .catch((problem: unknown) => log.error(`The language server did not start: ${String(problem)}`));
}

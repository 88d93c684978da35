import { type Disposable, type ExtensionContext, type NotebookSerializer, window, workspace } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import { type ReadFileParams, type ReadFileResult, readFileRequest } from '../shared/protocol.ts';
import { insertedKinds } from './cellTemplates.ts';
import { checkWorkspace } from './checkWorkspace.ts';
import { command } from './command.ts';
import { finishReverts } from './finishReverts.ts';
import { insertCell } from './insertCell.ts';
import { keepMetadata } from './keepMetadata.ts';
import { lookCloser } from './lookCloser.ts';
import { notebookType } from './notebookType.ts';
import { openAsNotebook, openAsText } from './otherView.ts';
import { provideStatusItems } from './provideStatusItems.ts';
import { showFirstFailure } from './showFirstFailure.ts';
import { showResults } from './showResults.ts';
import { splitCellAtSeparators } from './splitCellAtSeparators.ts';
import { tellShown } from './tellShown.ts';
import { warnOfTwoViews } from './warnOfTwoViews.ts';

/**
 * Composes the extension from its parts. `startClient` is the only thing that differs between a desktop and a browser.
 * Nothing here waits for the language server: the editor can show a case before it answers. What is large (the client
 * of the server, the reading of files) is loaded when it is first needed, after the activation.
 */
export function activateCasebook(
  context: ExtensionContext,
  createClient: (options: LanguageClientOptions) => Promise<BaseLanguageClient>,
): void {
  const log = window.createOutputChannel('Diagnostic Casebook', { log: true });
  const client = soon().then(() =>
    createClient({
      // Cells of a notebook, and files opened as text on any file system.
      documentSelector: [{ notebook: notebookType, language: 'diag' }, { language: 'diag' }],
      outputChannel: log,
    }),
  );
  void client.then((each) =>
    each.onRequest<ReadFileResult, void>(readFileRequest, async (params: ReadFileParams) =>
      (await import('./readCaseFile.ts')).readCaseFile(params),
    ),
  );
  const results = showResults(client, context.extension.id);
  const parts: Disposable[] = [
    log,
    workspace.registerNotebookSerializer(notebookType, lazySerializer, { transientOutputs: true }),
    results,
    provideStatusItems(results),
    lookCloser(client),
    keepMetadata(),
    finishReverts(),
    warnOfTwoViews(),
    tellShown(client),
    command('newCase', async (name) => (await import('./newCase.ts')).newCase(name)),
    command('insertCell', insertCell),
    ...insertedKinds.map((kind) => command(`insertCell.${kind}`, () => insertCell(kind))),
    command('insertCapture', async () => (await import('./insertCapture.ts')).insertCapture(await client)),
    command('openAsText', openAsText),
    command('openAsNotebook', openAsNotebook),
    command('showFirstFailure', (cell) => showFirstFailure(results, cell)),
    command('splitCellAtSeparators', splitCellAtSeparators),
    command('checkWorkspace', async () => checkWorkspace(await client)),
  ];
  context.subscriptions.push(...parts, { dispose: () => void client.then((each) => each.dispose()) });
  client
    .then((each) => each.start())
    .catch((problem: unknown) => log.error(`The language server did not start: ${String(problem)}`));
}

const lazySerializer: NotebookSerializer = {
  deserializeNotebook: async (bytes, cancel) =>
    (await import('./serializer.ts')).serializer.deserializeNotebook(bytes, cancel),
  serializeNotebook: async (data, cancel) =>
    (await import('./serializer.ts')).serializer.serializeNotebook(data, cancel),
};

/** After what is going on now. */
const soon = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

import {
  CodeActionKind,
  type Connection,
  type InitializeParams,
  type InitializeResult,
  TextDocumentSyncKind,
} from 'vscode-languageserver';
import { type FileContent, inMemory } from '../../core/recording/files.ts';
import type { Service } from '../../core/service/service.ts';
import { type ChartWindowParams, chartWindowRequest } from '../shared/chartMessages.ts';
import {
  type CaptureFromFileParams,
  type CaptureFromFileResult,
  type CheckFileParams,
  captureFromFileRequest,
  checkFileRequest,
  forgetFilesNotification,
  type ReadFileParams,
  type ReadFileResult,
  type RecomputeParams,
  readFileRequest,
  recomputeRequest,
  resultsNotification,
  type ShownParams,
  shownNotification,
} from '../shared/protocol.ts';
import { defaultSettings } from '../shared/settings.ts';
import { answerQuestions } from './answerQuestions.ts';
import { FilesOfCases } from './caseFiles.ts';
import { cellsFor } from './cellsFor.ts';
import { chartWindow } from './chartWindow.ts';
import { ClosedFiles } from './closedFiles.ts';
import { inOrder } from './compiledResults.ts';
import { changedText, notebookChangeFrom, notebookFrom, textFileFrom } from './fromLsp.ts';
import type { Host } from './host.ts';
import { changedNotebook } from './notebook.ts';
import { OpenCases } from './openCases.ts';
import { type ServerSettings, settingsFrom } from './settings.ts';
import { diagnosticTo, semanticLegend } from './toLsp.ts';
import { watchFiles } from './watchFiles.ts';

/**
 * The language server: notebooks and files → studies → findings, results and answers.
 * Everything it is made of is put together here; it starts when the connection listens.
 */
export function serve(connection: Connection, service: Service, host: Host): void {
  let client: InitializeParams['capabilities'] = {};
  let cancelRefresh: (() => void) | undefined;

  const cases = new OpenCases(host, service, {
    showFindings: (uri, version, findings) =>
      void connection.sendDiagnostics({
        uri,
        ...(version === undefined ? {} : { version }),
        diagnostics: findings.map(diagnosticTo),
      }),
    showResults: inOrder((results) => void connection.sendNotification(resultsNotification, results)),
    settingsFor,
    filesOf: (uri) => files.of(uri),
    studied: () => {
      watchNamed();
      refreshSoon();
    },
  });
  const files = new FilesOfCases(host, fetchFile, (uri) => cases.filesChanged(uri));
  const watch = watchFiles(connection);
  const closedFiles = new ClosedFiles(
    cases,
    files,
    settingsFor,
    (uri, findings) => void connection.sendDiagnostics({ uri, diagnostics: findings.map(diagnosticTo) }),
  );

  connection.onInitialize(({ capabilities }): InitializeResult => {
    client = capabilities;
    return { capabilities: abilities, serverInfo: { name: 'casebook' } };
  });
  connection.onDidChangeConfiguration(() => cases.settingsChanged());

  connection.onDidOpenTextDocument(({ textDocument }) => {
    closedFiles.forget(textDocument.uri);
    cases.open(textFileFrom(textDocument));
  });
  connection.onDidChangeTextDocument(({ textDocument: { uri, version }, contentChanges }) => {
    const before = cases.textFile(uri);
    if (before !== undefined) {
      cases.change({ ...before, version, text: changedText(before.text, contentChanges) });
    }
  });
  connection.onDidCloseTextDocument(({ textDocument }) => {
    cases.close('text', textDocument.uri);
    releaseFiles();
  });

  const notebooks = connection.notebooks.synchronization;
  notebooks.onDidOpenNotebookDocument(({ notebookDocument, cellTextDocuments }) => {
    closedFiles.forget(notebookDocument.uri);
    cases.open(notebookFrom(notebookDocument, cellTextDocuments));
  });
  notebooks.onDidChangeNotebookDocument(({ notebookDocument: { uri, version }, change }) => {
    const before = cases.notebook(uri);
    if (before !== undefined) {
      cases.change(changedNotebook(before, notebookChangeFrom(version, change, before)));
    }
  });
  notebooks.onDidCloseNotebookDocument(({ notebookDocument }) => {
    cases.close('notebook', notebookDocument.uri);
    releaseFiles();
  });

  connection.onDidChangeWatchedFiles(() => {
    // Only files that cases name are watched, and what has not changed costs no more than a look.
    for (const [uri, named] of cases.filesNamed()) {
      if (named.size === 0) continue;
      files.changed(uri);
      cases.filesChanged(uri);
    }
  });

  connection.onRequest(recomputeRequest, ({ uri }: RecomputeParams) => {
    // Not every file system tells of changes: who asks anew gets the files as they are now.
    files.changed(uri);
    cases.recompute(uri);
    return null;
  });
  connection.onRequest(chartWindowRequest, (params: ChartWindowParams) =>
    chartWindow(cases.ask(params.cell), params),
  );
  connection.onRequest(checkFileRequest, ({ uri, text }: CheckFileParams) => closedFiles.check(uri, text));
  connection.onRequest<CaptureFromFileResult, void>(
    captureFromFileRequest,
    ({ uri, file }: CaptureFromFileParams) => cellsFor(uri, file, cases.openCase(uri)?.study, files),
  );
  connection.onNotification(forgetFilesNotification, () => closedFiles.forgetAll());
  connection.onNotification(shownNotification, ({ uri, shown }: ShownParams) => cases.setShown(uri, shown));

  answerQuestions(connection, service, cases, () => client.textDocument?.definition?.linkSupport === true);

  /** Settings hold for a folder or a file: they are asked for by document. A client that has none gets the defaults. */
  async function settingsFor(scopeUri: string): Promise<ServerSettings> {
    if (client.workspace?.configuration !== true) return defaultSettings;
    try {
      return settingsFrom(await connection.workspace.getConfiguration({ scopeUri, section: 'diag' }));
    } catch {
      return defaultSettings;
    }
  }

  async function fetchFile(uri: string, file: string): Promise<FileContent> {
    try {
      const params: ReadFileParams = { uri, file, as: host.takes };
      const result = await connection.sendRequest<ReadFileResult>(readFileRequest, params);
      if ('why' in result) return { kind: 'none', why: result.why };
      const { content } = result;
      return inMemory(typeof content === 'string' ? fromBase64(content) : content);
    } catch {
      return { kind: 'none', why: { is: 'not readable', reason: 'the editor could not read it' } };
    }
  }

  function releaseFiles(): void {
    const open = cases.filesNamed();
    for (const uri of files.uris()) if (!open.has(uri)) files.release(uri);
    watchNamed();
  }

  /** At once: a file may change as soon as it was read. */
  function watchNamed(): void {
    if (client.workspace?.didChangeWatchedFiles?.dynamicRegistration === true) watch(cases.filesNamed());
  }

  /** Editors ask again for hints and colours of the document that changed, not for those of the other cells. */
  function refreshSoon(): void {
    cancelRefresh?.();
    cancelRefresh = host.later(restOfTyping, () => {
      if (client.workspace?.inlayHint?.refreshSupport === true) connection.languages.inlayHint.refresh();
      if (client.workspace?.semanticTokens?.refreshSupport === true) {
        connection.languages.semanticTokens.refresh();
      }
    });
  }
}

const fromBase64 = (text: string): Uint8Array => Uint8Array.from(atob(text), (each) => each.charCodeAt(0));

/** Milliseconds. */
const restOfTyping = 200;

const abilities: InitializeResult['capabilities'] = {
  positionEncoding: 'utf-16',
  textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
  // No choice of cells: notes count for the numbers of cells and lines.
  notebookDocumentSync: { notebookSelector: [{ notebook: 'diag' }], save: false },
  hoverProvider: true,
  completionProvider: { triggerCharacters: ['.', ':', ' ', '(', '"', '['], resolveProvider: true },
  signatureHelpProvider: { triggerCharacters: ['(', ','], retriggerCharacters: [')'] },
  definitionProvider: true,
  referencesProvider: true,
  documentHighlightProvider: true,
  renameProvider: { prepareProvider: true },
  documentSymbolProvider: true,
  foldingRangeProvider: true,
  semanticTokensProvider: { legend: semanticLegend, full: true, range: false },
  inlayHintProvider: true,
  selectionRangeProvider: true,
  documentLinkProvider: {},
  documentFormattingProvider: true,
  codeActionProvider: {
    codeActionKinds: [
      CodeActionKind.QuickFix,
      CodeActionKind.RefactorRewrite,
      CodeActionKind.RefactorExtract,
    ],
  },
};

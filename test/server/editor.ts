import { PassThrough } from 'node:stream';
import {
  createConnection,
  createProtocolConnection,
  type Diagnostic,
  type InitializeResult,
  type NotebookCell as LspCell,
  NotebookCellKind,
  type NotebookDocumentChangeEvent,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
  type TextDocumentItem,
} from 'vscode-languageserver/node';
import type { Service } from '../../core/service/service.ts';
import type { Host } from '../../extension/server/host.ts';
import { loadCharts } from '../../extension/server/loadCharts.ts';
import { serve } from '../../extension/server/server.ts';
import {
  type NotebookCell,
  type NotebookMetadata,
  readNotebook,
  writeNotebook,
} from '../../extension/shared/notebookText.ts';
import {
  type ResultOfCell,
  type ResultsParams,
  resultsNotification,
} from '../../extension/shared/protocol.ts';

/** What the tests' server runs on: no pause is waited for, and it is known when nothing is put off any more. */
class TestHost implements Host {
  readonly filesBeside: Host['filesBeside'];
  readonly takes = 'base64';
  readonly now = (): number => performance.now();
  readonly #waiting = new Set<NodeJS.Immediate>();

  constructor(filesBeside: Host['filesBeside'] = () => undefined) {
    this.filesBeside = filesBeside;
  }

  get isAtRest(): boolean {
    return this.#waiting.size === 0;
  }

  readonly later = (_pause: number, work: () => void): (() => void) => {
    const timer = setImmediate(() => {
      this.#waiting.delete(timer);
      work();
    });
    this.#waiting.add(timer);
    return () => {
      clearImmediate(timer);
      this.#waiting.delete(timer);
    };
  };
}

interface EditorCell {
  readonly uri: string;
  version: number;
  language: string;
  cell: NotebookCell;
}

interface Options {
  readonly service: Service;
  /** The section `diag` of the settings; they may be changed later with `setSettings`. */
  readonly settings?: object;
  readonly linkSupport?: boolean;
  /** Files that the server can read itself. */
  readonly filesBeside?: Host['filesBeside'];
  readonly watches?: boolean;
}

/** An editor as the server sees one: it speaks the protocol over streams in memory and remembers what it was shown. */
export class Editor {
  readonly connection: ProtocolConnection;
  /** What is shown under each uri; a uri with nothing is left out. */
  readonly findings = new Map<string, readonly Diagnostic[]>();
  /** Every message that came, in order. */
  readonly published: PublishDiagnosticsParams[] = [];
  /** Results as they came, and with those that were sent before. */
  readonly sent: ResultsParams[] = [];
  readonly results: ResultsParams[] = [];
  abilities: InitializeResult['capabilities'] = {};
  readonly #host: TestHost;
  #settings: object;
  /** How many messages came. */
  #heard = 0;
  #texts = new Map<string, { version: number; text: string }>();

  private constructor({ settings = {}, filesBeside }: Options, up: PassThrough, down: PassThrough) {
    this.#settings = settings;
    this.#host = new TestHost(filesBeside);
    this.connection = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
    this.connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
      this.#heard++;
      this.published.push(params);
      if (params.diagnostics.length === 0) this.findings.delete(params.uri);
      else this.findings.set(params.uri, params.diagnostics);
    });
    this.connection.onNotification(resultsNotification, (params: ResultsParams) => {
      this.#heard++;
      const before = this.results.findLast(({ uri }) => uri === params.uri)?.cells ?? [];
      this.sent.push(params);
      this.results.push({ ...params, cells: params.cells.map((each) => completed(each, before)) });
    });
    this.connection.onRequest('workspace/configuration', ({ items }: { items: readonly unknown[] }) => {
      this.#heard++;
      return items.map(() => this.#settings);
    });
  }

  static async start(options: Options): Promise<Editor> {
    // Read before, so that nothing waits for it: when all is worked off, all has come.
    await loadCharts();
    const up = new PassThrough();
    const down = new PassThrough();
    const editor = new Editor(options, up, down);
    const server = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down));
    serve(server, options.service, editor.#host);
    server.listen();
    editor.connection.listen();
    const { capabilities } = await editor.ask<InitializeResult>('initialize', {
      processId: null,
      rootUri: null,
      capabilities: {
        workspace: {
          configuration: true,
          didChangeWatchedFiles: { dynamicRegistration: options.watches === true },
        },
        textDocument: { definition: { linkSupport: options.linkSupport === true } },
      },
    });
    editor.abilities = capabilities;
    await editor.connection.sendNotification('initialized', {});
    return editor;
  }

  ask<R>(method: string, params: object): Promise<R> {
    return this.connection.sendRequest<R>(method, params);
  }

  /** Until everything that was sent before is worked off, with all that follows from it. */
  async settled(): Promise<void> {
    let before = -1;
    while (!this.#host.isAtRest || this.#heard !== before) {
      before = this.#heard;
      // An answer comes after everything that was sent before the question.
      await this.ask('textDocument/documentLink', { textDocument: { uri: 'none:' } });
      await new Promise(setImmediate);
    }
  }

  async setSettings(settings: object): Promise<void> {
    this.#settings = settings;
    await this.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
    await this.settled();
  }

  async openText(uri: string, text: string): Promise<void> {
    this.#texts.set(uri, { version: 1, text });
    await this.connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'diag', version: 1, text },
    });
  }

  /** Replaces the first `from` of a text. */
  async editText(uri: string, from: string, text: string): Promise<void> {
    const held = this.#texts.get(uri);
    const start = held?.text.indexOf(from) ?? -1;
    if (held === undefined || start < 0) throw new Error(`\`${from}\` does not stand in ${uri}.`);
    const range = { start: pointIn(held.text, start), end: pointIn(held.text, start + from.length) };
    held.text = held.text.replace(from, () => text);
    held.version++;
    await this.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri, version: held.version },
      contentChanges: [{ range, text }],
    });
  }

  async closeText(uri: string): Promise<void> {
    this.#texts.delete(uri);
    await this.connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
  }

  async openNotebook(uri: string, text: string): Promise<EditorNotebook> {
    const { metadata, cells } = readNotebook(text);
    const notebook = new EditorNotebook(this.connection, uri, metadata, cells.map(asHeld));
    await notebook.open();
    return notebook;
  }

  /** The same notebook as it stands in another editor, with its cells and their versions. */
  async openCopy({ uri, metadata, cells }: EditorNotebook): Promise<EditorNotebook> {
    const notebook = new EditorNotebook(
      this.connection,
      uri,
      metadata,
      cells.map((each) => ({ ...each })),
    );
    await notebook.open();
    return notebook;
  }
}

/** A result that is not sent is the one that was sent before. */
function completed(now: ResultOfCell, before: readonly ResultOfCell[]): ResultOfCell {
  if (now.result !== undefined) return now;
  const result = before.find(({ cell }) => cell === now.cell)?.result;
  if (result === undefined) throw new Error(`The result of ${now.cell} was never sent.`);
  return { ...now, result };
}

let made = 0;

/** Such uris say nothing of their order. */
function madeCell(cell: NotebookCell): EditorCell {
  made++;
  return {
    uri: `vscode-notebook-cell:/cases/case.diag#W${(made * 7919) % 10007}x${made}`,
    version: 1,
    language: cell.kind === 'note' ? 'markdown' : 'diag',
    cell,
  };
}

/** An editor has one kind of line break in a text and keeps a byte-order mark to itself. */
function asHeld(cell: NotebookCell): EditorCell {
  return madeCell({ ...cell, value: cell.value.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n') });
}

/** A notebook as an editor holds it: it keeps cells, their uris and versions, and tells the server every change. */
export class EditorNotebook {
  readonly uri: string;
  readonly cells: EditorCell[];
  version = 0;
  readonly metadata: NotebookMetadata;
  readonly #connection: ProtocolConnection;

  constructor(connection: ProtocolConnection, uri: string, metadata: NotebookMetadata, cells: EditorCell[]) {
    this.#connection = connection;
    this.uri = uri;
    this.metadata = metadata;
    this.cells = cells;
  }

  /** The file as it would be saved now. */
  get text(): string {
    return writeNotebook({ metadata: this.metadata, cells: this.cells.map((each) => each.cell) });
  }

  uriOf(index: number): string {
    return this.#at(index).uri;
  }

  async open(): Promise<void> {
    await this.#connection.sendNotification('notebookDocument/didOpen', {
      notebookDocument: {
        uri: this.uri,
        notebookType: 'diag',
        version: this.version,
        metadata: this.metadata,
        cells: this.cells.map(lspCell),
      },
      cellTextDocuments: this.cells.map(item),
    });
  }

  /** Replaces the first `from` in a cell's text. */
  async edit(index: number, from: string, to: string): Promise<void> {
    const start = this.#at(index).cell.value.indexOf(from);
    if (start < 0) throw new Error(`\`${from}\` does not stand in the cell.`);
    await this.replace(index, start, start + from.length, to);
  }

  async replace(index: number, start: number, end: number, text: string): Promise<void> {
    const held = this.#at(index);
    const { value } = held.cell;
    held.cell = { ...held.cell, value: value.slice(0, start) + text + value.slice(end) };
    held.version++;
    const changes = [{ range: { start: pointIn(value, start), end: pointIn(value, end) }, text }];
    await this.#tell({
      cells: { textContent: [{ document: { uri: held.uri, version: held.version }, changes }] },
    });
  }

  async insert(index: number, value: string, kind: NotebookCell['kind'] = 'code'): Promise<void> {
    const cell = madeCell({ kind, value, metadata: {} });
    this.cells.splice(index, 0, cell);
    await this.#tell({
      cells: {
        structure: {
          array: { start: index, deleteCount: 0, cells: [lspCell(cell)] },
          didOpen: [item(cell)],
          didClose: [],
        },
      },
    });
  }

  /** A pasted cell brings the metadata of the one that was copied. */
  async copy(from: number, to: number): Promise<void> {
    const cell = madeCell(this.#at(from).cell);
    this.cells.splice(to, 0, cell);
    await this.#tell({
      cells: {
        structure: { array: { start: to, deleteCount: 0, cells: [lspCell(cell)] }, didOpen: [item(cell)] },
      },
    });
  }

  async delete(index: number): Promise<void> {
    const [gone] = this.cells.splice(index, 1);
    if (gone === undefined) throw new Error(`There is no cell ${index}.`);
    await this.#tell({
      cells: {
        structure: { array: { start: index, deleteCount: 1 }, didClose: [{ uri: gone.uri }] },
      },
    });
  }

  /** A move is one replacement of the stretch between the two places; nothing opens or closes. */
  async move(from: number, to: number): Promise<void> {
    const [moved] = this.cells.splice(from, 1);
    if (moved === undefined) throw new Error(`There is no cell ${from}.`);
    this.cells.splice(to, 0, moved);
    const start = Math.min(from, to);
    const count = Math.abs(from - to) + 1;
    await this.#tell({
      cells: {
        structure: {
          array: { start, deleteCount: count, cells: this.cells.slice(start, start + count).map(lspCell) },
          didOpen: [],
          didClose: [],
        },
      },
    });
  }

  /** An editor takes the cell out and puts it back with its new language. */
  async changeLanguage(index: number, language: string): Promise<void> {
    const held = this.#at(index);
    held.language = language;
    held.version++;
    await this.#tell({
      cells: { structure: { array: { start: index, deleteCount: 1 }, didClose: [{ uri: held.uri }] } },
    });
    await this.#tell({
      cells: {
        structure: {
          array: { start: index, deleteCount: 0, cells: [lspCell(held)] },
          didOpen: [item(held)],
        },
      },
    });
  }

  async close(): Promise<void> {
    await this.#connection.sendNotification('notebookDocument/didClose', {
      notebookDocument: { uri: this.uri },
      cellTextDocuments: this.cells.map(({ uri }) => ({ uri })),
    });
  }

  #at(index: number): EditorCell {
    const cell = this.cells[index];
    if (cell === undefined) throw new Error(`There is no cell ${index}.`);
    return cell;
  }

  async #tell(change: NotebookDocumentChangeEvent): Promise<void> {
    this.version++;
    await this.#connection.sendNotification('notebookDocument/didChange', {
      notebookDocument: { uri: this.uri, version: this.version },
      change,
    });
  }
}

function lspCell({ uri, cell }: EditorCell): LspCell {
  return {
    kind: cell.kind === 'note' ? NotebookCellKind.Markup : NotebookCellKind.Code,
    document: uri,
    metadata: { ...cell.metadata },
  };
}

function item({ uri, version, language, cell }: EditorCell): TextDocumentItem {
  return { uri, languageId: language, version, text: cell.value };
}

function pointIn(text: string, offset: number) {
  const lines = text.slice(0, offset).split('\n');
  return { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 };
}

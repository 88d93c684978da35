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
import { serve } from '../../extension/server/server.ts';
import { type NotebookCell, readNotebook, writeNotebook } from '../../extension/shared/notebookText.ts';
import { type ResultsParams, resultsNotification } from '../../extension/shared/protocol.ts';

/** What the tests' server runs on: work that is put off runs when the present message is done. */
export const testHost: Host = {
  now: () => performance.now(),
  later: (pause, work) => {
    if (pause > 0) {
      const timer = setTimeout(work, pause);
      return () => clearTimeout(timer);
    }
    const timer = setImmediate(work);
    return () => clearImmediate(timer);
  },
};

interface EditorCell {
  readonly uri: string;
  version: number;
  language: string;
  cell: NotebookCell;
}

interface Options {
  readonly service: Service;
  readonly host?: Host;
  /** The section `diag` of the settings; they may be changed later with `setSettings`. */
  readonly settings?: object;
  readonly linkSupport?: boolean;
}

/** An editor as the server sees one: it speaks the protocol over streams in memory and remembers what it was shown. */
export class Editor {
  readonly connection: ProtocolConnection;
  /** What is shown under each uri; a uri with nothing is left out. */
  readonly findings = new Map<string, readonly Diagnostic[]>();
  /** Every message that came, in order. */
  readonly published: PublishDiagnosticsParams[] = [];
  readonly results: ResultsParams[] = [];
  abilities: InitializeResult['capabilities'] = {};
  #settings: object;
  #texts = new Map<string, { version: number; text: string }>();
  #notebooks = new Map<string, EditorNotebook>();

  private constructor({ settings = {} }: Options, up: PassThrough, down: PassThrough) {
    this.#settings = settings;
    this.connection = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
    this.connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
      this.published.push(params);
      if (params.diagnostics.length === 0) this.findings.delete(params.uri);
      else this.findings.set(params.uri, params.diagnostics);
    });
    this.connection.onNotification(resultsNotification, (params: ResultsParams) => {
      this.results.push(params);
    });
    this.connection.onRequest('workspace/configuration', ({ items }: { items: readonly unknown[] }) =>
      items.map(() => this.#settings),
    );
  }

  static async start(options: Options): Promise<Editor> {
    const up = new PassThrough();
    const down = new PassThrough();
    const server = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down));
    serve(server, options.service, options.host ?? testHost);
    server.listen();
    const editor = new Editor(options, up, down);
    editor.connection.listen();
    const { capabilities } = await editor.ask<InitializeResult>('initialize', {
      processId: null,
      rootUri: null,
      capabilities: {
        workspace: { configuration: true },
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

  /** Until everything that was sent before is worked off, with the results that follow from it. */
  async settled(): Promise<void> {
    for (let round = 0; round < 4; round++) {
      await this.ask('textDocument/hover', {
        textDocument: { uri: 'none:' },
        position: { line: 0, character: 0 },
      });
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
  async editText(uri: string, from: string, to: string): Promise<void> {
    const held = this.#texts.get(uri);
    if (held === undefined) throw new Error(`${uri} is not open.`);
    const change = changeOf(held.text, from, to);
    held.text = held.text.replace(from, () => to);
    held.version++;
    await this.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri, version: held.version },
      contentChanges: [change],
    });
  }

  async closeText(uri: string): Promise<void> {
    this.#texts.delete(uri);
    await this.connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
  }

  async openNotebook(uri: string, text: string): Promise<EditorNotebook> {
    const notebook = new EditorNotebook(this.connection, uri, text);
    this.#notebooks.set(uri, notebook);
    await notebook.open();
    return notebook;
  }
}

let made = 0;

/** A notebook as an editor holds it: it keeps cells, their uris and versions, and tells the server every change. */
export class EditorNotebook {
  readonly uri: string;
  readonly cells: EditorCell[];
  version = 0;
  readonly #metadata: object;
  readonly #connection: ProtocolConnection;

  constructor(connection: ProtocolConnection, uri: string, text: string) {
    this.#connection = connection;
    this.uri = uri;
    const { metadata, cells } = readNotebook(text);
    this.#metadata = metadata;
    this.cells = cells.map((cell) => this.#made(cell));
  }

  /** The file as it would be saved now. */
  get text(): string {
    return writeNotebook({ metadata: this.#metadata, cells: this.cells.map((each) => each.cell) });
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
        metadata: this.#metadata,
        cells: this.cells.map(lspCell),
      },
      cellTextDocuments: this.cells.map(item),
    });
  }

  /** Replaces the first `from` in a cell's text. */
  async edit(index: number, from: string, to: string): Promise<void> {
    const held = this.#at(index);
    const change = changeOf(held.cell.value, from, to);
    held.cell = { ...held.cell, value: held.cell.value.replace(from, () => to) };
    held.version++;
    await this.#tell({
      cells: {
        textContent: [{ document: { uri: held.uri, version: held.version }, changes: [change] }],
      },
    });
  }

  async insert(index: number, value: string, kind: NotebookCell['kind'] = 'code'): Promise<void> {
    const cell = this.#made({ kind, value, metadata: {} });
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
    const cell = this.#made(this.#at(from).cell);
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

  #made(cell: NotebookCell): EditorCell {
    made++;
    // Such uris say nothing of their order.
    return {
      uri: `vscode-notebook-cell:${this.uri}#W${(made * 7919) % 10007}x${made}`,
      version: 1,
      language: cell.kind === 'note' ? 'markdown' : 'diag',
      cell,
    };
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

function changeOf(text: string, from: string, to: string) {
  const start = text.indexOf(from);
  if (start < 0) throw new Error(`\`${from}\` does not stand in the text.`);
  const point = (offset: number) => {
    const lines = text.slice(0, offset).split('\n');
    return { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 };
  };
  return { range: { start: point(start), end: point(start + from.length) }, text: to };
}

import { PassThrough } from 'node:stream';
import {
  type Connection,
  createConnection,
  createProtocolConnection,
  type DidChangeNotebookDocumentParams,
  type DidOpenNotebookDocumentParams,
  type ProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { readCase } from '../../core/casefile/readCase.ts';
import { service } from '../../core/service/service.ts';
import { collectCell } from '../../core/study/cells/collectCell.ts';
import { noHeader } from '../../core/study/header.ts';
import { parserKnowing } from '../../core/study/source.ts';
import { changedText } from '../../extension/server/fromLsp.ts';
import { serve } from '../../extension/server/server.ts';
import { readNotebook } from '../../extension/shared/notebookText.ts';
import { resultsNotification } from '../../extension/shared/protocol.ts';
import { formatSeconds, report } from './harness.ts';
import { twoHundredCells } from './notebook.ts';

/**
 * The language server on a notebook of two hundred cells, over streams in memory: from the moment a message is handed
 * to the stream until its answer was read from the other one. The floor is a server of the same protocol whose
 * handler only applies the change, reads the one cell anew with its quantities, and answers with a list that it has ready.
 */
const { cells, metadata } = readNotebook(twoHundredCells());
const notebook = 'file:///cases/two-hundred.diag';
const documents = cells.map(({ value }, index) => ({
  uri: `vscode-notebook-cell:${notebook}#${index}`,
  languageId: 'diag',
  version: 1,
  text: value,
}));
if (cells.length < 190) throw new Error(`The notebook has ${cells.length} cells.`);

const opened: DidOpenNotebookDocumentParams = {
  notebookDocument: {
    uri: notebook,
    notebookType: 'diag',
    version: 1,
    metadata: { ...metadata },
    cells: cells.map(({ kind, metadata }, index) => ({
      kind: kind === 'note' ? 1 : 2,
      document: documents[index]?.uri ?? '',
      metadata: { ...metadata },
    })),
  },
  cellTextDocuments: documents,
};

/** What is typed over: a fuel trim in a table in the middle, which is unusual, and on which sums and verdicts of other cells rest. */
const edited = documents.findIndex((each) => each.text.includes('as: before9'));
const editedLine = (documents[edited]?.text.split('\n') ?? []).findIndex((each) =>
  each.startsWith('  ltft_b1   17'),
);
if (editedLine < 0) throw new Error('The reading to type over is not there.');

/** Milliseconds from findings to results, at most: both servers leave it. */
const pause = 5;

interface Served {
  readonly client: ProtocolConnection;
  /** Seconds until the last finding that follows from what is sent now; returns when the results have come, too. */
  readonly timed: (send: () => void) => Promise<number>;
}

async function start(server: (connection: Connection) => void): Promise<Served> {
  const up = new PassThrough();
  const down = new PassThrough();
  const connection = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down));
  server(connection);
  connection.listen();
  const client = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  let lastFinding = Number.NaN;
  let done: () => void = () => {};
  client.onNotification('textDocument/publishDiagnostics', () => {
    lastFinding = performance.now();
  });
  client.onNotification(resultsNotification, () => done());
  client.listen();
  await client.sendRequest('initialize', { processId: null, rootUri: null, capabilities: {} });
  await client.sendNotification('initialized', {});
  return {
    client,
    timed: async (send) => {
      const all = new Promise<void>((resolve) => {
        done = resolve;
      });
      lastFinding = Number.NaN;
      const from = performance.now();
      send();
      await all;
      return (lastFinding - from) / 1000;
    },
  };
}

function whole(connection: Connection): void {
  serve(connection, service, {
    now: () => performance.now(),
    later: (wanted, work) => {
      if (wanted > 0) {
        const timer = setTimeout(work, Math.min(wanted, pause));
        return () => clearTimeout(timer);
      }
      const timer = setImmediate(work);
      return () => clearImmediate(timer);
    },
    filesBeside: () => undefined,
    takes: 'base64',
  });
}

function floor(connection: Connection): void {
  const texts = new Map(documents.map((each) => [each.uri, each.text]));
  const ready = [1, 2].map((line) => ({
    range: { start: { line, character: 2 }, end: { line, character: 9 } },
    message: 'A sentence as long as one that tells of a number and what it usually is in that state.',
  }));
  connection.onInitialize(() => ({ capabilities: {} }));
  connection.notebooks.synchronization.onDidChangeNotebookDocument(({ change: { cells } }) => {
    for (const { document, changes } of cells?.textContent ?? []) {
      const now = changedText(texts.get(document.uri) ?? '', changes);
      texts.set(document.uri, now);
      const [read] = readCase(`---\n${now}\n`).cells;
      const { parse } = parserKnowing(new Map());
      const facts = collectCell(read?.cell, now, edited, noHeader, parse, undefined);
      // What was read decides something, so that no compiler drops the reading.
      const diagnostics = facts.readings.length > 0 ? ready : [];
      void connection.sendDiagnostics({ uri: document.uri, version: document.version, diagnostics });
    }
    setTimeout(() => void connection.sendNotification(resultsNotification, {}), pause);
  });
}

let version = 1;
function keystroke(): DidChangeNotebookDocumentParams {
  version++;
  const range = {
    start: { line: editedLine, character: 12 },
    end: { line: editedLine, character: 14 },
  };
  const document = { uri: documents[edited]?.uri ?? '', version };
  return {
    notebookDocument: { uri: notebook, version },
    change: {
      cells: { textContent: [{ document, changes: [{ range, text: `${15 + (version % 10)}` }] }] },
    },
  };
}

const typed = ({ client, timed }: Served): Promise<number> => {
  const params = keystroke();
  return timed(() => void client.sendNotification('notebookDocument/didChange', params));
};

const open = async ({ client, timed }: Served): Promise<number> =>
  timed(() => void client.sendNotification('notebookDocument/didOpen', opened));

const subject = await start(whole);
const empty = await start(floor);
const openings = [await open(subject)];
for (let more = 0; more < 6; more++) openings.push(await open(await start(whole)));

const rounds = 5;
const keystrokes = 200;
const times = Array.from({ length: rounds }, () => ({ own: [] as number[], floor: [] as number[] }));
for (let warm = 0; warm < 400; warm++) {
  await typed(subject);
  await typed(empty);
}
for (const { own, floor } of times) {
  for (let n = 0; n < keystrokes; n++) {
    own.push(await typed(subject));
    floor.push(await typed(empty));
  }
}

/** Every question at many places: in the first line, in values, in expressions. */
async function asked(method: string): Promise<number[]> {
  const { client } = subject;
  const times: number[] = [];
  for (const { uri, text } of documents) {
    for (const [line, words] of text.split('\n').entries()) {
      if (line % 3 !== 1 || words.length < 8) continue;
      const position = { line, character: words.length - 2 };
      const from = performance.now();
      await client.sendRequest(method, { textDocument: { uri }, position });
      times.push((performance.now() - from) / 1000);
    }
  }
  return times;
}

const quantile = (values: readonly number[], part: number): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length * part)] ?? Number.NaN;

/** A bound that is no one else's cost. */
function most(name: string, rounds: readonly number[], milliseconds: number): void {
  const allowed = `${milliseconds} ms`;
  const bound = { name: allowed, rounds: rounds.map(() => milliseconds / 1000) };
  report(name, [{ name, rounds }, bound], [{ to: allowed, atMost: 1 }], formatSeconds);
}

report(
  `A keystroke in a notebook of ${cells.length} cells until all findings are sent`,
  [
    { name: 'the server', rounds: times.map(({ own }) => quantile(own, 0.5)) },
    { name: 'floor: read one cell, answer', rounds: times.map(({ floor }) => quantile(floor, 0.5)) },
  ],
  [{ to: 'floor: read one cell, answer', atMost: 3 }],
  formatSeconds,
);
most(
  'The same, 95th percentile',
  times.map(({ own }) => quantile(own, 0.95)),
  16,
);
most('Opening it', openings, 150);
most('Opening it for the first time in a process', openings.slice(0, 1), 150);
for (const [name, method] of [
  ['Hover', 'textDocument/hover'],
  ['Completion', 'textDocument/completion'],
] as const) {
  await asked(method);
  const all = await asked(method);
  most(`${name} at ${all.length} places, 95th percentile`, [quantile(all, 0.95)], 5);
}
process.exit();

import { mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { service } from '../../core/service/service.ts';
import { filesBeside } from '../../extension/disk/filesBeside.ts';
import { type ReadFileParams, readFileRequest } from '../../extension/shared/protocol.ts';
import { Editor } from './editor.ts';

const text = `diag: 1
case: A capture
---
capture: Log
as: log
state: cruise
file: log.csv
---
check: Swing
expect:
  - max(log.front) > 0.5 V
`;
const low = 'Time (s),front (V)\n0,0.1\n1,0.4\n';
const high = 'Time (s),front (V)\n0,0.1\n1,0.8\n';

const folder = realpathSync(mkdtempSync(join(tmpdir(), 'casebook-server-')));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What the notebook shows under its cell of checks. */
const shown = (editor: Editor): string => JSON.stringify(editor.results.at(-1)?.cells.at(-1)?.result ?? null);

describe('captures in the editor', () => {
  it('are read by the server where it can, and again when the file changes', async () => {
    const registered: { registrations: { registerOptions: unknown }[] }[] = [];
    const file = join(folder, 'log.csv');
    writeFileSync(file, low);
    const editor = await Editor.start({ service, filesBeside: () => filesBeside(folder), watches: true });
    editor.connection.onRequest('client/registerCapability', (params: (typeof registered)[number]) => {
      registered.push(params);
      return null;
    });
    const uri = pathToFileURL(join(folder, 'case.diag')).href;
    await editor.openNotebook(uri, text);
    await editor.settled();
    expect(shown(editor)).toContain('fails');
    const baseUri = pathToFileURL(folder).href;
    expect(registered.map((each) => each.registrations[0]?.registerOptions)).toEqual([
      { watchers: [{ globPattern: { baseUri, pattern: 'log.csv' } }] },
    ]);

    writeFileSync(file, `${high}2,0.9\n`);
    await editor.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: pathToFileURL(file).href, type: 2 }],
    });
    await editor.settled();
    expect(shown(editor)).toContain('holds');
  });

  it('are asked of the client where the server cannot read', async () => {
    const asked: ReadFileParams[] = [];
    let content = high;
    const editor = await Editor.start({ service });
    editor.connection.onRequest(readFileRequest, (params: ReadFileParams) => {
      asked.push(params);
      return { content: Buffer.from(content).toString('base64') };
    });
    await editor.openNotebook('vscode-vfs://place/cases/case.diag', text);
    await editor.settled();
    await editor.settled();
    expect(asked).toEqual([{ uri: 'vscode-vfs://place/cases/case.diag', file: 'log.csv', as: 'base64' }]);
    expect(shown(editor)).toContain('holds');
    expect([...editor.findings.keys()]).toEqual([]);

    content = low;
    await editor.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [] });
    await editor.settled();
    await editor.settled();
    expect(shown(editor)).toContain('fails');
  });

  it('are none of a case that is not saved', async () => {
    const editor = await Editor.start({ service, filesBeside: () => filesBeside(folder) });
    await editor.openText('untitled:Untitled-1', text);
    await editor.settled();
    expect(editor.findings.get('untitled:Untitled-1')?.map((each) => each.message)).toEqual([
      '`log.csv` cannot be read: the case is not saved yet, and files are looked for beside it. Save the case first.',
    ]);
  });

  it('are read for a case that is only checked', async () => {
    const editor = await Editor.start({ service });
    editor.connection.onRequest(readFileRequest, () => ({
      why: { is: 'outside', how: 'link not resolved' },
    }));
    const counts = await editor.ask('diag/checkFile', { uri: 'vscode-vfs://place/cases/other.diag', text });
    expect(counts).toEqual({ errors: 1, warnings: 0, infos: 0 });
  });

  it('are made cells of for whoever asks, with names that the case does not have', async () => {
    writeFileSync(join(folder, 'log.csv'), 'Time (s),Engine speed (rpm)\n0,780\n1,800\n');
    const editor = await Editor.start({ service, filesBeside: () => filesBeside(folder) });
    const uri = pathToFileURL(join(folder, 'case.diag')).href;
    await editor.openNotebook(uri, text);
    expect(await editor.ask('diag/captureFromFile', { uri, file: 'log.csv' })).toEqual({
      cells: [
        'capture: Log\nas: log_2\n# The engine state it was recorded in, where it was one: `state: warm idle`.\nfile: log.csv\ntime: Time (s)\nchannels:\n  rpm: Engine speed (rpm)',
        'readings: Means of Log\nas: log_2_means\n# These figures stand for one engine state: keep those that do, and say which: `state: warm idle`.\nvalues:\n  rpm: 790 rpm',
      ],
      readAs: 'columns parted by commas, decimal point, one heading row; time from `Time (s)`, in s',
    });
    expect(await editor.ask('diag/captureFromFile', { uri, file: 'gone.csv' })).toEqual({
      why: 'it is not there',
    });
    writeFileSync(join(folder, 'two.csv'), '1,5\n2,5\n3,7\n');
    expect(await editor.ask('diag/captureFromFile', { uri, file: 'two.csv' })).toEqual({
      cells: ['capture: Two\nas: two\nfile: two.csv'],
      asks: 'its line `1,5` can be read in 2 ways: (1) one column, decimal comma: `1.5`; (2) 2 columns, parted by commas, decimal point: `1`, `5`',
    });
  });
});

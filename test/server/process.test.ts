import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  createProtocolConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';

const program = join(import.meta.dirname, '..', '..', 'extension', 'server', 'node.ts');

describe('the server as a process', () => {
  it('speaks over its standard streams and ends when it is told to', async () => {
    const server = spawn(process.execPath, [program, '--stdio'], {
      stdio: ['pipe', 'pipe', 'inherit'],
    });
    const ended = new Promise((resolve) => server.on('exit', resolve));
    const connection = createProtocolConnection(
      new StreamMessageReader(server.stdout),
      new StreamMessageWriter(server.stdin),
    );
    const found = new Promise<PublishDiagnosticsParams>((resolve) =>
      connection.onNotification('textDocument/publishDiagnostics', resolve),
    );
    connection.listen();
    await connection.sendRequest('initialize', { processId: process.pid, rootUri: null, capabilities: {} });
    await connection.sendNotification('initialized', {});
    const uri = 'file:///cases/case.diag';
    const text = 'diag: 1\ncase: x\n---\nreadings: Idle\nvalues:\n  map: 13,1 inHg\n';
    await connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'diag', version: 1, text },
    });
    expect((await found).diagnostics.map((each) => each.code)).toEqual(['decimal-comma']);
    await connection.sendRequest('shutdown');
    await connection.sendNotification('exit');
    expect(await ended).toBe(0);
    connection.dispose();
  }, 30_000);
});

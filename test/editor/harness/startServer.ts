import { type ChildProcess, execFile, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';
import { promisify } from 'node:util';
import { editorServer } from './editorServer.ts';
import { type Profile, withoutEditor } from './environment.ts';

export interface RunningEditor {
  readonly port: number;
  /** The editor's page, without a folder. */
  readonly url: string;
  /** What the server printed so far, for the day that something goes wrong. */
  log(): string;
  stop(): Promise<void>;
}

/**
 * Starts the editor's server on a free port of this machine and waits until it answers. With `runsTests` the page runs
 * the tests that its address names and says when they end; it then keeps its messages out of sight.
 */
export async function startServer(
  { extensions, data }: Profile,
  { runsTests = false } = {},
): Promise<RunningEditor> {
  const server = await editorServer();
  const port = await freePort();
  let printed = '';
  const child = spawn(
    process.execPath,
    [
      server,
      '--host',
      '127.0.0.1',
      '--port',
      `${port}`,
      '--without-connection-token',
      '--accept-server-license-terms',
      ...(runsTests ? ['--enable-smoke-test-driver'] : []),
      '--server-data-dir',
      data,
      '--extensions-dir',
      extensions,
      '--disable-telemetry',
      '--disable-workspace-trust',
    ],
    { stdio: ['ignore', 'pipe', 'pipe'], env: withoutEditor() },
  );
  for (const stream of [child.stdout, child.stderr]) {
    stream.setEncoding('utf8');
    stream.on('data', (text: string) => {
      printed += text;
    });
  }
  const url = `http://127.0.0.1:${port}/`;
  await answering(url, child, () => printed);
  return { port, url, log: () => printed, stop: () => stop(child) };
}

/** Installs an extension archive into a folder of extensions. */
export async function installExtension(archive: string, { extensions, data }: Profile): Promise<void> {
  const server = await editorServer();
  const args = [
    server,
    '--accept-server-license-terms',
    '--server-data-dir',
    data,
    '--extensions-dir',
    extensions,
    '--install-extension',
    archive,
    '--force',
  ];
  const { stdout, stderr } = await promisify(execFile)(process.execPath, args, { env: withoutEditor() });
  if (!/successfully installed/.test(stdout))
    throw new Error(`${archive} was not installed.\n${stdout}${stderr}`);
}

async function answering(url: string, child: ChildProcess, printed: () => string): Promise<void> {
  const patience = AbortSignal.timeout(60_000);
  while (child.exitCode === null) {
    try {
      const { ok } = await fetch(`${url}version`, { signal: patience });
      if (ok) return;
    } catch {
      if (patience.aborted) break;
    }
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  child.kill('SIGKILL');
  throw new Error(`The editor's server did not start.\n${printed()}`);
}

async function freePort(): Promise<number> {
  const probe = createServer().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const address = probe.address();
  probe.close();
  await once(probe, 'close');
  if (address === null || typeof address === 'string') throw new Error('No port could be had.');
  return address.port;
}

async function stop(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null) return;
  child.kill('SIGTERM');
  const patience = setTimeout(() => child.kill('SIGKILL'), 5000);
  await once(child, 'exit');
  clearTimeout(patience);
}

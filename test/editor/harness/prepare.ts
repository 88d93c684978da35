import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { writeArchive } from '../../../extension/build/writeArchive.ts';
import { writeExtension } from '../../../extension/build/writeExtension.ts';
import { captures } from '../suite/longCase.ts';
import { captureOf } from './longCapture.ts';

const root = join(import.meta.dirname, '..', '..', '..');

/** Where an extension host can be: a process beside the editor, or a worker inside the browser. */
export type Host = 'process' | 'web worker';

export interface Prepared {
  /** Everything of this run stands in here. */
  readonly folder: string;
  /** The archive under test. */
  readonly archive: string;
  /** An extension that does nothing but hold the tests. */
  readonly floor: string;
  /** The folder that is opened. */
  readonly workspace: string;
}

/** Makes what a run of the suite needs. `only`: a piece of the names of the tests that are wanted. */
export async function prepare(host: Host, only: string, judgesSpeed: boolean): Promise<Prepared> {
  const folder = freshFolder(host.replace(' ', '-'));
  const archive = await packExtension(folder, host);

  const floor = join(folder, 'floor');
  const entry = host === 'process' ? { main: './empty.js' } : { browser: './empty.js' };
  mkdirSync(floor, { recursive: true });
  writeFileSync(join(floor, 'empty.js'), 'exports.activate = () => {};\n');
  writeFileSync(
    join(floor, 'package.json'),
    JSON.stringify({
      name: 'casebook-floor',
      publisher: 'diagnostic-casebook',
      version: '0.0.0',
      engines: { vscode: '^1.100.0' },
      activationEvents: [],
      ...entry,
    }),
  );
  await build({
    absWorkingDir: root,
    entryPoints: ['test/editor/suite/index.ts'],
    outfile: join(floor, 'tests', 'index.js'),
    bundle: true,
    format: 'cjs',
    platform: host === 'process' ? 'node' : 'browser',
    target: 'es2022',
    external: ['vscode'],
    define: { only: JSON.stringify(only), judgedForSpeed: JSON.stringify(judgesSpeed) },
    sourcemap: 'inline',
    logLevel: 'warning',
  });

  const workspace = join(folder, 'workspace');
  cpSync(join(root, 'samples'), join(workspace, 'samples'), { recursive: true });
  if (judgesSpeed) {
    for (const { file, rows } of Object.values(captures))
      writeFileSync(join(workspace, file), captureOf(rows));
  }
  mkdirSync(join(workspace, '.vscode'), { recursive: true });
  writeFileSync(
    join(workspace, '.vscode', 'settings.json'),
    JSON.stringify({
      'workbench.startupEditor': 'none',
      'chat.disableAIFeatures': true,
      'files.autoSave': 'off',
    }),
  );
  return { folder, archive, floor, workspace };
}

/** An empty folder for one part of a run; what an earlier run left there goes. */
export function freshFolder(name: string): string {
  const folder = join(root, 'out', 'editor', name);
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  return folder;
}

/** The archive that is tested. In a worker it is the shipped one without its `main`: an editor that has a process to offer would take that. */
export async function packExtension(folder: string, host: Host): Promise<string> {
  const extension = join(folder, 'extension');
  await writeExtension(root, extension);
  if (host === 'web worker') changeManifest(extension, ({ main: _, ...rest }) => rest);
  const archive = join(folder, 'casebook.vsix');
  await writeArchive(extension, archive);
  return archive;
}

function changeManifest(folder: string, change: (manifest: Record<string, unknown>) => object): void {
  const file = join(folder, 'package.json');
  writeFileSync(file, JSON.stringify(change(JSON.parse(readFileSync(file, 'utf8')))));
}

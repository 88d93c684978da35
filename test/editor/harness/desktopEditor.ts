import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import {
  downloadAndUnzipVSCode,
  resolveCliArgsFromVSCodeExecutablePath,
  SilentReporter,
} from '@vscode/test-electron';
import type { Ways } from './chooseEditor.ts';
import { type Profile, withoutEditor } from './environment.ts';

const root = join(import.meta.dirname, '..', '..', '..');

/** A desktop build of the same version as the one that the launcher starts; it is kept for the next run. */
export const desktopWays: Ways = {
  download: () =>
    downloadAndUnzipVSCode({
      version: version(),
      cachePath: join(root, '.vscode-test'),
      // Of silence, not of the whole.
      timeout: 10_000,
      reporter: new SilentReporter(),
    }),
  findDisplay: async () => {
    const { DISPLAY = '', WAYLAND_DISPLAY = '' } = process.env;
    if (process.platform === 'linux' && DISPLAY + WAYLAND_DISPLAY === '')
      throw new Error('it is there, but no display to show it on (xvfb-run gives one)');
  },
  start: async (executable) => {
    await commandLine(executable, ['--version']);
  },
};

/** Version 4.139.1 of the package carries version 1.139.1 of the editor. */
export function version(): string {
  const { dependencies } = JSON.parse(
    readFileSync(join(import.meta.dirname, '..', 'install', 'package.json'), 'utf8'),
  ) as { dependencies: { 'code-server': string } };
  return dependencies['code-server'].replace(/^4\./, '1.');
}

export async function installInDesktop(
  executable: string,
  archive: string,
  { extensions, data }: Profile,
): Promise<void> {
  const said = await commandLine(executable, [
    `--extensions-dir=${extensions}`,
    `--user-data-dir=${data}`,
    '--install-extension',
    archive,
    '--force',
  ]);
  if (!/successfully installed/.test(said)) throw new Error(`${archive} was not installed.\n${said}`);
}

async function commandLine(executable: string, args: readonly string[]): Promise<string> {
  const [program = executable, ...own] = resolveCliArgsFromVSCodeExecutablePath(executable, {
    reuseMachineInstall: true,
  });
  const { stdout, stderr } = await promisify(execFile)(program, [...own, ...args], {
    env: withoutEditor(),
    timeout: 60_000,
    shell: process.platform === 'win32',
  });
  return stdout + stderr;
}

import { execFile } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';

const folder = join(import.meta.dirname, '..', 'install');
const workbench = join(folder, 'node_modules', 'code-server', 'lib', 'vscode');
const complete = join(folder, 'node_modules', '.complete');

/**
 * The program that serves the editor, installed when it is not there yet: the package carries it, and the packages
 * that it needs are installed inside. Nothing is compiled and no script of a package runs.
 * Throws with npm's own words when that cannot be done.
 */
export async function editorServer(): Promise<string> {
  const wanted = readFileSync(join(folder, 'package-lock.json'), 'utf8');
  if (!existsSync(complete) || readFileSync(complete, 'utf8') !== wanted) {
    console.log('Installing the editor for the tests …');
    await npm(folder, 'ci', '--ignore-scripts');
    await npm(workbench, 'install', '--omit=dev', '--omit=optional', '--ignore-scripts');
    writeFileSync(complete, wanted);
  }
  const server = join(workbench, 'out', 'server-main.js');
  if (!existsSync(server)) throw new Error(`The editor was installed, but ${server} is not there.`);
  return server;
}

async function npm(cwd: string, ...args: readonly string[]): Promise<void> {
  try {
    await run('npm', [...args, '--no-audit', '--no-fund'], { cwd, timeout: 10 * 60_000, maxBuffer: 1e8 });
  } catch (problem) {
    const { stderr } = problem as { stderr?: string };
    const why = stderr?.trim() || String(problem);
    throw new Error(
      `The editor for the tests could not be installed (npm ${args.join(' ')} in ${cwd}):\n${why}`,
    );
  }
}

const run = promisify(execFile);

import { spawnSync } from 'node:child_process';
import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll } from 'vitest';
import { bundleCommandLine } from '../../extension/build/bundle.ts';

export interface Ended {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

/** The command line as it is shipped, built once for a test file, run in a folder of its own. */
export interface Casebook {
  readonly folder: string;
  /** The file that is started. */
  readonly program: string;
  readonly run: (...args: readonly string[]) => Ended;
}

const root = join(import.meta.dirname, '..', '..');

/** Builds before the tests of a file and cleans up after them. */
export function casebookForTests(): Casebook {
  const scratch = realpathSync(mkdtempSync(join(tmpdir(), 'casebook-cli-')));
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'casebook-cases-')));
  beforeAll(async () => {
    await bundleCommandLine(root, join(scratch, 'dist'));
  }, 60_000);
  afterAll(() => {
    rmSync(scratch, { recursive: true, force: true });
    rmSync(folder, { recursive: true, force: true });
  });
  const program = join(scratch, 'dist', 'casebook.js');
  return {
    folder,
    program,
    run: (...args) => {
      const { status, stdout, stderr, error } = spawnSync(process.execPath, [program, ...args], {
        cwd: folder,
        encoding: 'utf8',
        timeout: 20_000,
        maxBuffer: 1 << 28,
        env: { ...process.env, NODE_DISABLE_COMPILE_CACHE: '1' },
      });
      if (error !== undefined) throw error;
      return { status, out: stdout, err: stderr };
    },
  };
}

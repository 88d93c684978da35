import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, realpathSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Leaves the compiled code of what a check runs beside the program, as a user's own checks leave it in the user's cache:
 * the launcher finds it there first. It fits one version of Node, so it is made with each that the program will likely
 * run under here, and it is no part of what is published.
 *
 * A check of the usual kind comes first, since every function that is kept costs each start a little; then all the
 * samples, whose checks add the files that it did without. Returns the versions of Node.
 */
export function leaveCompiled(root: string, dist: string): readonly string[] {
  const folder = join(dist, 'compiled');
  mkdirSync(folder, { recursive: true });
  // Beside it, so that moving is renaming.
  const caches = mkdtempSync(join(dist, 'caches-'));
  try {
    const samples = join(root, 'samples');
    const versions = nodes().map((node) => {
      for (const cases of [usual, samples]) run(node, [join(dist, 'casebook.js'), 'check', cases], caches);
      return run(node, ['--version'], caches).trim();
    });
    const kept = join(caches, 'casebook');
    for (const file of readdirSync(kept)) {
      renameSync(join(kept, file), join(folder, file));
      // For whoever may run the program.
      chmodSync(join(folder, file), 0o644);
    }
    return versions;
  } finally {
    rmSync(caches, { recursive: true, force: true });
  }
}

/** It says of itself what it is. */
const usual = join(import.meta.dirname, 'usual.diag');

/** The Node that builds, and the one that npm runs on: the machine's own. */
function nodes(): readonly string[] {
  const { npm_node_execpath: ofNpm } = process.env;
  return [...new Set([process.execPath, ...(ofNpm ? [ofNpm] : [])].map((path) => realpathSync(path)))];
}

function run(node: string, args: readonly string[], caches: string): string {
  const { NODE_DISABLE_COMPILE_CACHE: _, NODE_OPTIONS: __, ...inherited } = process.env;
  const env = { ...inherited, XDG_CACHE_HOME: caches };
  const { status, stdout, stderr, error } = spawnSync(node, args, {
    encoding: 'utf8',
    env,
    maxBuffer: 1 << 28,
  });
  if (error !== undefined) throw error;
  // 1: a case has errors, and some samples have them on purpose.
  if (status !== 0 && status !== 1)
    throw new Error(`${node} ${args.join(' ')} ended with status ${status}: ${stderr}`);
  return stdout;
}

import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { machineNode } from '../support/machineNode.ts';
import { fleetCase } from './fleetCase.ts';
import { formatSeconds, report } from './harness.ts';

/**
 * The built command line on one file, from start to exit, against Node doing nothing: under the machine's own Node and
 * under this one; first as after an earlier check, whose compiled code it finds, then as the very first on a machine,
 * which finds nothing and leaves it.
 * The first check is bound under Node 20, whose own start takes as long as all our compiling; Node 24 does nothing in
 * well under half of that time, and there its ratio is shown.
 */
const casebook = join(import.meta.dirname, '..', '..', 'dist', 'casebook.js');
if (!existsSync(casebook)) throw new Error('Build first: npm run build.');
const folder = mkdtempSync(join(tmpdir(), 'casebook-cold-'));
const file = join(folder, 'case.diag');
writeFileSync(file, fleetCase(1));

for (const node of new Set([machineNode(), process.execPath])) {
  const nothing: number[] = [];
  const later: number[] = [];
  const first: number[] = [];
  for (let round = 0; round < 21; round++) {
    nothing.push(seconds(node, ['-e', '0']));
    later.push(seconds(node, [casebook, 'check', file], join(folder, 'cache')));
    first.push(seconds(node, [casebook, 'check', file], join(folder, `cache-${round}`)));
    rmSync(join(folder, `cache-${round}`), { recursive: true });
  }
  const version = spawnSync(node, ['--version'], { encoding: 'utf8' }).stdout.trim();
  const doingNothing = { name: 'node -e 0', rounds: nothing };
  const atMostTwice = [{ to: 'node -e 0', atMost: 2 }];
  report(
    `Command line on one file, cold, Node ${version}`,
    [{ name: 'casebook check', rounds: later }, doingNothing],
    atMostTwice,
    formatSeconds,
  );
  report(
    `The very first one on a machine, Node ${version}`,
    [{ name: 'casebook check', rounds: first }, doingNothing],
    version.startsWith('v20.') ? atMostTwice : [],
    formatSeconds,
  );
}
rmSync(folder, { recursive: true });

function seconds(node: string, args: readonly string[], cache = ''): number {
  const start = performance.now();
  const env = { ...process.env, XDG_CACHE_HOME: cache };
  const { status, stderr } = spawnSync(node, args, { encoding: 'utf8', env });
  const end = performance.now();
  if (status !== 0) throw new Error(`${args.join(' ')} ended with status ${status}: ${stderr}`);
  return (end - start) / 1000;
}

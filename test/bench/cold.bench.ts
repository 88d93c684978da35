import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { machineNode } from '../support/machineNode.ts';
import { fleetCase } from './fleetCase.ts';
import { formatSeconds, report } from './harness.ts';

/** The built command line on one file, from start to exit, against Node doing nothing: under the machine's own Node and under this one. */
const casebook = join(import.meta.dirname, '..', '..', 'dist', 'casebook.js');
if (!existsSync(casebook)) throw new Error('Build first: npm run build.');
const folder = mkdtempSync(join(tmpdir(), 'casebook-cold-'));
const file = join(folder, 'case.diag');
writeFileSync(file, fleetCase(1));

for (const node of new Set([machineNode(), process.execPath])) {
  const nothing: number[] = [];
  const check: number[] = [];
  for (let round = 0; round < 21; round++) {
    nothing.push(seconds(node, ['-e', '0']));
    check.push(seconds(node, [casebook, 'check', file]));
  }
  const version = spawnSync(node, ['--version'], { encoding: 'utf8' }).stdout.trim();
  report(
    `Command line on one file, cold, Node ${version}`,
    [
      { name: 'casebook check', rounds: check },
      { name: 'node -e 0', rounds: nothing },
    ],
    [{ to: 'node -e 0', atMost: 2 }],
    formatSeconds,
  );
}
rmSync(folder, { recursive: true });

function seconds(node: string, args: readonly string[]): number {
  const start = performance.now();
  const { status, stderr } = spawnSync(node, args, { encoding: 'utf8' });
  const end = performance.now();
  if (status !== 0) throw new Error(`${args.join(' ')} ended with status ${status}: ${stderr}`);
  return (end - start) / 1000;
}

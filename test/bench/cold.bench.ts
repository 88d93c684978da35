import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { machineNode } from '../support/machineNode.ts';
import { fleetCase } from './fleetCase.ts';
import { formatSeconds, report } from './harness.ts';

/**
 * The built command line on one file, from start to exit, against Node doing nothing: under the machine's own Node and
 * under this one. First as the build leaves it, with its compiled code; then as it is published, without: after an
 * earlier check, whose compiled code it finds in the user's cache, and as the very first on a machine, which finds
 * nothing and leaves it.
 * That first one is bound under Node 20, whose own start takes as long as all our compiling; Node 24 does nothing in
 * well under half of that time, and there its ratio is shown.
 */
const dist = join(import.meta.dirname, '..', '..', 'dist');
if (!existsSync(join(dist, 'compiled'))) throw new Error('Build first: npm run build.');
const folder = mkdtempSync(join(tmpdir(), 'casebook-cold-'));
const file = join(folder, 'case.diag');
writeFileSync(file, fleetCase(1));
const published = join(folder, 'dist');
cpSync(dist, published, {
  recursive: true,
  filter: (path) => !/[\\/]dist[\\/](compiled|package|extension)$/.test(path),
});

for (const node of new Set([machineNode(), process.execPath])) {
  const version = run(node, ['--version']).trim();
  if (!readdirSync(join(dist, 'compiled')).some((kept) => kept.startsWith(`${version}-`)))
    throw new Error(`The build left no compiled code for Node ${version}: build with npm run build.`);
  const nothing: number[] = [];
  const built: number[] = [];
  const later: number[] = [];
  const first: number[] = [];
  for (let round = 0; round < 21; round++) {
    const fresh = join(folder, `cache-${round}`);
    nothing.push(seconds(node, ['-e', '0']));
    built.push(seconds(node, [join(dist, 'casebook.js'), 'check', file], join(folder, 'unused')));
    later.push(seconds(node, [join(published, 'casebook.js'), 'check', file], join(folder, 'cache')));
    first.push(seconds(node, [join(published, 'casebook.js'), 'check', file], fresh));
    rmSync(fresh, { recursive: true });
  }
  if (existsSync(join(folder, 'unused'))) throw new Error("The build's compiled code was not used.");
  const compare = (what: string, rounds: readonly number[], bound = true) =>
    report(
      `${what}, Node ${version}`,
      [
        { name: 'casebook check', rounds },
        { name: 'node -e 0', rounds: nothing },
      ],
      bound ? [{ to: 'node -e 0', atMost: 2 }] : [],
      formatSeconds,
    );
  compare('Command line on one file, cold, as built', built);
  compare('As published, after an earlier check', later);
  compare('As published, the very first on a machine', first, version.startsWith('v20.'));
}
rmSync(folder, { recursive: true });

function seconds(node: string, args: readonly string[], cache = ''): number {
  const start = performance.now();
  run(node, args, cache);
  return (performance.now() - start) / 1000;
}

function run(node: string, args: readonly string[], cache = ''): string {
  const env = { ...process.env, XDG_CACHE_HOME: cache };
  const { status, stdout, stderr } = spawnSync(node, args, { encoding: 'utf8', env });
  if (status !== 0) throw new Error(`${args.join(' ')} ended with status ${status}: ${stderr}`);
  return stdout;
}

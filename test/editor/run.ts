import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { parseArgs } from 'node:util';
import { runTests } from '@vscode/test-electron';
import { type Host, prepare } from './harness/prepare.ts';
import { installExtension, profileIn } from './harness/startServer.ts';
import { hotExit } from './hotExit.ts';
import type { Outcome } from './suite/testing.ts';

/**
 * `npm run test:editor`: installs the packed extension into a real editor and runs the suite in it, once in an
 * extension host that is a process and once in one that is a worker. Ends with the line "N passed, M failed".
 * With `--speed` (`npm run bench:editor`) the bounds on what it measures are judged too.
 * An editor that cannot be had is a failure with its reason, never a test that is left out.
 */
const { values } = parseArgs({
  options: { host: { type: 'string' }, only: { type: 'string' }, speed: { type: 'boolean' } },
});
const hosts: readonly Host[] = ['process', 'web worker'];
let passed = 0;
let failed = 0;
for (const host of hosts.filter((each) => values.host === undefined || each === values.host)) {
  console.log(`\n== editor, extension host: ${host}`);
  try {
    const outcomes = await runSuite(host);
    passed += outcomes.filter(({ problem }) => problem === null).length;
    failed += outcomes.filter(({ problem }) => problem !== null).length;
  } catch (problem) {
    console.error(problem instanceof Error ? problem.message : problem);
    failed += 1;
  }
}
const results = join(import.meta.dirname, '..', '..', 'out', 'test-results');
mkdirSync(results, { recursive: true });
writeFileSync(join(results, 'editor.json'), `${JSON.stringify({ passed, failed })}\n`);
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 && passed > 0 ? 0 : 1;

async function runSuite(host: Host): Promise<readonly Outcome[]> {
  const { folder, archive, floor, workspace } = await prepare(host, values.only ?? '', values.speed === true);
  const profile = profileIn(folder);
  await installExtension(archive, profile);
  const outcomes = join(workspace, 'outcomes.json');
  const status = await runTests({
    vscodeExecutablePath: join(import.meta.dirname, 'harness', 'launch.ts'),
    extensionDevelopmentPath: floor,
    extensionTestsPath: join(floor, 'tests', 'index.js'),
    // The launcher is started by its first line, and needs the Node that runs this.
    extensionTestsEnv: { PATH: `${dirname(process.execPath)}${delimiter}${process.env.PATH}` },
    launchArgs: [
      workspace,
      `--extensions-dir=${profile.extensions}`,
      `--user-data-dir=${profile.data}`,
      ...(host === 'web worker' ? ['--extensionDevelopmentKind=web'] : []),
    ],
  }).catch((problem: unknown) => problem);
  if (!existsSync(outcomes)) throw new Error(`The tests did not run to their end (${String(status)}).`);
  const report = JSON.parse(readFileSync(outcomes, 'utf8')) as { host: Host; outcomes: readonly Outcome[] };
  if (report.host !== host) throw new Error(`The tests ran in a ${report.host} instead of a ${host}.`);
  if (report.outcomes.length === 0) throw new Error('There was no test to run.');
  if (host !== 'process' || values.only !== undefined) return report.outcomes;
  const closed = await hotExit(folder, profile);
  console.log(`${closed.problem === null ? '✓' : '✗'} ${closed.name} (${closed.milliseconds} ms)`);
  if (closed.problem !== null) console.log(closed.problem);
  return [...report.outcomes, closed];
}

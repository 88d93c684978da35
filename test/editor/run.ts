import { existsSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { parseArgs } from 'node:util';
import { runTests } from '@vscode/test-electron';
import { type ChosenEditor, chooseEditor, editorKind } from './harness/chooseEditor.ts';
import { desktopWays, installInDesktop, version } from './harness/desktopEditor.ts';
import { editorTakenOut, type Profile, profileIn } from './harness/environment.ts';
import { type Host, prepare } from './harness/prepare.ts';
import { installExtension } from './harness/startServer.ts';
import type { Outcome } from './suite/testing.ts';
import { runForSpeed, runInWindow } from './window/runInWindow.ts';

/**
 * `npm run test:editor`: installs the packed extension into a real editor and runs the suite in it, once in an
 * extension host that is a process and once in one that is a worker. Ends with the line "N passed, M failed".
 * The editor is a desktop build where one can be downloaded, otherwise the launcher; `--editor desktop` or
 * `--editor launcher` (or `CASEBOOK_EDITOR`) asks for one of them.
 * With `--speed` (`npm run bench:editor`) the bounds on what it measures are judged too.
 * An editor that cannot be had is a failure with its reason, never a test that is left out.
 */
const { values } = parseArgs({
  options: {
    host: { type: 'string' },
    only: { type: 'string' },
    editor: { type: 'string' },
    speed: { type: 'boolean' },
  },
});
const hosts: readonly Host[] = ['process', 'web worker'];
const outcomes: Outcome[] = [];
try {
  const wanted = editorKind(values.editor ?? process.env.CASEBOOK_EDITOR);
  // Asked once: the answer is the same for every part of a run.
  const editor = await chooseEditor(desktopWays, wanted, 5 * 60_000);
  console.log(
    editor.kind === 'desktop'
      ? `The suite runs in the desktop build ${version()} at ${editor.executable}.`
      : `The suite runs in the workbench ${version()} that an npm package carries, since ${editor.because}.`,
  );
  for (const host of hosts.filter((each) => values.host === undefined || each === values.host)) {
    console.log(`\n== editor, extension host: ${host}`);
    outcomes.push(...(await orFailed(host, runSuite(host, editor))));
  }
  if (values.host === undefined && values.speed !== true) {
    console.log('\n== editor, by hand in its window');
    outcomes.push(...(await orFailed('the window', runInWindow(values.only ?? ''))));
  }
  if (values.speed === true) {
    console.log('\n== editor, speed in its window');
    outcomes.push(...(await orFailed('the window', runForSpeed(values.only ?? ''))));
  }
} catch (problem) {
  console.error(String(problem));
  outcomes.push(failure('choosing an editor', problem));
}
const passed = outcomes.filter(({ problem }) => problem === null).length;
const failed = outcomes.length - passed;
const results = join(import.meta.dirname, '..', '..', 'out', 'test-results');
mkdirSync(results, { recursive: true });
writeFileSync(join(results, 'editor.json'), `${JSON.stringify({ passed, failed })}\n`);
console.log(`\n${passed} passed, ${failed} failed`);
// A download that was given up may still be on its way.
process.exit(failed === 0 && passed > 0 ? 0 : 1);

/** What could not be run to its end is a failure of its own. */
async function orFailed(what: string, run: Promise<readonly Outcome[]>): Promise<readonly Outcome[]> {
  try {
    return await run;
  } catch (problem) {
    console.error(problem instanceof Error ? problem.message : problem);
    return [failure(what, problem)];
  }
}

function failure(name: string, problem: unknown): Outcome {
  return { name, problem: String(problem), milliseconds: 0, statements: 0 };
}

async function runSuite(host: Host, editor: ChosenEditor): Promise<readonly Outcome[]> {
  const { folder, archive, floor, workspace } = await prepare(host, values.only ?? '', values.speed === true);
  const profile = editor.kind === 'desktop' ? shortProfile() : profileIn(folder);
  if (editor.kind === 'desktop') await installInDesktop(editor.executable, archive, profile);
  else await installExtension(archive, profile);
  const outcomes = join(workspace, 'outcomes.json');
  const status = await runTests({
    vscodeExecutablePath:
      editor.kind === 'desktop' ? editor.executable : join(import.meta.dirname, 'harness', 'launch.ts'),
    extensionDevelopmentPath: floor,
    extensionTestsPath: join(floor, 'tests', 'index.js'),
    extensionTestsEnv: {
      ...editorTakenOut(),
      // The launcher is started by its first line, and needs the Node that runs this.
      PATH: `${dirname(process.execPath)}${delimiter}${process.env.PATH}`,
    },
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
  if (report.outcomes.length === 0 && values.only === undefined) throw new Error('There was no test to run.');
  if (status !== 0 && report.outcomes.every(({ problem }) => problem === null))
    throw new Error(`Every test passed, and the editor ended with ${String(status)}.`);
  return report.outcomes;
}

/** A desktop build makes sockets in its folder, whose paths must be short. */
function shortProfile(): Profile {
  return profileIn(mkdtempSync(join(tmpdir(), 'casebook-')));
}

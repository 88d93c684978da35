import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * `npm test`: everything that must hold, in one run; ends with the line "N passed, M failed".
 * A step that fails does not hide the later ones. Each static check counts as one test, and so does the build.
 */
const root = join(import.meta.dirname, '..');
const results = join(root, 'out', 'test-results');
const unitResults = join(results, 'vitest.json');
rmSync(results, { recursive: true, force: true });
mkdirSync(results, { recursive: true });

let passed = 0;
let failed = 0;

step('types', 'tsc', ['--build']);
step('lint', 'biome', ['check', '--error-on-warnings']);
step('dead exports and unused dependencies', 'knip', []);
step('build', 'node', ['extension/build/build.ts']);
const status = run('tests', 'vitest', [
  'run',
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${unitResults}`,
]);
const counted = countTests();
passed += counted.passed;
// An error outside of every test (a file that cannot be loaded, an unhandled rejection) fails the run as well.
failed += status === 0 ? counted.failed : Math.max(1, counted.failed);

// An editor that could not be had or started counts as a failure there, with its reason.
const editorStatus = run('editor', 'node', ['test/editor/run.ts']);
const inEditor = countEditorTests();
passed += inEditor.passed;
failed += editorStatus === 0 ? inEditor.failed : Math.max(1, inEditor.failed);

writeFileSync(join(results, 'summary.json'), `${JSON.stringify({ passed, failed })}\n`);
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 && counted.passed > 0 ? 0 : 1;

function step(what: string, command: string, args: readonly string[]): void {
  if (run(what, command, args) === 0) passed += 1;
  else failed += 1;
}

function run(what: string, command: string, args: readonly string[]): number {
  console.log(`\n== ${what}`);
  const { status, error } = spawnSync(command, args, {
    cwd: root,
    stdio: 'inherit',
    // A test that never returns must not hold up the verdict.
    timeout: 20 * 60_000,
    killSignal: 'SIGKILL',
    shell: process.platform === 'win32',
  });
  if (error !== undefined) console.error(error.message);
  return status ?? 1;
}

function countTests(): { passed: number; failed: number } {
  let text: string;
  try {
    text = readFileSync(unitResults, 'utf8');
  } catch {
    return { passed: 0, failed: 1 };
  }
  const report = JSON.parse(text) as { numPassedTests: number; numTotalTests: number };
  // Whatever was collected and did not pass (skipped, promised) counts as failed.
  return { passed: report.numPassedTests, failed: report.numTotalTests - report.numPassedTests };
}

function countEditorTests(): { passed: number; failed: number } {
  try {
    return JSON.parse(readFileSync(join(results, 'editor.json'), 'utf8')) as {
      passed: number;
      failed: number;
    };
  } catch {
    return { passed: 0, failed: 1 };
  }
}

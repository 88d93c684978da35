import { spawnSync } from 'node:child_process';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type CheckedCase, differences, recordOf, type SampleRecord } from './recorded.ts';

/**
 * `npm start`: checks the samples in the terminal, writes their report, and compares with what each is known to give.
 * `npm run record` writes the record anew; read its difference before committing it.
 * Some samples hold deliberate mistakes, so the check itself ends with status 1; that is in their record.
 */
const root = join(import.meta.dirname, '..', '..');
const recordFile = join(root, 'samples', 'recorded.json');

casebook(['check', 'samples'], 'inherit');
casebook(['report', 'samples', '-o', 'dist/samples.html'], 'inherit');
const { cases } = JSON.parse(casebook(['check', 'samples', '--format', 'json'], 'pipe')) as {
  cases: readonly CheckedCase[];
};
const found = recordOf(cases);

if (process.argv.includes('--record')) {
  await writeFile(recordFile, `${JSON.stringify(found, null, 2)}\n`);
  console.log(`\nRecorded ${cases.length} samples in samples/recorded.json.`);
} else {
  const recorded = JSON.parse(await readFile(recordFile, 'utf8')) as SampleRecord;
  const wrong = differences(recorded, found);
  for (const line of wrong) console.error(line);
  if (cases.length === 0 || wrong.length > 0) {
    console.error('\nThe samples do not give what is recorded in samples/recorded.json.');
    process.exitCode = 1;
  } else {
    console.log(`\nAll ${cases.length} samples give their recorded verdicts and findings.`);
    console.log('Their report is dist/samples.html: open it in a browser.');
  }
}

/** Runs the built command line; status 2 means that it could not do its work. Returns what it printed, if piped. */
function casebook(args: readonly string[], stdout: 'inherit' | 'pipe'): string {
  const {
    status,
    error,
    stdout: printed,
  } = spawnSync(process.execPath, ['dist/casebook.js', ...args], {
    cwd: root,
    stdio: ['ignore', stdout, 'inherit'],
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  if (error !== undefined) throw error;
  if (status !== 0 && status !== 1)
    throw new Error(`casebook ${args.join(' ')} ended with status ${status}.`);
  return printed ?? '';
}

import { dirname, relative, resolve, sep } from 'node:path';
import type { CaseResult, Results } from '../../core/study/results.ts';
import { noCases, type Summary, withCase } from '../../core/study/summary.ts';
import type { Study } from '../../core/study/types.ts';
import { Misunderstood, readArguments } from './arguments.ts';
import { caseText } from './caseText.ts';
import { paintFor } from './color.ts';
import { type CasePath, findCases } from './files.ts';
import { isTerminal, pageWidth, print, tell } from './print.ts';
import { showProgress } from './progress.ts';
import { readText } from './readText.ts';
import { studyFile } from './studyFile.ts';
import { meantText, summaryText } from './summaryText.ts';

/** `casebook check PATHS…`: 0 when all is well, 1 when a case has an error or a repair is not proven. */
export async function check(words: readonly string[]): Promise<number> {
  const { paths, options } = readArguments(words, {
    format: { type: 'string' },
    strict: { type: 'boolean' },
    record: { type: 'string' },
    recorded: { type: 'string' },
  });
  const json = isJson(options.format);
  const cases = await findCases(paths);
  const { record, recorded } = options;
  const asData = json || typeof record === 'string' || typeof recorded === 'string';
  const data = asData ? await import('../../core/study/results.ts') : undefined;
  if (typeof record === 'string') (await import('./writeOutput.ts')).keepFromCases(record, cases, '.json');
  const results: CaseResult[] = [];
  let summary = noCases;
  let inOrder = true;
  const paint = await paintFor(isTerminal(1));
  const width = pageWidth(1);
  const progress = showProgress(cases.length);
  for (const each of cases) {
    progress.next();
    const study = studyFile(each.path);
    if (!isInOrder(study, options.strict === true)) inOrder = false;
    summary = withCase(summary, study);
    if (data !== undefined) results.push(data.caseResult(study, each.name));
    if (!json) print(`${caseText(study, each.name, paint, width)}\n`);
  }
  progress.end();
  if (json) {
    const whole: Results = { version: 1, cases: results, summary };
    print(`${JSON.stringify(whole, undefined, 2)}\n`);
  } else {
    print(summaryText(summary));
  }
  if (typeof record === 'string') await keepRecord(record, results, cases);
  if (typeof recorded === 'string') return compareWithRecord(recorded, results, cases, summary);
  return inOrder ? 0 : 1;
}

function isJson(format: string | boolean | undefined): boolean {
  if (format === undefined || format === 'text') return false;
  if (format === 'json') return true;
  throw new Misunderstood(`\`--format\` is \`text\` or \`json\`, not \`${format}\`.`);
}

/** An expectation that fails is a finding about the car. An error, or a repair that is not proven, is not in order. */
function isInOrder({ findings, expectations }: Study, strict: boolean): boolean {
  if (findings.some((each) => each.diagnostic.severity === 'error')) return false;
  return expectations.every(({ part, truth, showsFault }) => {
    if (part === 'verify') return truth.verdict === 'holds';
    return !(strict && part === 'expect' && truth.verdict === 'fails' && !showsFault);
  });
}

/** Records call a case by its path from the record's own folder, so that they hold wherever one stands. */
function seenFrom(record: string, results: readonly CaseResult[], cases: readonly CasePath[]): CaseResult[] {
  const folder = dirname(resolve(record));
  return results.map((result, at) => {
    const path = cases[at]?.path;
    return path === undefined ? result : { ...result, file: relative(folder, path).split(sep).join('/') };
  });
}

async function keepRecord(
  record: string,
  results: readonly CaseResult[],
  cases: readonly CasePath[],
): Promise<void> {
  const { recordOf } = await import('./recorded.ts');
  const { writeOutput } = await import('./writeOutput.ts');
  writeOutput(record, `${JSON.stringify(recordOf(seenFrom(record, results, cases)), undefined, 2)}\n`);
  tell(`Recorded ${results.length} ${results.length === 1 ? 'case' : 'cases'} in ${record}.\n`);
}

async function compareWithRecord(
  record: string,
  results: readonly CaseResult[],
  cases: readonly CasePath[],
  summary: Summary,
): Promise<number> {
  const { differences, parseRecord, recordOf } = await import('./recorded.ts');
  const kept = parseRecord(readText(record));
  if (kept === undefined)
    throw new Misunderstood(`\`${record}\` is no record; \`--record ${record}\` writes one.`);
  const wrong = differences(kept, recordOf(seenFrom(record, results, cases)));
  if (wrong.length === 0) {
    tell(`All is as recorded in ${record}${meantText(summary)}.\n`);
    return 0;
  }
  tell(`${wrong.join('\n')}\nNot as recorded in ${record}.\n`);
  return 1;
}

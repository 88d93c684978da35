import { dirname } from 'node:path';
import { drawChart } from '../charts/drawChart.ts';
import { Misunderstood, readArguments } from './arguments.ts';
import { findCases } from './files.ts';
import { picturesBeside } from './pictures.ts';
import { tell } from './print.ts';
import { showProgress } from './progress.ts';
import { studyFile } from './studyFile.ts';
import { keepFromCases, writeOutput } from './writeOutput.ts';

/** `casebook report PATHS… -o FILE`: one HTML file of all cases. */
export async function report(words: readonly string[]): Promise<number> {
  const { paths, options } = readArguments(words, {
    output: { type: 'string', short: 'o' },
    title: { type: 'string' },
  });
  const { output, title } = options;
  if (typeof output !== 'string') {
    throw new Misunderstood('Where to? Name the file to write: `casebook report cases -o cases.html`.');
  }
  const cases = await findCases(paths);
  keepFromCases(output, cases, '.html');
  const { writeReport } = await import('../../core/report/html/report.ts');
  const progress = showProgress(cases.length);
  function* studied() {
    for (const { path, name } of cases) {
      progress.next();
      yield { study: studyFile(path), file: name, pictures: picturesBeside(dirname(path)), drawChart };
    }
  }
  const html = writeReport(studied(), typeof title === 'string' ? { title } : {});
  progress.end();
  writeOutput(output, html);
  if (output !== '-') {
    tell(`${output}: ${cases.length} ${cases.length === 1 ? 'case' : 'cases'}.\n`);
  }
  return 0;
}

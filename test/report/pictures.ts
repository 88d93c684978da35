import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { writeReport } from '../../core/report/html/report.ts';
import { noCases, withCase } from '../../core/study/summary.ts';
import { drawChart } from '../../extension/charts/drawChart.ts';
import { caseText } from '../../extension/cli/caseText.ts';
import { paintFor } from '../../extension/cli/color.ts';
import { studyFile } from '../../extension/cli/studyFile.ts';
import { summaryText } from '../../extension/cli/summaryText.ts';
import { openBrowser } from '../editor/harness/openBrowser.ts';
import { ansiMarkup, plainText } from './ansiMarkup.ts';

/**
 * `npm run pictures:report`, after a build: draws the README's two pictures from what the program writes,
 * a case as a page and the terminal's output.
 */
const root = join(import.meta.dirname, '..', '..');
const target = join(root, 'samples', 'pictures');
const sample = 'samples/plenum-leak.diag';

/** Of the report these cells are drawn, by number; a dotted line stands where cells are left out. */
const cellsDrawn = [1, 6, 7, 11];

/** Columns of the terminal that is drawn. */
const columns = 100;

/** Of the terminal so many lines: the first checks. */
const linesDrawn = 35;

mkdirSync(target, { recursive: true });
const browser = await openBrowser();
try {
  const page = await browser.newPage({ viewport: { width: 1100, height: 800 }, colorScheme: 'light' });
  await drawReport(page);
  await drawTerminal(page);
} finally {
  await browser.close();
}

async function drawReport(page: Page): Promise<void> {
  const study = studyFile(join(root, sample));
  await page.setContent(writeReport([{ study, file: sample, pictures: () => undefined, drawChart }]));
  const left = study.file.cells.map((_, at) => at + 1).filter((number) => !cellsDrawn.includes(number));
  const hidden = left.map((number) => `#case-1-cell-${number}`).join(', ');
  const cut = cellsDrawn
    .filter((number) => left.includes(number - 1))
    .map((number) => `#case-1-cell-${number}`)
    .join(', ');
  await page.addStyleTag({
    content: `${hidden}, .answers, footer { display: none !important; }
${cut} { border-top: 2px dotted var(--rule); padding-top: 1.4rem; }
body { padding-bottom: 2rem !important; }`,
  });
  await page.locator('body').screenshot({ path: join(target, 'report-light.png') });
  console.log('Drew samples/pictures/report-light.png');
}

async function drawTerminal(page: Page): Promise<void> {
  const study = studyFile(join(root, sample));
  const textFor = async (width: number): Promise<string> =>
    `${caseText(study, sample, await paintFor(true), width)}\n${summaryText(withCase(noCases, study))}`;
  const { stdout } = spawnSync(process.execPath, ['dist/casebook.js', 'check', sample], {
    cwd: root,
    encoding: 'utf8',
  });
  if (plainText(await textFor(Number.POSITIVE_INFINITY)).trim() !== stdout.trim())
    throw new Error('The built command writes something else: run `npm run build` first.');
  const lines = (await textFor(columns)).split('\n').slice(0, linesDrawn).join('\n');
  await page.setContent(`<!doctype html><meta charset="utf-8"><style>
body { margin: 0; background: #fff; }
pre { box-sizing: border-box; width: 1000px; margin: 0; padding: 24px 28px; color: #1f1e1a; background: #f6f5f1;
  font: 15px/1.5 "Liberation Mono", "DejaVu Sans Mono", monospace; white-space: pre-wrap; }
</style><pre>$ casebook check ${sample}\n\n${ansiMarkup(lines)}</pre>`);
  await page.locator('pre').screenshot({ path: join(target, 'terminal.png') });
  console.log('Drew samples/pictures/terminal.png');
}

import { noFormat } from '../../../core/recording/layout.ts';
import { layoutOf, recordingOf } from '../../../core/recording/recording.ts';
import { readFileBeside } from '../../../extension/disk/fileBeside.ts';
import { captureOf } from '../harness/longCapture.ts';
import { captures, caseOf } from '../suite/longCase.ts';
import type { OpenedWindow } from './openedWindow.ts';
import type { WindowTest } from './runInWindow.ts';

const rounds = 3;

/** A case whose results are words and a table: what the editor itself takes to open a notebook and show an output. */
const plain = `diag: 1
case: Words
---
readings: Idle
as: idle
values:
  map: 13.1 inHg
---
check: Is it low?
expect:
  - idle.map < 15 inHg
`;

const numbers = Array.from({ length: rounds }, (_, round) => round);

/** What is judged where a person looks: on the page. */
export const speedTests: readonly WindowTest[] = [
  {
    name: 'the first chart of a million rows is drawn on the page',
    files: {
      ...Object.fromEntries(Object.values(captures).map(({ file, rows }) => [file, captureOf(rows)])),
      'warm.diag': plain,
      ...Object.fromEntries(numbers.map((round) => [`plain${round}.diag`, plain])),
      ...Object.fromEntries(numbers.map((round) => [`long${round}.diag`, caseOf('trace', captures.long)])),
      ...Object.fromEntries(numbers.map((round) => [`short${round}.diag`, caseOf('trace', captures.short)])),
    },
    run: async (window) => {
      await timeToShow(window, 'warm.diag', '.page .verdict');
      const beyond: number[] = [];
      for (const round of numbers) {
        const reading = timeToRead(window.folder);
        const words = await timeToShow(window, `plain${round}.diag`, '.page .verdict');
        const long = await timeToShow(window, `long${round}.diag`, drawnLine);
        const short = await timeToShow(window, `short${round}.diag`, drawnLine);
        const [drawn, less, said, read] = [long, short, words, reading].map((each) => each.toFixed(0));
        console.log(
          `  drawn after ${drawn} ms, ${less} ms with 2000 rows, words after ${said} ms; reading takes ${read} ms`,
        );
        beyond.push(long - words - reading);
      }
      const middle = beyond.toSorted((a, b) => a - b)[rounds >> 1] ?? Number.NaN;
      window.measured('a chart beyond words and reading, the median', middle, 500);
    },
  },
];

/** A line of a chart. */
const drawnLine = '.plot svg path[stroke*=ink]';

/** Milliseconds from the double click on a file until something stands in an output of its notebook. */
async function timeToShow(window: OpenedWindow, file: string, what: string): Promise<number> {
  const output = window.page.frameLocator('iframe.webview.ready').frameLocator('#active-frame');
  const start = performance.now();
  await window.openFile(file);
  await window.sees(what, output.locator(what).first());
  const lasted = performance.now() - start;
  await window.command('View: Close All Editors');
  await window.page.locator('.notebook-editor').first().waitFor({ state: 'hidden' });
  return lasted;
}

/** Milliseconds that reading the file and scanning all of its columns takes by itself. */
function timeToRead(folder: string): number {
  const start = performance.now();
  const content = readFileBeside(folder, captures.long.file);
  if (content.kind !== 'bytes') throw new Error(`The file cannot be read: ${content.why.is}`);
  const layout = layoutOf(content, noFormat);
  if ('is' in layout) throw new Error(`The file is not clear: ${layout.is}`);
  const asWritten = { unit: undefined, factor: 1, offset: 0, clock: undefined, fromFirst: false };
  const wanted = layout.headings.map((_, column) => ({ column, ...asWritten }));
  const { rows } = recordingOf(content, layout, wanted);
  if (rows !== captures.long.rows) throw new Error(`There are ${rows} rows.`);
  return performance.now() - start;
}

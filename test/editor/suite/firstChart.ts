import * as vscode from 'vscode';
import { inMemory } from '../../../core/recording/files.ts';
import { noFormat } from '../../../core/recording/layout.ts';
import { layoutOf, recordingOf } from '../../../core/recording/recording.ts';
import { resultMime } from '../../../extension/shared/resultMime.ts';
import { closeEverything, folder, openCase, resultOf } from './caseInEditor.ts';
import { captures, caseOf, chartKinds } from './longCase.ts';
import { holds, isProcess, judgesSpeed, measured, test, until } from './testing.ts';

const rounds = 5;

/**
 * From opening a case to the chart in its cell's outputs: the study, the drawing, their way to the editor, and what the
 * editor itself takes to open a notebook. What reading takes by itself is measured just before, in this process; the
 * same case with a short capture tells how much of the rest has to do with the length.
 * The first time counts what draws charts being read; the editor and the server have been started before.
 * Where the editor hands over files by messages (a worker), those take seconds, and nothing could be told apart.
 */
if (judgesSpeed && isProcess) {
  for (const kind of chartKinds) {
    test(`from opening a million rows to the first chart: ${kind}`, async () => {
      await untilWords();
      const times: Times[] = [];
      for (let round = 0; round < rounds; round++) {
        const reading = await timeOf(readAndScan);
        const long = await timeOf(() => untilChart(caseOf(kind, captures.long)));
        await closeEverything();
        const short = await timeOf(() => untilChart(caseOf(kind, captures.short)));
        await closeEverything();
        times.push({ reading, long, short });
      }
      const beyond = ({ long, reading }: Times): number => long - reading;
      const sorted = times.toSorted((a, b) => beyond(a) - beyond(b));
      const told = [
        ['the first time', times[0]],
        ['the median', sorted[rounds >> 1]],
      ] as const;
      for (const [which, each] of told) tell(`${kind}, ${which}`, each);
      for (const [which, each] of told)
        measured(`${kind}, ${which}, beyond reading`, each === undefined ? Number.NaN : beyond(each), 500);
    });
  }
}

/** Milliseconds. */
interface Times {
  readonly reading: number;
  readonly long: number;
  readonly short: number;
}

function tell(which: string, times: Times | undefined): void {
  if (times === undefined) throw new Error('Nothing was measured.');
  const { reading, long, short } = times;
  const [read, shown, less] = [reading, long, short].map((each) => each.toFixed(0));
  console.log(
    `[casebook]   ${which}: shown after ${shown} ms, ${less} ms with 2000 rows; reading takes ${read} ms`,
  );
}

/** The server may have to start first, and the editor to show its first notebook. */
async function untilWords(): Promise<void> {
  const opened = await openCase('diag: 1\n---\ncheck: A\nexpect:\n  - 1 < 2\n');
  await until('the verdict', () => resultOf(opened.cell(1)));
  await closeEverything();
}

async function untilChart(text: string): Promise<void> {
  const opened = await openCase(text);
  await until('the chart', () => hasChart(opened.cell(1)), 30_000);
}

async function timeOf(work: () => Promise<void>): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

/** What cannot be saved: the bytes, and the scan of every column. */
async function readAndScan(): Promise<void> {
  const place = vscode.Uri.joinPath(folder(), captures.long.file);
  const content = inMemory(await vscode.workspace.fs.readFile(place));
  const layout = layoutOf(content, noFormat);
  if ('is' in layout) throw new Error(`The file is not clear: ${layout.is}`);
  const wanted = layout.headings.map((_, column) => ({
    column,
    unit: undefined,
    factor: 1,
    offset: 0,
    clock: undefined,
    fromFirst: false,
  }));
  holds(recordingOf(content, layout, wanted).rows === captures.long.rows, 'every row is read');
}

/** Whether a drawing that was compiled stands among a cell's outputs. */
function hasChart({ outputs }: vscode.NotebookCell): boolean {
  const item = outputs[0]?.items.find(({ mime }) => mime === resultMime);
  if (item === undefined) return false;
  const { blocks } = JSON.parse(new TextDecoder().decode(item.data)) as {
    readonly blocks: readonly { readonly kind: string; readonly spec?: unknown }[];
  };
  return blocks.some((each) => each.kind === 'chart' && each.spec !== undefined);
}

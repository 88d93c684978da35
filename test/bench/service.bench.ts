import { checkCase } from '../../core/rules/checkCase.ts';
import { service } from '../../core/service/service.ts';
import type { Study } from '../../core/study/types.ts';
import { formatSeconds, report } from './harness.ts';
import { twoHundredCells } from './notebook.ts';

/**
 * Questions of an editor in a notebook of two hundred cells: the first one after a key was pressed,
 * when nothing about the new text is known yet but what the study itself says.
 */
const text = twoHundredCells();
const reading = /ltft_b1 {3}\d+/g;
const at = [...text.matchAll(reading)][9]?.index;
if (at === undefined) throw new Error('The reading to type over is not there.');
let study: Study = checkCase(text);

/** The study after the next key, and the check in the middle that is asked about. */
function afterKey(round: number): { readonly study: Study; readonly cell: number; readonly offset: number } {
  const digits = `${10 + (Math.abs(round) % 80)}`;
  study = checkCase(text.slice(0, (at ?? 0) + 10) + digits + text.slice((at ?? 0) + 12), study);
  const cell = study.file.cells.findIndex(
    (each, index) => index > 100 && each.cell?.kind === 'check' && each.raw.text.includes('total_trim('),
  );
  const offset = (study.file.cells[cell]?.raw.text.indexOf('total_trim(') ?? 0) + 11;
  return { study, cell, offset };
}

/** Milliseconds are told at the 95th percentile, against the limit itself. */
function asked(name: string, limit: number, question: (at: ReturnType<typeof afterKey>) => number): void {
  const times: number[] = [];
  for (let round = -50; round < 300; round++) {
    const place = afterKey(round);
    const from = performance.now();
    const answers = question(place);
    const taken = (performance.now() - from) / 1000;
    if (answers === 0) throw new Error(`${name}: there was no answer.`);
    if (round >= 0) times.push(taken);
  }
  times.sort((a, b) => a - b);
  const slow = times[Math.floor(times.length * 0.95)] ?? Number.NaN;
  const middle = times[times.length >> 1] ?? Number.NaN;
  report(
    `${name} in a notebook of ${study.file.cells.length} cells (median ${formatSeconds(middle)})`,
    [
      { name: `${name}, 95th percentile`, rounds: [slow] },
      { name: 'the limit', rounds: [limit] },
    ],
    [{ to: 'the limit', atMost: 1 }],
    formatSeconds,
  );
}

asked(
  'Hover',
  0.005,
  ({ study: now, cell, offset }) => service.hover(now, cell, offset)?.markdown.length ?? 0,
);
asked(
  'Completion',
  0.005,
  ({ study: now, cell, offset }) => service.completions(now, cell, offset).items.length,
);

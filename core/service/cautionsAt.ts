import type { Cell } from '../casefile/cell.ts';
import type { Caution, Paragraph } from '../report/blocks.ts';
import { workOf } from '../report/casePage.ts';
import { cautionBlocks } from '../report/cautionBlocks.ts';
import { type Called, cautionsOf } from '../report/cautions.ts';
import { words } from '../report/cells/cellContext.ts';
import type { Reading, Study } from '../study/types.ts';
import { partsOf } from './cellParts.ts';

type CautionBlock = Caution | Paragraph;

const known = new WeakMap<Study, ReadonlyMap<number, readonly CautionBlock[]>>();

/** What is said before a cell's step, as in the report: in full where a case first comes to it, later as a line that points back. */
export function cautionsAt(study: Study, cell: number): readonly CautionBlock[] {
  let cautions = known.get(study);
  if (cautions === undefined) {
    cautions = collect(study);
    known.set(study, cautions);
  }
  return cautions.get(cell) ?? [];
}

/** The words of a block: two that say the same are as good as one. */
export function saidIn(block: CautionBlock): string {
  if (block.kind === 'caution') return block.title;
  return block.runs.map((run) => (typeof run === 'string' ? run : Object.values(run)[0])).join('');
}

/** Which cautions a cell brings takes many patterns: it is kept while nothing that it is told from has changed. */
const brought = new WeakMap<Cell, { readonly of: readonly Reading[]; readonly called: readonly Called[] }>();

function calledBy(cell: Cell, readings: readonly Reading[]): readonly Called[] {
  const before = brought.get(cell);
  if (before?.of.length === readings.length && before.of.every((each, at) => each === readings[at]))
    return before.called;
  const called = cautionsOf(workOf(cell, { readings }));
  brought.set(cell, { of: readings, called });
  return called;
}

function collect(study: Study): ReadonlyMap<number, readonly CautionBlock[]> {
  const given = new Map<string, string>();
  const found = new Map<number, readonly CautionBlock[]>();
  study.file.cells.forEach(({ cell }, index) => {
    if (cell === undefined) return;
    const blocks = cautionBlocks(calledBy(cell, partsOf(study, index).readings), given, words(cell.title));
    if (blocks.length > 0) found.set(index, blocks);
  });
  return found;
}

import type { Caution, Paragraph } from '../report/blocks.ts';
import { workOf } from '../report/casePage.ts';
import { cautionBlocks } from '../report/cautionBlocks.ts';
import { words } from '../report/cells/cellContext.ts';
import type { Study } from '../study/types.ts';
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

function collect(study: Study): ReadonlyMap<number, readonly CautionBlock[]> {
  const given = new Map<string, string>();
  const found = new Map<number, readonly CautionBlock[]>();
  study.file.cells.forEach(({ cell }, index) => {
    if (cell === undefined) return;
    const blocks = cautionBlocks(workOf(cell, partsOf(study, index)), given, words(cell.title));
    if (blocks.length > 0) found.set(index, blocks);
  });
  return found;
}

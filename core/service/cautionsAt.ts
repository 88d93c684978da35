import type { Cell } from '../casefile/cell.ts';
import type { Caution, Paragraph } from '../report/blocks.ts';
import { workOf } from '../report/casePage.ts';
import { cautionBlocks } from '../report/cautionBlocks.ts';
import { type Called, cautionsOf } from '../report/cautions.ts';
import { words } from '../report/cells/cellContext.ts';
import type { Reading, Study } from '../study/types.ts';

type CautionBlock = Caution | Paragraph;

const none: readonly CautionBlock[] = [];

const known = new WeakMap<Study, ReadonlyMap<number, readonly CautionBlock[]>>();

/** What is said before a cell's step, as in the report: in full where a case first comes to it, later as a line that points back. */
export function cautionsAt(study: Study, cell: number): readonly CautionBlock[] {
  let cautions = known.get(study);
  if (cautions === undefined) {
    cautions = collect(study);
    known.set(study, cautions);
  }
  return cautions.get(cell) ?? none;
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
  if (before?.of === readings) return before.called;
  const called = cautionsOf(workOf(cell, { readings }));
  brought.set(cell, { of: readings, called });
  return called;
}

/** What was said before a cell, and where each of its cautions had been said when it was. */
const said = new WeakMap<
  readonly Called[],
  { readonly at: readonly (string | undefined)[]; readonly blocks: readonly CautionBlock[] }
>();

/** The very same blocks as before while the cell brings the same cautions, and the same steps before it did. */
function blocksOf(
  called: readonly Called[],
  given: Map<string, string>,
  title: string,
): readonly CautionBlock[] {
  const at = called.map(({ id }) => given.get(id));
  const before = said.get(called);
  if (before?.at.every((each, index) => each === at[index])) {
    for (const { id } of called) if (!given.has(id)) given.set(id, title);
    return before.blocks;
  }
  const blocks = cautionBlocks(called, given, title);
  said.set(called, { at, blocks });
  return blocks;
}

function collect({ file, memo }: Study): ReadonlyMap<number, readonly CautionBlock[]> {
  const given = new Map<string, string>();
  const found = new Map<number, readonly CautionBlock[]>();
  file.cells.forEach(({ cell }, index) => {
    if (cell === undefined) return;
    const called = calledBy(cell, memo.names.cells[index]?.readings ?? []);
    if (called.length > 0) found.set(index, blocksOf(called, given, words(cell.title)));
  });
  return found;
}

import type { RepairCell } from '../../casefile/cell.ts';
import type { Block } from '../blocks.ts';
import { verdictLine } from '../verdictLine.ts';
import { type CellContent, type CellContext, said, words } from './cellContext.ts';

/** What was done, with what, and the proof that it worked. */
export function repairContent(cell: RepairCell, { expectations }: CellContext): CellContent {
  const hours = words(cell.hours);
  const parts = (cell.parts ?? []).map((each) => {
    const count = words(each.count);
    const number = words(each.number);
    return [`${count === '' ? '' : `${count} × `}${words(each.part)}${number === '' ? '' : ` (${number})`}`];
  });
  const proof: Block[] =
    (cell.verify ?? []).length === 0 ? [] : [{ kind: 'paragraph', lead: 'Proof', runs: [] }];
  return {
    title: words(cell.title),
    margin: ['Repair', ...(hours === '' ? [] : [`${hours} h`])],
    blocks: [
      ...said(cell.done),
      ...(parts.length === 0
        ? []
        : [{ kind: 'bullets' as const, lead: 'Parts', style: 'bullet' as const, items: parts }]),
      ...proof,
      ...expectations.map(verdictLine),
    ],
  };
}

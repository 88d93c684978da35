import type { Cell, StateNode } from '../casefile/cell.ts';
import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { nearestStates, stateOf } from '../signals/states.ts';
import type { CellRule } from './rule.ts';

/** A state in free words that is nearly one that the trade has a name for: without the name nothing is known to be usual. */
export const misspeltState: CellRule = {
  code: 'misspelt-state',
  checkCell: ({ read }) => statesIn(read.cell).flatMap(findingsAt),
};

function statesIn(cell: Cell | undefined): readonly StateNode[] {
  if (cell === undefined) return none;
  const one = 'state' in cell ? cell.state : undefined;
  const several = 'states' in cell ? cell.states?.map((each) => each.value) : undefined;
  if (one === undefined) return several ?? none;
  return several === undefined ? [one] : [one, ...several];
}

const none: readonly StateNode[] = [];

function findingsAt({ name }: StateNode): readonly Diagnostic[] {
  const text = name.text.trim();
  if (stateOf(text) !== undefined) return [];
  const near = nearestStates(text);
  if (near.length === 0) return [];
  const fixes = near.map((each) => ({
    title: `Write \`${each}\``,
    edits: [{ span: name.span, newText: each }],
  }));
  return [diagnose('misspelt-state', name.span, { name: text, nearest: near }, fixes)];
}

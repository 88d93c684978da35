import type { Cell, StateNode } from '../casefile/cell.ts';
import { kindNames, kinds } from '../casefile/kinds/kinds.ts';
import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { nearestStates, stateOf } from '../signals/states.ts';
import type { Moment } from './moments.ts';
import type { CellRule } from './rule.ts';

/** A state in free words that is nearly one that the trade has a name for: without the name nothing is known to be usual. */
export const misspeltState: CellRule = {
  code: 'misspelt-state',
  in: kindNames.filter((kind) => 'state' in kinds[kind].keys || 'states' in kinds[kind].keys),
  checkCell: ({ read: { cell }, moments }) => {
    const found: Diagnostic[] = [];
    if (cell === undefined || areAllKnown(cell, moments)) return found;
    if ('state' in cell && cell.state !== undefined) addAt(cell.state, found);
    if ('states' in cell) for (const { value } of cell.states ?? []) addAt(value, found);
    return found;
  },
};

/** Something was read at each of its states, and they were looked up for that. */
function areAllKnown(cell: Cell, moments: readonly Moment[]): boolean {
  for (const { state } of moments) if (state?.known === undefined) return false;
  const one = 'state' in cell && cell.state !== undefined ? 1 : 0;
  const several = 'states' in cell ? (cell.states?.length ?? 0) : 0;
  return moments.length === one + several;
}

function addAt({ name }: StateNode, found: Diagnostic[]): void {
  const text = name.text.trim();
  if (stateOf(text) !== undefined) return;
  const near = nearestStates(text);
  if (near.length === 0) return;
  const fixes = near.map((each) => ({
    title: `Write \`${each}\``,
    edits: [{ span: name.span, newText: each }],
  }));
  found.push(diagnose('misspelt-state', name.span, { name: text, nearest: near }, fixes));
}

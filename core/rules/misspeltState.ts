import type { Cell, StateNode } from '../casefile/cell.ts';
import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { nearestStates, stateOf } from '../signals/states.ts';
import type { Finding } from '../study/types.ts';
import type { Rule } from './rule.ts';

/** A state in free words that is nearly one that the trade has a name for: without the name nothing is known to be usual. */
export const misspeltState: Rule = {
  code: 'misspelt-state',
  check: (study): readonly Finding[] =>
    study.file.cells.flatMap(({ cell }, index) =>
      statesIn(cell).flatMap((state) => findingsAt(state).map((diagnostic) => ({ cell: index, diagnostic }))),
    ),
};

function statesIn(cell: Cell | undefined): readonly StateNode[] {
  if (cell === undefined) return [];
  const one = 'state' in cell && cell.state !== undefined ? [cell.state] : [];
  const several = 'states' in cell && cell.states !== undefined ? cell.states.map((each) => each.value) : [];
  return [...one, ...several];
}

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

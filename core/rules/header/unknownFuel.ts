import { diagnose, type Fix } from '../../diagnostics/diagnostic.ts';
import { findFuel, fuelNames, nearestFuels } from '../../engine/fuel/findFuel.ts';
import type { CellRule } from '../rule.ts';

/** A fuel in the header that the table of fuels does not have: every function that needs it would have no answer. */
export const unknownFuel: CellRule = {
  code: 'unknown-fuel',
  in: ['diag'],
  checkCell: ({ read: { cell } }) => {
    const node = cell?.kind === 'diag' ? cell.engine?.fuel : undefined;
    if (node === undefined || !('noAnswer' in findFuel(node.text.trim()))) return [];
    const nearest = nearestFuels(node.text);
    const fixes = nearest.map(
      (fuel): Fix => ({ title: `Write \`${fuel}\``, edits: [{ span: node.span, newText: fuel }] }),
    );
    const facts = { fuel: node.text.trim(), nearest, known: fuelNames() };
    return [diagnose('unknown-fuel', node.span, facts, fixes)];
  },
};

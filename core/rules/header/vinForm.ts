import { sourceSpan } from '../../casefile/tree.ts';
import { diagnose } from '../../diagnostics/diagnostic.ts';
import { vinProblem } from '../../engine/obd/vin.ts';
import type { CellRule } from '../rule.ts';

/** The header's vehicle identification number: its length, its characters, and the check digit of 49 CFR 565.15(c). */
export const vinForm: CellRule = {
  code: 'vin-form',
  in: ['diag'],
  checkCell: ({ read: { cell } }) => {
    const node = cell?.kind === 'diag' ? cell.vehicle?.vin : undefined;
    const vin = node?.text.trim() ?? '';
    if (node === undefined || vin === '') return [];
    const problem = vinProblem(vin);
    if (problem === undefined) return [];
    const start = node.text.indexOf(vin);
    const at = problem.kind === 'character' ? problem.at : 8;
    const span =
      problem.kind === 'length'
        ? sourceSpan(node, { start, end: start + vin.length })
        : sourceSpan(node, { start: start + at, end: start + at + 1 });
    return [diagnose('vin-form', span, { vin, problem })];
  },
};

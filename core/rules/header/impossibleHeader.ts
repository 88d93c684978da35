import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { formatQuantity, formatRange } from '../../quantity/format.ts';
import { rangesOf } from '../../signals/ranges.ts';
import { headerForm } from '../../study/headerTable.ts';
import type { CellRule } from '../rule.ts';

/** A number of the header that no vehicle and no place has. Everything that is computed from it would be wrong. */
export const impossibleHeader: CellRule = {
  code: 'header-impossible',
  in: ['diag'],
  checkCell: ({ read: { cell }, header }) => {
    if (cell?.kind !== 'diag') return [];
    const found: Diagnostic[] = [];
    for (const [name, { value, valueSpan }] of header.values) {
      if (value.kind !== 'one') continue;
      const form = headerForm(name);
      const physical = form === undefined ? undefined : rangesOf(form).physical;
      const { si } = value.amount;
      if (physical === undefined || (si >= physical.low && si <= physical.high)) continue;
      const facts = {
        name,
        written: formatQuantity(si, value.type),
        range: formatRange(physical.low, physical.high, value.type),
      };
      found.push(diagnose('header-impossible', valueSpan, facts));
    }
    return found;
  },
};

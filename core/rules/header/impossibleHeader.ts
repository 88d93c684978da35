import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { formatQuantity, formatRange } from '../../quantity/format.ts';
import { type Interval, rangesOf } from '../../signals/ranges.ts';
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
      const physical = possible(name);
      const { si } = value.amount;
      if (si >= physical.low && si <= physical.high) continue;
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

/** What a number of the header can possibly be, worked out once for each. */
function possible(name: string): Interval {
  let range = ranges.get(name);
  if (range === undefined) {
    const form = headerForm(name);
    range = (form === undefined ? undefined : rangesOf(form).physical) ?? anything;
    if (form !== undefined) ranges.set(name, range);
  }
  return range;
}

const ranges = new Map<string, Interval>();
const anything: Interval = { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };

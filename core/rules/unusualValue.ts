import { diagnose } from '../diagnostics/diagnostic.ts';
import { formatRange } from '../quantity/format.ts';
import { rangesOf } from '../signals/ranges.ts';
import { failureOf } from './failedValue.ts';
import { isOutside } from './measured.ts';
import type { CellRule } from './rule.ts';

/** Outside what is usual in the state that it was taken in. Information only: a fault is what one looks for. */
export const unusualValue: CellRule = {
  code: 'unusual-value',
  checkCell: ({ measured }) =>
    measured.flatMap((one) => {
      const { physical, usual } = rangesOf(one.form);
      const state = one.reading.state?.known?.name;
      const range = usual.find((each) => each.state === state);
      if (state === undefined || range === undefined || !isOutside(one, range.range)) return [];
      if (physical !== undefined && isOutside(one, physical)) return [];
      if (failureOf(one, measured) !== undefined) return [];
      const facts = {
        name: one.name,
        written: one.written,
        state,
        range: formatRange(range.range.low, range.range.high, one.type),
        source: range.source,
      };
      return [diagnose('unusual-value', one.reading.valueSpan, facts)];
    }),
};

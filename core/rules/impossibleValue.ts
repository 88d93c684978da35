import { diagnose } from '../diagnostics/diagnostic.ts';
import { formatRange } from '../quantity/format.ts';
import { rangesOf } from '../signals/ranges.ts';
import type { Finding } from '../study/types.ts';
import { failureOf } from './failedValue.ts';
import { isOutside, measuredIn } from './measured.ts';
import type { Rule } from './rule.ts';
import { slipsOf } from './unitSlip.ts';

/** Outside what the part or the physics allows, in whatever unit; the end of a sensor's scale is `failed-value`'s. */
export const impossibleValue: Rule = {
  code: 'impossible-value',
  check: (study): readonly Finding[] => {
    const all = measuredIn(study.readings);
    return all.flatMap((one) => {
      const limit = rangesOf(one.form).physical;
      if (limit === undefined || !isOutside(one, limit) || slipsOf(one, limit).length > 0) return [];
      if (failureOf(one, all) !== undefined) return [];
      const facts = {
        name: one.name,
        written: one.written,
        range: formatRange(limit.low, limit.high, one.type),
      };
      const { cell, valueSpan } = one.reading;
      return [{ cell, diagnostic: diagnose('impossible-value', valueSpan, facts) }];
    });
  },
};

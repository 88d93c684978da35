import { diagnose } from '../diagnostics/diagnostic.ts';
import { formatRange } from '../quantity/format.ts';
import { failureOf } from './failedValue.ts';
import { isOutside, writtenAs } from './measured.ts';
import { rewritten } from './rewritten.ts';
import type { ReadingRule } from './rule.ts';
import { likelierUnit } from './unitSlip.ts';
import { sourceOf, usualRange } from './usualRange.ts';

/** Outside what is usual in the state that it was taken in. Information only: a fault is what one looks for. */
export const unusualValue: ReadingRule = {
  code: 'unusual-value',
  odd: 'unusual',
  checkReading: (one, { read, header, measured }) => {
    const usual = one.isImpossible ? undefined : usualRange(one, header);
    if (usual === undefined || !isOutside(one.si, one.halfWidth, usual.range)) return undefined;
    if (failureOf(one, measured) !== undefined) return undefined;
    const other = likelierUnit(one, usual.range);
    const facts = {
      name: one.name,
      written: writtenAs(one),
      state: usual.state,
      range: formatRange(usual.range.low, usual.range.high, one.type),
      source: sourceOf(usual),
      ...(other === undefined ? {} : { meant: other.symbol }),
    };
    const fixes = other === undefined ? [] : rewritten(read, one.reading, one.type.unit, other);
    return diagnose('unusual-value', one.reading.valueSpan, facts, fixes);
  },
};

import { diagnose } from '../diagnostics/diagnostic.ts';
import { formatRange } from '../quantity/format.ts';
import type { QuantityType } from '../quantity/types.ts';
import type { Interval } from '../signals/ranges.ts';
import { failureOf } from './failedValue.ts';
import { isOutside, writtenAs } from './measured.ts';
import { rewritten } from './rewritten.ts';
import type { ReadingRule } from './rule.ts';
import { likelierUnit } from './unitSlip.ts';
import { usualRange } from './usualRange.ts';

/** Outside what is usual in the state that it was taken in. Information only: a fault is what one looks for. */
export const unusualValue: ReadingRule = {
  code: 'unusual-value',
  odd: 'unusual',
  checkReading: (one, { read, car, measured }) => {
    const usual = one.isImpossible ? undefined : usualRange(one, car, measured);
    if (usual === undefined || !isOutside(one.si, one.halfWidth, usual.range)) return undefined;
    if (failureOf(one, measured) !== undefined) return undefined;
    const other = likelierUnit(one, usual.range);
    const facts = {
      name: one.name,
      written: writtenAs(one),
      state: usual.state,
      range: rangeWritten(usual.range, one.type),
      source: usual.source,
      ...(other === undefined ? {} : { meant: other.symbol }),
    };
    const fixes = other === undefined ? [] : rewritten(read, one.reading, one.type.unit, other);
    return diagnose('unusual-value', one.reading.valueSpan, facts, fixes);
  },
};

/** A row's range is written the same each time, in nearly always the same unit. */
function rangeWritten(range: Interval, { unit, kind, dimension }: QuantityType): string {
  const known = written.get(range);
  if (known?.unit === unit && known.kind === kind) return known.text;
  const text = formatRange(range.low, range.high, { unit, kind, dimension });
  written.set(range, { unit, kind, text });
  return text;
}

const written = new WeakMap<Interval, Pick<QuantityType, 'unit' | 'kind'> & { readonly text: string }>();

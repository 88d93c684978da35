import { diagnose } from '../diagnostics/diagnostic.ts';
import { formatRange } from '../quantity/format.ts';
import type { Reading } from '../study/types.ts';
import { writtenAs } from './measured.ts';
import type { ReadingRule } from './rule.ts';

/** More than the generic encoding carries, for a value that is said to have come over generic data. */
export const beyondSensor: ReadingRule = {
  code: 'beyond-sensor',
  odd: 'beyond encoding',
  checkReading: (one) => {
    const { encoding } = one.limits.ranges;
    if (encoding === undefined || one.isImpossible || !isFromGenericData(one.reading)) return undefined;
    const facts = {
      name: one.name,
      written: writtenAs(one),
      range: formatRange(encoding.low, encoding.high, one.type),
      source: encoding.source,
    };
    return diagnose('beyond-sensor', one.reading.valueSpan, facts);
  },
};

/**
 * A tool whose name says "scan", or a reading that names no tool. Gauges and meters have ranges of their own;
 * what was decoded from bytes is carried by them, with a full scale of its own where the vehicle gives one.
 */
function isFromGenericData({ tool, from, bytes }: Reading): boolean {
  return bytes === undefined && from === 'readings' && (tool === undefined || /scan/i.test(tool));
}

import { diagnose } from '../diagnostics/diagnostic.ts';
import { formatRange } from '../quantity/format.ts';
import { failureOf } from './failedValue.ts';
import { writtenAs } from './measured.ts';
import type { ReadingRule } from './rule.ts';
import { isOfVehicleSupply, slipsOf } from './unitSlip.ts';

/** Outside what the part or the physics allows, in whatever unit; the end of a sensor's scale is `failed-value`'s. */
export const impossibleValue: ReadingRule = {
  code: 'impossible-value',
  odd: 'impossible',
  checkReading: (one, { measured }) => {
    const { possible, ranges } = one.limits;
    const state = possible === ranges.physical ? undefined : one.reading.state?.name;
    if (possible === undefined || slipsOf(one, possible, measured).length > 0) return undefined;
    if (failureOf(one, measured) !== undefined) return undefined;
    const facts = {
      name: one.name,
      written: writtenAs(one),
      range: formatRange(possible.low, possible.high, one.type),
      ...(state === undefined ? {} : { state }),
      ...(isOfVehicleSupply(one, possible) ? { aboveSupply: true as const } : {}),
    };
    return diagnose('impossible-value', one.reading.valueSpan, facts);
  },
};

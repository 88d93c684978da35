import { diagnose } from '../../diagnostics/diagnostic.ts';
import { formatNumber } from '../../quantity/format.ts';
import type { Finding } from '../../study/types.ts';
import { inForm, type Measured, writtenAs } from '../measured.ts';
import { fullNameOf, type Moment, stateName } from '../moments.ts';
import type { CaseRule } from '../rule.ts';

/** A battery that a starter does not pull down: above its rest, or by less than the starter's current must cost. */
export const crankingWithoutDip: CaseRule = {
  code: 'cranking-without-dip',
  reads: ['battery', 'cranking_voltage', 'resting_voltage', 'starter_current'],
  of: ['cranking_voltage', 'starter_current'],
  check: (ruled) => {
    const found: Finding[] = [];
    for (const moment of ruled.moments) {
      const cranked = crankedIn(moment);
      const rested = cranked === undefined ? undefined : restedBeside(moment, ruled.moments);
      if (cranked === undefined || rested === undefined) continue;
      const current = inForm(moment.values.starter_current, 'A');
      const least = current === undefined || current.si < draws ? 0 : resistance * current.si;
      const slack = meter + cranked.halfWidth + rested.halfWidth;
      if (rested.si - cranked.si >= least - slack) continue;
      const facts = {
        name: fullNameOf(cranked),
        written: writtenAs(cranked),
        rested: fullNameOf(rested),
        restedWritten: writtenAs(rested),
        ...(current === undefined || least === 0
          ? {}
          : {
              current: {
                written: writtenAs(current),
                least: `${formatNumber(Number(least.toPrecision(2)))} V`,
              },
            }),
      };
      const { cell, valueSpan } = cranked.reading;
      found.push({ cell, diagnostic: diagnose('cranking-without-dip', valueSpan, facts) });
    }
    return found;
  },
};

/** V: two readings of one meter. */
const meter = 0.15;
/** Ω: the least inside a car's battery, and A: the least that a starter draws (common practice). */
const resistance = 0.002;
const draws = 60;

function crankedIn(moment: Moment): Measured | undefined {
  return (
    inForm(moment.values.cranking_voltage, 'V') ??
    (stateName(moment) === 'cranking' ? inForm(moment.values.battery, 'V') : undefined)
  );
}

/** The battery at rest at the same visit. */
function restedBeside({ when }: Moment, moments: readonly Moment[]): Measured | undefined {
  for (const each of moments) {
    if (each.when !== when) continue;
    const rested =
      inForm(each.values.resting_voltage, 'V') ??
      (stateName(each) === 'key off' ? inForm(each.values.battery, 'V') : undefined);
    if (rested !== undefined) return rested;
  }
  return undefined;
}

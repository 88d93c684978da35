import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { formatQuantity } from '../../quantity/format.ts';
import { inForm, writtenAs } from '../measured.ts';
import { stateName } from '../moments.ts';
import type { CellRule } from '../rule.ts';

/** A rested battery whose voltage is not that of its acid. */
export const acidAgainstVolts: CellRule = {
  code: 'acid-against-volts',
  of: ['specific_gravity'],
  in: ['readings'],
  checkCell: ({ moments, sets }) => {
    const found: Diagnostic[] = [];
    for (const { from, signal, fullName, value, column } of sets) {
      if (from !== 'readings' || signal?.name !== 'specific_gravity' || value.kind !== 'members') continue;
      let [count, means] = [0, 0];
      for (const gravity of value.members.values()) {
        if (!('si' in gravity)) continue;
        count++;
        means += gravity.si + overAcid;
      }
      const moment = moments.find((each) => each.column === column);
      if (count !== ofTwelveVolts || moment === undefined) continue;
      const rested =
        inForm(moment.values.resting_voltage, 'V') ??
        (stateName(moment) === 'key off' ? inForm(moment.values.battery, 'V') : undefined);
      if (rested === undefined) continue;
      if (Math.abs(rested.si - means) <= apart + rested.halfWidth) continue;
      const facts = {
        name: rested.name,
        written: writtenAs(rested),
        acid: fullName,
        means: formatQuantity(Number(means.toFixed(1)), rested.type),
      };
      found.push(diagnose('acid-against-volts', rested.reading.valueSpan, facts));
    }
    return found;
  },
};

const ofTwelveVolts = 6;
/** V above the specific gravity of a cell's acid, at rest (handbooks of lead-acid batteries print 0.84 and 0.845). */
const overAcid = 0.845;
/** V: a hydrometer that is off by 0.02 in each cell, and a meter. */
const apart = 0.35;

import { diagnose } from '../../diagnostics/diagnostic.ts';
import type { Finding } from '../../study/types.ts';
import { writtenAs } from '../measured.ts';
import { fullNameOf } from '../moments.ts';
import type { CaseRule } from '../rule.ts';
import { spokenPressure } from '../spokenPressure.ts';
import { firstOfEachCell } from './doubted.ts';

/** The lack of pressure where the pressure belongs. */
export const vacuumForAbsolute: CaseRule = {
  code: 'vacuum-for-absolute',
  reads: ['baro', 'map', 'vacuum'],
  of: ['map'],
  check: (ruled) =>
    firstOfEachCell('is a vacuum', ruled).map(({ map, doubt }): Finding => {
      const facts = {
        name: fullNameOf(map),
        written: writtenAs(map),
        because: doubt.because,
        absolute: spokenPressure(Math.max(0, doubt.barometer.si - map.si), map),
      };
      return {
        cell: map.reading.cell,
        diagnostic: diagnose('vacuum-for-absolute', map.reading.valueSpan, facts),
      };
    }),
};

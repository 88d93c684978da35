import { diagnose } from '../../diagnostics/diagnostic.ts';
import type { Finding } from '../../study/types.ts';
import { writtenAs } from '../measured.ts';
import { fullNameOf } from '../moments.ts';
import type { CaseRule } from '../rule.ts';
import { spokenBarometer } from '../spokenPressure.ts';
import { firstOfEachCell } from './doubted.ts';

/** A running engine with a closed throttle whose manifold is said to be at the barometer. */
export const manifoldAtBarometer: CaseRule = {
  code: 'manifold-at-barometer',
  reads: ['baro', 'map', 'vacuum'],
  of: ['map'],
  check: (ruled) =>
    firstOfEachCell('at barometer', ruled).map(({ map, doubt }): Finding => {
      const facts = {
        name: fullNameOf(map),
        written: writtenAs(map),
        state: map.reading.state?.name ?? '',
        barometer: spokenBarometer(doubt.barometer, map),
        from: doubt.barometer.from,
      };
      return {
        cell: map.reading.cell,
        diagnostic: diagnose('manifold-at-barometer', map.reading.valueSpan, facts),
      };
    }),
};

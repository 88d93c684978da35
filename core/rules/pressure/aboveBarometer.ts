import { diagnose } from '../../diagnostics/diagnostic.ts';
import { fromSi } from '../../quantity/convert.ts';
import { formatNumber } from '../../quantity/format.ts';
import type { Finding } from '../../study/types.ts';
import { writtenAs } from '../measured.ts';
import { fullNameOf } from '../moments.ts';
import { rewritten } from '../rewritten.ts';
import type { CaseRule } from '../rule.ts';
import { spokenBarometer } from '../spokenPressure.ts';
import { firstOfEachCell } from './doubted.ts';

/** More than the barometer in the manifold of an engine that nothing blows into. */
export const aboveBarometer: CaseRule = {
  code: 'above-barometer',
  reads: ['baro', 'map', 'vacuum'],
  of: ['map'],
  check: (ruled) =>
    firstOfEachCell('above barometer', ruled).map(({ map, doubt }): Finding => {
      const { barometer, unit } = doubt;
      const number = formatNumber(fromSi(map.si, map.type.unit, map.type.kind));
      const facts = {
        name: fullNameOf(map),
        written: writtenAs(map),
        barometer: spokenBarometer(barometer, map),
        from: barometer.from,
        ...(unit === undefined ? {} : { meant: `${number} ${unit.symbol}` }),
      };
      const read = ruled.read(map.reading.cell);
      const fixes =
        unit === undefined || read === undefined ? [] : rewritten(read, map.reading, map.type.unit, unit);
      return {
        cell: map.reading.cell,
        diagnostic: diagnose('above-barometer', map.reading.valueSpan, facts, fixes),
      };
    }),
};

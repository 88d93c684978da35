import { diagnose } from '../../diagnostics/diagnostic.ts';
import type { Finding } from '../../study/types.ts';
import { writtenAs } from '../measured.ts';
import { fullNameOf, inForm } from '../moments.ts';
import type { CaseRule } from '../rule.ts';
import { spokenPressure } from '../spokenPressure.ts';
import { barometerOf } from './barometerOf.ts';
import { soundManifold, sumWidth } from './manifold.ts';

/** Manifold pressure and manifold vacuum of one state are two sides of the barometer: together they are it. */
export const pressureAndVacuum: CaseRule = {
  code: 'pressure-and-vacuum',
  of: ['vacuum'],
  check: (ruled) =>
    ruled.moments.flatMap((moment): readonly Finding[] => {
      const vacuum = inForm(moment, 'vacuum', 'inHg');
      const barometer = vacuum === undefined ? undefined : barometerOf(moment, ruled);
      if (vacuum === undefined || barometer === undefined) return [];
      const own = soundManifold(moment, ruled);
      const compared =
        own === undefined
          ? ruled.alike(moment, 'map').flatMap((each) => soundManifold(each, ruled) ?? [])
          : [own];
      const [map] = compared;
      const isApart = compared.every(
        (each) => Math.abs(each.si + vacuum.si - barometer.si) > sumWidth(each, vacuum, barometer),
      );
      if (map === undefined || !isApart) return [];
      const facts = {
        map: fullNameOf(map),
        mapWritten: writtenAs(map),
        vacuum: fullNameOf(vacuum),
        vacuumWritten: writtenAs(vacuum),
        sum: spokenPressure(map.si + vacuum.si, vacuum),
        barometer: spokenPressure(barometer.si, vacuum),
        from: barometer.from,
      };
      return [
        { cell: moment.cell, diagnostic: diagnose('pressure-and-vacuum', vacuum.reading.valueSpan, facts) },
      ];
    }),
};

import { diagnose } from '../../diagnostics/diagnostic.ts';
import type { Finding } from '../../study/types.ts';
import { eachCell, type KeptCells } from '../eachCell.ts';
import { type Measured, writtenAs } from '../measured.ts';
import { fullNameOf, inForm, type Moment } from '../moments.ts';
import type { CaseRule, RuledCase } from '../rule.ts';
import { spokenPressure } from '../spokenPressure.ts';
import { barometerOf } from './barometerOf.ts';
import { rowsOf, runningMap, soundManifold, sumWidth } from './manifold.ts';
import type { Known } from './site.ts';

/** Manifold pressure and manifold vacuum of one state are two sides of the barometer: together they are it. */
export const pressureAndVacuum: CaseRule = {
  code: 'pressure-and-vacuum',
  reads: ['baro', 'map', 'vacuum'],
  of: ['vacuum'],
  check: (ruled) => {
    const found: Finding[] = [];
    for (const cell of ruled.once(readCells)) if (cell !== undefined) found.push(...cell.made);
    return found;
  },
};

/** Vacuums that stand beside their manifold pressure are looked at again only when one of both is another. */
function readCells(
  ruled: RuledCase,
  before: KeptCells<readonly Finding[]> | undefined,
): KeptCells<readonly Finding[]> {
  const rows = rowsOf(ruled);
  return eachCell(
    ruled.holding('vacuum'),
    ruled,
    before,
    (cell) => (rows[cell]?.made.isSound && ruled.inCell(cell).every(isPaired) ? rows[cell] : undefined),
    (moments) => inMoments(moments, ruled),
  );
}

const isPaired = (moment: Moment): boolean =>
  moment.values.vacuum === undefined || runningMap(moment) !== undefined;

function inMoments(moments: readonly Moment[], ruled: RuledCase): readonly Finding[] {
  const found: Finding[] = [];
  for (const moment of moments) {
    const vacuum = inForm(moment, 'vacuum', 'inHg');
    const barometer = vacuum === undefined ? undefined : barometerOf(moment, ruled);
    if (vacuum === undefined || barometer === undefined) continue;
    const map = apartFrom(vacuum, barometer, moment, ruled);
    if (map !== undefined) found.push(findingOf(map, vacuum, barometer));
  }
  return found;
}

function findingOf(map: Measured, vacuum: Measured, barometer: Known): Finding {
  const facts = {
    map: fullNameOf(map),
    mapWritten: writtenAs(map),
    vacuum: fullNameOf(vacuum),
    vacuumWritten: writtenAs(vacuum),
    sum: spokenPressure(map.si + vacuum.si, vacuum),
    barometer: spokenPressure(barometer.si, vacuum),
    from: barometer.from,
  };
  const { cell, valueSpan } = vacuum.reading;
  return { cell, diagnostic: diagnose('pressure-and-vacuum', valueSpan, facts) };
}

/** The manifold pressure of the moment, or else the first of the same visit and state; undefined where it or one of those fits the vacuum. */
function apartFrom(
  vacuum: Measured,
  barometer: Known,
  moment: Moment,
  ruled: RuledCase,
): Measured | undefined {
  const own = soundManifold(moment, ruled);
  if (own !== undefined) return isApart(own, vacuum, barometer) ? own : undefined;
  let first: Measured | undefined;
  for (const each of ruled.alike(moment, 'map')) {
    const map = soundManifold(each, ruled);
    if (map === undefined) continue;
    if (!isApart(map, vacuum, barometer)) return undefined;
    first ??= map;
  }
  return first;
}

const isApart = (map: Measured, vacuum: Measured, barometer: Known): boolean =>
  Math.abs(map.si + vacuum.si - barometer.si) > sumWidth(map, vacuum, barometer);

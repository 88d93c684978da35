import { diagnose } from '../../diagnostics/diagnostic.ts';
import type { Finding } from '../../study/types.ts';
import { eachCell, type KeptCells } from '../eachCell.ts';
import { inForm, type Measured, writtenAs } from '../measured.ts';
import { fullNameOf, type Moment } from '../moments.ts';
import type { CaseRule, RuledCase } from '../rule.ts';
import { spokenBarometer, spokenPressure } from '../spokenPressure.ts';
import { barometerOf } from './barometerOf.ts';
import { isSound, rowsOf, runningMap, soundManifold, sumWidth } from './manifold.ts';
import { highestBarometer, type Known, lowestBarometer } from './site.ts';

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
    (cell) => (isSound(rows[cell]?.made) && ruled.inCell(cell).every(isPaired) ? rows[cell] : undefined),
    (moments) => inMoments(moments, ruled),
  );
}

const isPaired = (moment: Moment): boolean =>
  moment.values.vacuum === undefined || runningMap(moment) !== undefined;

function inMoments(moments: readonly Moment[], ruled: RuledCase): readonly Finding[] {
  const found: Finding[] = [];
  for (const moment of moments) {
    const vacuum = inForm(moment.values.vacuum, 'inHg');
    if (vacuum === undefined) continue;
    const barometer = barometerOf(moment, ruled);
    const deeper = barometer ?? highestBarometer;
    if (vacuum.si > deeper.si + deeper.halfWidth + vacuum.halfWidth) found.push(tooDeep(vacuum, deeper));
    else {
      const apart = apartFrom(vacuum, barometer, moment, ruled);
      if (apart !== undefined) found.push(findingOf(vacuum, apart));
    }
  }
  return found;
}

function findingOf(vacuum: Measured, { map, barometer }: Apart): Finding {
  const facts = {
    map: fullNameOf(map),
    mapWritten: writtenAs(map),
    vacuum: fullNameOf(vacuum),
    vacuumWritten: writtenAs(vacuum),
    sum: spokenPressure(map.si + vacuum.si, vacuum),
    barometer: spokenBarometer(barometer, vacuum),
    from: barometer.from,
  };
  const { cell, valueSpan } = vacuum.reading;
  return { cell, diagnostic: diagnose('pressure-and-vacuum', valueSpan, facts) };
}

/** Nothing can be sucked further than empty (ISO 80000-4:2019, 4-14: absolute pressure is not negative). */
function tooDeep(vacuum: Measured, barometer: Known): Finding {
  const facts = {
    vacuum: fullNameOf(vacuum),
    vacuumWritten: writtenAs(vacuum),
    barometer: spokenBarometer(barometer, vacuum),
    from: barometer.from,
  };
  const { cell, valueSpan } = vacuum.reading;
  return { cell, diagnostic: diagnose('pressure-and-vacuum', valueSpan, facts) };
}

/** A manifold pressure, and the barometer that it and the vacuum do not add up to. */
interface Apart {
  readonly map: Measured;
  readonly barometer: Known;
}

/** The manifold pressure of the moment, or else the first of the same visit and state; undefined where it or one of those fits the vacuum. */
function apartFrom(
  vacuum: Measured,
  barometer: Known | undefined,
  moment: Moment,
  ruled: RuledCase,
): Apart | undefined {
  const own = soundManifold(moment, ruled);
  if (own !== undefined) return apartBy(own, vacuum, barometer);
  let first: Apart | undefined;
  for (const each of ruled.alike(moment, 'map')) {
    const map = soundManifold(each, ruled);
    if (map === undefined) continue;
    const apart = apartBy(map, vacuum, barometer);
    if (apart === undefined) return undefined;
    first ??= apart;
  }
  return first;
}

/** Against the barometer, or where none is known against what no place has. */
function apartBy(map: Measured, vacuum: Measured, barometer: Known | undefined): Apart | undefined {
  const sum = map.si + vacuum.si;
  const against = barometer ?? (sum > highestBarometer.si ? highestBarometer : lowestBarometer);
  const isBetween = barometer === undefined && sum >= lowestBarometer.si && sum <= highestBarometer.si;
  return isBetween || Math.abs(sum - against.si) <= sumWidth(map, vacuum, against)
    ? undefined
    : { map, barometer: against };
}

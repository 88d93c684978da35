import { diagnose } from '../../diagnostics/diagnostic.ts';
import { seaLevelPressure } from '../../engine/air/standardAtmosphere.ts';
import { fromSi } from '../../quantity/convert.ts';
import { formatNumber } from '../../quantity/format.ts';
import type { Unit } from '../../quantity/types.ts';
import { unitOf } from '../../quantity/unit.ts';
import type { Finding } from '../../study/types.ts';
import { eachCell, type KeptCells } from '../eachCell.ts';
import { type Measured, writtenAs } from '../measured.ts';
import { fullNameOf, type Moment, stateName } from '../moments.ts';
import { barometerOf } from '../pressure/barometerOf.ts';
import { againstOf, rowsOf } from '../pressure/manifold.ts';
import { rewritten } from '../rewritten.ts';
import type { CaseRule, RuledCase } from '../rule.ts';
import { spokenPressure } from '../spokenPressure.ts';
import { type Filling, fillingOf, isUnlikely } from './filling.ts';
import { keyOnError } from './keyOnError.ts';

/** Air flow against speed, displacement and pressure: the volumetric efficiency must be one that an engine can have. */
export const fillingUnlikely: CaseRule = {
  code: 'filling-unlikely',
  reads: ['baro', 'ect', 'iat', 'maf', 'map', 'rpm', 'vacuum'],
  of: ['maf'],
  check: (ruled) => {
    const found: Finding[] = [];
    for (const cell of ruled.once(readCells)) if (cell?.made !== undefined) found.push(cell.made);
    return found;
  },
};

/** An air flow is looked at again when it, or what is known of the manifold pressure beside it, is another. */
function readCells(
  ruled: RuledCase,
  before: KeptCells<Finding | undefined> | undefined,
): KeptCells<Finding | undefined> {
  const rows = rowsOf(ruled);
  const against = againstOf(ruled);
  return eachCell(
    ruled.holding('maf'),
    ruled,
    before,
    (cell) => rows[cell] ?? against,
    (moments) => inMoments(moments, ruled),
  );
}

/** A row of air flows is told once, at the first that cannot be. */
interface Told {
  readonly moment: Moment;
  readonly filling: Filling;
  readonly more: string[];
}

function inMoments(moments: readonly Moment[], ruled: RuledCase): Finding | undefined {
  let told: Told | undefined;
  for (const moment of moments) {
    const filling = fillingOf(moment, ruled);
    if (filling === undefined || !isUnlikely(filling) || isOfSensor(filling, moment, ruled)) continue;
    if (told === undefined) told = { moment, filling, more: [] };
    else told.more.push(moment.column ?? '');
  }
  return told === undefined ? undefined : findingOf(told, ruled);
}

/** A manifold sensor that is off with the key on is told there: without its error the flow fits. */
function isOfSensor(filling: Filling, moment: Moment, ruled: RuledCase): boolean {
  const { map, share } = filling;
  const error = map === undefined ? undefined : keyOnError(moment, ruled);
  if (map === undefined || error === undefined || error >= map.si) return false;
  return !isUnlikely({ ...filling, share: (share * map.si) / (map.si - error) });
}

function findingOf({ moment, filling, more }: Told, ruled: RuledCase): Finding {
  const gauge = ruled.car.isUnboosted ? undefined : asGauge(filling, barometerOf(moment, ruled)?.si);
  // Where the pressure explains it, the flow's unit is right.
  const meant = gauge === undefined ? meantUnit(filling) : undefined;
  const { maf, share, low, high, doubted, from } = filling;
  const facts = {
    name: fullNameOf(maf),
    written: writtenAs(maf),
    percent: Math.round(100 * share),
    low: Math.round(100 * low),
    high: Math.round(100 * high),
    state: moment.state?.name ?? '',
    isFull: stateName(moment) === 'wide open throttle',
    from,
    more,
    ...(doubted === undefined ? {} : { doubted: { name: fullNameOf(doubted), written: writtenAs(doubted) } }),
    ...(gauge === undefined ? {} : { gauge }),
    ...(meant === undefined ? {} : { meant: `${formatNumber(inUnit(maf))} ${meant.symbol}` }),
  };
  const read = ruled.read(moment.cell);
  const fixes =
    meant === undefined || read === undefined ? [] : rewritten(read, maf.reading, maf.type.unit, meant);
  return { cell: moment.cell, diagnostic: diagnose('filling-unlikely', maf.reading.valueSpan, facts, fixes) };
}

/** Behind a compressor: the manifold pressure as it would be if it were counted from the barometer, where the flow then fits. */
function asGauge({ map, share, low, high }: Filling, barometer = seaLevelPressure) {
  if (map === undefined || share <= high) return undefined;
  const absolute = map.si + barometer;
  const then = (share * map.si) / absolute;
  return then < low || then > high
    ? undefined
    : { name: fullNameOf(map), written: writtenAs(map), absolute: spokenPressure(absolute, map) };
}

const inUnit = ({ si, type }: Measured): number => fromSi(si, type.unit, type.kind);

/** The unit in which the same number would be an air flow of this engine. */
function meantUnit({ maf, share, low, high }: Filling): Unit | undefined {
  return ['g/s', 'lb/min', 'kg/h']
    .map((symbol) => unitOf(symbol))
    .find((unit) => {
      if (unit === undefined || unit.symbol === maf.type.unit.symbol) return false;
      const then = share * (unit.factor / maf.type.unit.factor);
      return then >= low && then <= high;
    });
}

import type { Unit } from '../../quantity/types.ts';
import { rangesOf } from '../../signals/ranges.ts';
import { hasThrottle, isUnboosted } from '../engineFacts.ts';
import { keeping } from '../kept.ts';
import type { Measured } from '../measured.ts';
import { inForm, type Moment, stateName } from '../moments.ts';
import type { RuledCase } from '../rule.ts';
import { explained, idleWander, pressureSensor, pressureStep, vacuumGauge } from '../tolerance.ts';
import { likelierUnit } from '../unitSlip.ts';
import { barometerOf, barometersOf, type Known } from './barometerOf.ts';

/** What is wrong with a manifold pressure before it is compared with anything but the barometer. */
export type Doubt =
  | { readonly kind: 'above barometer'; readonly barometer: Known; readonly unit: Unit | undefined }
  | { readonly kind: 'is a vacuum'; readonly barometer: Known; readonly because: 'gauge' | 'load' }
  | { readonly kind: 'at barometer'; readonly barometer: Known }
  | { readonly kind: 'frozen' };

/** A moment's manifold pressure with what is doubtful about it. */
export interface Manifold {
  readonly moment: Moment;
  readonly map: Measured;
  readonly doubt: Doubt | undefined;
}

/** The manifold pressures of a cell while the engine runs, column by column. They are looked at against the barometers and the vacuums of the case. */
export function manifoldsIn(cell: number, ruled: RuledCase): readonly Manifold[] {
  const row = ruled.inCell(cell);
  return keptRow(row, [ruled.header, barometersOf(ruled), ruled.holding('vacuum')], () => rowOf(row, ruled));
}

const keptRow = keeping<readonly Moment[], readonly Manifold[]>();

function rowOf(row: readonly Moment[], ruled: RuledCase): readonly Manifold[] {
  const all: Manifold[] = [];
  for (const moment of row) {
    const map = inForm(moment, 'map', 'kPa');
    if (map === undefined || moment.state?.known?.engine !== 'running') continue;
    all.push({ moment, map, doubt: doubtOf(moment, map, ruled) });
  }
  return all;
}

/** The manifold pressure of a moment, where it and the others of its row can be believed. */
export function soundManifold(moment: Moment, ruled: RuledCase): Measured | undefined {
  const here = manifoldsIn(moment.cell, ruled);
  if (here.some(({ doubt }) => doubt !== undefined)) return undefined;
  return here.find((each) => each.moment === moment)?.map;
}

function doubtOf(moment: Moment, map: Measured, ruled: RuledCase): Doubt | undefined {
  if (!isUnboosted(ruled.header)) return undefined;
  const barometer = barometerOf(moment, ruled);
  if (barometer === undefined) return undefined;
  const width = explained(
    Math.max(map.halfWidth, pressureSensor),
    Math.max(barometer.halfWidth, pressureSensor),
    pressureStep,
    pressureStep,
  );
  if (map.si > barometer.si + width) return { kind: 'above barometer', barometer, unit: meantUnit(map) };
  if (!hasThrottle(ruled.header)) return undefined;
  const swapped = vacuumWritten(moment, map, barometer, ruled);
  if (swapped !== undefined) return { kind: 'is a vacuum', barometer, because: swapped };
  const closed = closedStates.has(stateName(moment) ?? '');
  if (closed && map.si > barometer.si - leastVacuum && !isConfirmed(moment, barometer.si - map.si, ruled))
    return { kind: 'at barometer', barometer };
  return isFrozen(moment, map, ruled) ? { kind: 'frozen' } : undefined;
}

/** Pa: no throttled engine idles with less between its manifold and the air outside. */
const leastVacuum = 8000;
const closedStates: ReadonlySet<string> = new Set([
  'warm idle',
  'cold idle',
  'idle in gear',
  '1500 rpm no load',
  '2500 rpm no load',
  'deceleration',
]);

/** The unit in which the same number would be usual in its state, or at least possible below a barometer. */
function meantUnit(map: Measured): Unit | undefined {
  const state = map.reading.state?.known?.name;
  const usual = rangesOf(map.form).usual.find((each) => each.state === state)?.range;
  return likelierUnit(map, usual ?? { low: 8000, high: 107000 });
}

/**
 * A vacuum in the place of the manifold pressure: a vacuum gauge of the same state reads the same number while both do not add up to the barometer,
 * or the number falls as the throttle opens.
 */
function vacuumWritten(
  moment: Moment,
  map: Measured,
  barometer: Known,
  ruled: RuledCase,
): 'gauge' | 'load' | undefined {
  if (Math.abs(barometer.si - 2 * map.si) >= 2 * vacuumGauge) {
    for (const vacuum of vacuumsLike(moment, ruled)) {
      const isSame = Math.abs(vacuum.si - map.si) < vacuumGauge;
      const apart = Math.abs(barometer.si - map.si - vacuum.si);
      if (isSame && apart > sumWidth(map, vacuum, barometer)) return 'gauge';
    }
  }
  const isClosed = closedStates.has(stateName(moment) ?? '');
  const isOpen = stateName(moment) === 'wide open throttle';
  for (const other of ruled.inCell(moment.cell)) {
    const there = inForm(other, 'map', 'kPa');
    if (there === undefined) continue;
    const [closed, open] =
      isClosed && stateName(other) === 'wide open throttle'
        ? [map, there]
        : isOpen && closedStates.has(stateName(other) ?? '')
          ? [there, map]
          : [];
    if (closed === undefined || open === undefined) continue;
    if (open.si < 0.35 * barometer.si && open.si < closed.si) return 'load';
  }
  return undefined;
}

/** The vacuum of the same moment, or else those of the same visit and state. */
function vacuumsLike(moment: Moment, ruled: RuledCase): readonly Measured[] {
  const own = inForm(moment, 'vacuum', 'inHg');
  if (own !== undefined) return [own];
  return ruled.alike(moment, 'vacuum').flatMap((each) => inForm(each, 'vacuum', 'inHg') ?? []);
}

/** How far the sum of a manifold pressure and a vacuum may be from the barometer. */
export function sumWidth(map: Measured, vacuum: Measured, barometer: Known): number {
  return explained(
    Math.max(map.halfWidth, pressureSensor),
    pressureStep,
    Math.max(vacuum.halfWidth, vacuumGauge),
    Math.max(barometer.halfWidth, pressureSensor),
    pressureStep,
    idleWander,
  );
}

/** Exactly the same at a closed and at an open throttle, in one table. */
function isFrozen(moment: Moment, map: Measured, ruled: RuledCase): boolean {
  return ruled.inCell(moment.cell).some((other) => {
    if (other === moment) return false;
    const there = inForm(other, 'map', 'kPa');
    if (there === undefined || there.si !== map.si) return false;
    const names = [stateName(moment) ?? '', stateName(other) ?? ''];
    return names.some((name) => closedStates.has(name)) && names.includes('wide open throttle');
  });
}

/** A gauge shows the same lack of vacuum. */
function isConfirmed(moment: Moment, missing: number, ruled: RuledCase): boolean {
  return vacuumsLike(moment, ruled).some((vacuum) => Math.abs(vacuum.si - missing) < 3 * vacuumGauge);
}

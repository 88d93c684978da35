import type { Unit } from '../../quantity/types.ts';
import { rangesOf } from '../../signals/ranges.ts';
import type { Car } from '../car.ts';
import { eachCell, type KeptCells } from '../eachCell.ts';
import { inForm, type Measured } from '../measured.ts';
import { type Moment, stateName } from '../moments.ts';
import type { RuledCase } from '../rule.ts';
import {
  explained,
  idleWander,
  pressureSensor,
  pressureStep,
  vacuumGauge,
  vacuumLeft,
} from '../tolerance.ts';
import { likelierUnit } from '../unitSlip.ts';
import { type Barometers, barometerAmong, visitsOf } from './barometerOf.ts';
import { type Gauge, type Gauges, gaugesOf, noGauges, ownGauge, vacuumsLike } from './gauges.ts';
import { highestBarometer, type Known } from './site.ts';

/** What is wrong with a manifold pressure before it is compared with anything but the barometer. */
export type Doubt =
  | { readonly kind: 'above barometer'; readonly barometer: Known; readonly unit: Unit | undefined }
  | { readonly kind: 'is a vacuum'; readonly barometer: Known; readonly because: 'gauge' | 'load' }
  | { readonly kind: 'at barometer'; readonly barometer: Known }
  | { readonly kind: 'frozen' };

/** A moment's manifold pressure with what is doubtful about it. */
export interface Doubted<D extends Doubt = Doubt> {
  readonly moment: Moment;
  readonly map: Measured;
  readonly doubt: D;
}

/** The manifold pressures of a cell while the engine runs: those that are doubted, column by column. */
export interface Row {
  readonly doubted: readonly Doubted[];
}

/** What the rows of a case are looked at against; the very same as before a change while all of it is. */
export interface Against {
  readonly car: Car;
  readonly barometers: Barometers;
  /** None where each manifold pressure has a gauge beside it. */
  readonly gauges: Gauges;
}

export function againstOf(ruled: RuledCase): Against {
  return ruled.once(readAgainst);
}

function readAgainst(ruled: RuledCase, before: Against | undefined): Against {
  const { car } = ruled;
  const barometers = visitsOf(ruled);
  const isAlone = ruled.holding('map').some((moment) => ownGauge(moment) === undefined);
  const gauges = isAlone ? gaugesOf(ruled) : noGauges;
  return before?.car === car && before.barometers === barometers && before.gauges === gauges
    ? before
    : { car, barometers, gauges };
}

/** The rows of a case by cell. */
export function rowsOf(ruled: RuledCase): KeptCells<Row> {
  return ruled.once(readRows);
}

function readRows(ruled: RuledCase, before: KeptCells<Row> | undefined): KeptCells<Row> {
  const against = againstOf(ruled);
  return eachCell(
    ruled.holding('map'),
    ruled,
    before,
    () => against,
    (moments) => readRow(moments, against),
  );
}

function readRow(moments: readonly Moment[], against: Against): Row {
  const doubted: Doubted[] = [];
  for (const moment of moments) {
    const map = runningMap(moment);
    const doubt = map === undefined ? undefined : doubtOf(moment, map, moments, against);
    if (map !== undefined && doubt !== undefined) doubted.push({ moment, map, doubt });
  }
  return { doubted };
}

/** The manifold pressure of a moment while the engine runs. */
export function runningMap(moment: Moment): Measured | undefined {
  return moment.state?.known?.engine === 'running' ? inForm(moment.values.map, 'kPa') : undefined;
}

/** Whether a cell has manifold pressures and none of them is doubted. */
export const isSound = (row: Row | undefined): boolean => row?.doubted.length === 0;

/** The manifold pressure of a moment, where it and the others of its row can be believed. */
export function soundManifold(moment: Moment, ruled: RuledCase): Measured | undefined {
  const map = runningMap(moment);
  return map !== undefined && isSound(rowsOf(ruled)[moment.cell]?.made) ? map : undefined;
}

function doubtOf(
  moment: Moment,
  map: Measured,
  row: readonly Moment[],
  { car, barometers, gauges }: Against,
): Doubt | undefined {
  if (!car.isUnboosted) return undefined;
  const known = barometerAmong(barometers, moment, car.site);
  const barometer = known ?? highestBarometer;
  const most = map.si > barometer.si ? mostUnder(barometer, map) : map.si;
  if (map.si > most) return { kind: 'above barometer', barometer, unit: meantUnit(map, most) };
  if (!car.hasThrottle) return undefined;
  const vacuums = vacuumsLike(moment, gauges);
  if (known !== undefined && isReadAsVacuum(map, known, vacuums))
    return { kind: 'is a vacuum', barometer, because: 'gauge' };
  const at = throttleOf(moment);
  if (at === undefined) return undefined;
  const across = acrossFrom(at, row);
  if (known !== undefined && across.some((other) => isFalling(at, map, other)))
    return { kind: 'is a vacuum', barometer, because: 'load' };
  const missing = barometer.si - map.si;
  if (at === 'closed' && missing + unsure(barometer) < leastVacuum && !isConfirmed(missing, vacuums))
    return { kind: 'at barometer', barometer };
  // Exactly the same at a closed and at an open throttle, in one table.
  return across.some((other) => other.si === map.si) ? { kind: 'frozen' } : undefined;
}

/** Pa: the most that a manifold pressure under this barometer may be read as. */
function mostUnder(barometer: Known, map: Measured): number {
  const width = explained(
    Math.max(map.halfWidth, pressureSensor),
    Math.max(barometer.halfWidth, pressureSensor),
    pressureStep,
    pressureStep,
  );
  return barometer.si + width;
}

/** Pa: what a barometer may be higher than it is taken for, beyond the step of a reading. */
const unsure = ({ halfWidth }: Known): number => Math.max(0, halfWidth - pressureStep);

/** Pa: no throttled engine idles with less between its manifold and the air outside. */
const leastVacuum = 8000;

/** States at an end of the throttle's way. */
const throttle: ReadonlyMap<string, 'closed' | 'open'> = new Map([
  ['warm idle', 'closed'],
  ['cold idle', 'closed'],
  ['idle in gear', 'closed'],
  ['1500 rpm no load', 'closed'],
  ['2500 rpm no load', 'closed'],
  ['deceleration', 'closed'],
  ['wide open throttle', 'open'],
]);

const throttleOf = (moment: Moment): 'closed' | 'open' | undefined => throttle.get(stateName(moment) ?? '');

/** The unit in which the same number would be usual in its state, or at least possible, and not above the barometer. */
function meantUnit(map: Measured, most: number): Unit | undefined {
  const state = map.reading.state?.known?.name;
  const usual = rangesOf(map.form).usual.find((each) => each.state === state)?.range;
  return likelierUnit(map, { low: usual?.low ?? 8000, high: Math.min(usual?.high ?? most, most) });
}

/** A vacuum in its place: a vacuum gauge of the same state reads the same number, while both do not add up to the barometer. */
function isReadAsVacuum(map: Measured, barometer: Known, vacuums: readonly Gauge[]): boolean {
  if (vacuums.length === 0 || Math.abs(barometer.si - 2 * map.si) < 2 * vacuumGauge) return false;
  return vacuums.some((vacuum) => {
    const isSame = Math.abs(vacuum.si - map.si) < vacuumGauge;
    return isSame && Math.abs(barometer.si - map.si - vacuum.si) > sumWidth(map, vacuum, barometer);
  });
}

/** The manifold pressures of a row that were read at the other end of the throttle's way. */
function acrossFrom(at: 'closed' | 'open', row: readonly Moment[]): readonly Measured[] {
  if (row.length < 2) return none;
  const across: Measured[] = [];
  for (const other of row) {
    const there = throttleOf(other);
    const map = there === undefined || there === at ? undefined : inForm(other.values.map, 'kPa');
    if (map !== undefined) across.push(map);
  }
  return across;
}

const none: readonly Measured[] = [];

/** Less of it as the throttle opens, as of a vacuum. */
function isFalling(at: 'closed' | 'open', map: Measured, other: Measured): boolean {
  const [closed, open] = at === 'closed' ? [map, other] : [other, map];
  return open.si < vacuumLeft && open.si < closed.si;
}

/** How far the sum of a manifold pressure and a vacuum may be from the barometer. */
export function sumWidth(map: Measured, vacuum: Gauge, barometer: Known): number {
  return explained(
    Math.max(map.halfWidth, pressureSensor),
    pressureStep,
    Math.max(vacuum.halfWidth, vacuumGauge),
    Math.max(barometer.halfWidth, pressureSensor),
    pressureStep,
    idleWander,
  );
}

/** A gauge shows the same lack of vacuum. */
function isConfirmed(missing: number, vacuums: readonly Gauge[]): boolean {
  return vacuums.some((vacuum) => Math.abs(vacuum.si - missing) < 3 * vacuumGauge);
}

import { seaLevelPressure } from '../engine/air/standardAtmosphere.ts';
import { fromSi } from '../quantity/convert.ts';
import { formatNumber } from '../quantity/format.ts';
import { unitOf } from '../quantity/unit.ts';
import type { Interval } from '../signals/ranges.ts';
import { type Car, isDiesel } from './car.ts';
import type { Measured } from './measured.ts';
import type { Site } from './pressure/site.ts';

/** What is usual for a reading in its engine state, and who says so. */
export interface Usual {
  readonly state: string;
  readonly range: Interval;
  readonly source: string;
  /** Pa: what was taken off, for the barometer beside it or for the altitude. */
  readonly less: number;
  readonly by?: 'barometer' | 'altitude';
}

/**
 * What is usual for a reading in its state; undefined when nobody says, or when it is said of engines with another fuel.
 * A vacuum is counted down from the barometer, so where that is less it is less by as much: by the barometer read beside it,
 * or at the site's altitude (U.S. Standard Atmosphere, 1976); the trade's rule for that is an inch for a thousand feet.
 */
export function usualRange(
  { limits, reading }: Measured,
  { fuel, site }: Pick<Car, 'fuel' | 'site'>,
  beside: readonly Measured[],
): Usual | undefined {
  const { usual } = limits;
  if (usual === undefined || !isSaidOf(usual.source, fuel)) return undefined;
  const { state, range, source } = usual;
  if (limits.field !== 'vacuum') return { state, range, source, less: 0 };
  const baro = beside.find(
    ({ name, reading: { column, cell } }) =>
      name === 'baro' && column === reading.column && cell === reading.cell,
  );
  const by = baro === undefined ? 'altitude' : 'barometer';
  const less = baro === undefined ? lessAt(site) : lessBy(baro.si);
  if (less === 0) return { state, range, source, less };
  return { state, range: { low: range.low - less, high: range.high - less }, source, less, by };
}

/** A range that names the fuel or the ignition it is true of. */
function isSaidOf(source: string, fuel: string | undefined): boolean {
  if (fuel === undefined) return true;
  if (isDiesel(fuel)) return !source.includes('petrol engine');
  // Carbon dioxide follows from the carbon in the fuel.
  if (hasLittleCarbon(fuel)) return !source.includes('petrol engine behind');
  return !source.includes('diesel engine');
}

const hasLittleCarbon = (fuel: string): boolean =>
  'hHmM'.includes(fuel.charAt(0)) && /^(methane|hydrogen)$/i.test(fuel);

/** Who says what is usual, and what was taken off. */
export function sourceOf({ source, less, by }: Usual): string {
  if (less === 0) return source;
  const inHg = unitOf('inHg');
  const said =
    inHg === undefined ? '' : `${formatNumber(Number(fromSi(less, inHg, 'difference').toFixed(1)))} inHg`;
  return `${source}, less ${said} for the ${by ?? 'altitude'}`;
}

/** By how much less the barometer is there than at the sea, Pa; nothing where that is not noticeable or not known. */
function lessAt({ byAltitude }: Site): number {
  return byAltitude === undefined ? 0 : lessBy(byAltitude.si);
}

/** The same by the barometer. */
function lessBy(barometer: number): number {
  const less = seaLevelPressure - barometer;
  return less < noticeable ? 0 : less;
}

/** Pa, of 150 m; below, the weather moves the barometer more than the altitude does. */
const noticeable = 1790;

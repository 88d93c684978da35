import { seaLevelPressure } from '../engine/air/standardAtmosphere.ts';
import { fromSi } from '../quantity/convert.ts';
import { formatNumber } from '../quantity/format.ts';
import { unitOf } from '../quantity/unit.ts';
import type { UsualRange } from '../signals/ranges.ts';
import type { Burning } from '../signals/types.ts';
import { type Car, isDiesel } from './car.ts';
import type { Measured } from './measured.ts';
import { isSeaLevelFigure, type Site } from './pressure/site.ts';

/** A range that was moved to a place. */
interface Moved {
  readonly less: number;
  readonly by: 'barometer' | 'altitude';
  readonly usual: UsualRange;
}

/** By the vocabulary's rows, as it was moved last: the readings of a case are of one place. */
const moved = new WeakMap<UsualRange, Moved>();

/**
 * What is usual for a reading in its state; undefined when nobody says, or when it is said of engines with another fuel.
 * `beside` are the numbers of its cell.
 * A throttled vacuum is counted down from the barometer, so where that is less it is less by as much: by the barometer read beside it,
 * or at the site's altitude (U.S. Standard Atmosphere, 1976); the trade's rule for that is an inch for a thousand feet.
 */
export function usualRange(
  { limits, reading }: Measured,
  { fuel, site }: Pick<Car, 'fuel' | 'site'>,
  beside: readonly Measured[],
): UsualRange | undefined {
  const { usual } = limits;
  if (usual === undefined || !isTrueOf(usual.of, fuel)) return undefined;
  // An open throttle leaves as little at any height.
  if (limits.field !== 'vacuum' || usual.state === 'wide open throttle') return usual;
  const baro = beside.find((each) => each.reading.column === reading.column && tellsBarometer(each, site));
  return baro === undefined
    ? lessened(usual, lessAt(site), 'altitude')
    : lessened(usual, lessBy(baro.si), 'barometer');
}

/** A barometer that can be one, and not the weather report's. */
const tellsBarometer = (one: Measured, site: Site): boolean =>
  one.limits.field === 'baro' && !one.isImpossible && !isSeaLevelFigure(one, site);

function lessened(usual: UsualRange, less: number, by: Moved['by']): UsualRange {
  if (less === 0) return usual;
  const last = moved.get(usual);
  if (last?.less === less && last.by === by) return last.usual;
  const { range, source } = usual;
  const inHg = unitOf('inHg');
  const said =
    inHg === undefined ? '' : `${formatNumber(Number(fromSi(less, inHg, 'difference').toFixed(1)))} inHg`;
  const now = {
    ...usual,
    range: { low: range.low - less, high: range.high - less },
    source: `${source}, less ${said} for the ${by}`,
  };
  moved.set(usual, { less, by, usual: now });
  return now;
}

/** Where the header does not say what it burns, an engine is taken for one of those. */
function isTrueOf(of: Burning | undefined, fuel: string | undefined): boolean {
  if (of === undefined || fuel === undefined) return true;
  if (of === 'diesel' || isDiesel(fuel)) return of === 'diesel' && isDiesel(fuel);
  return of === 'spark' || !hasLittleCarbon(fuel);
}

const hasLittleCarbon = (fuel: string): boolean =>
  'hHmM'.includes(fuel.charAt(0)) && /^(methane|hydrogen)$/i.test(fuel);

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

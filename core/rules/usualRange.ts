import { standardPressure } from '../engine/air/standardAtmosphere.ts';
import { fromSi } from '../quantity/convert.ts';
import { formatNumber } from '../quantity/format.ts';
import { unitOf } from '../quantity/unit.ts';
import type { Interval } from '../signals/ranges.ts';
import type { Header } from '../study/header.ts';
import type { Measured } from './measured.ts';

/** What is usual for a reading in its engine state, and who says so. */
export interface Usual {
  readonly state: string;
  readonly range: Interval;
  readonly source: string;
}

/**
 * What is usual for a reading in its state; undefined when nobody says.
 * A vacuum is counted down from the barometer, so at a site with an altitude it is less by what the barometer is less
 * (U.S. Standard Atmosphere, 1976); the trade's rule for that is an inch for a thousand feet.
 */
export function usualRange({ reading, ranges }: Measured, header: Header): Usual | undefined {
  const state = reading.state?.known?.name;
  if (state === undefined || ranges.usual.length === 0) return undefined;
  const usual = ranges.usual.find((each) => each.state === state);
  if (usual === undefined || reading.signal?.name !== 'vacuum') return usual;
  const altitude = header.values.get('site.altitude')?.value;
  if (altitude?.kind !== 'one') return usual;
  const here = standardPressure(altitude.amount.si);
  const seaLevel = standardPressure(0);
  if (typeof here !== 'number' || typeof seaLevel !== 'number' || altitude.amount.si < noticeable)
    return usual;
  const less = seaLevel - here;
  const inHg = unitOf('inHg');
  const said =
    inHg === undefined ? '' : `${formatNumber(Number(fromSi(less, inHg, 'difference').toFixed(1)))} inHg`;
  return {
    state: usual.state,
    range: { low: usual.range.low - less, high: usual.range.high - less },
    source: `${usual.source}, less ${said} for the altitude`,
  };
}

/** Metres; below, the weather moves the barometer more than the altitude does. */
const noticeable = 150;

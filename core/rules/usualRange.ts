import { standardPressure } from '../engine/air/standardAtmosphere.ts';
import { fromSi } from '../quantity/convert.ts';
import { formatNumber } from '../quantity/format.ts';
import { unitOf } from '../quantity/unit.ts';
import type { Interval } from '../signals/ranges.ts';
import type { Header } from '../study/header.ts';
import { headerNumber } from './headerWords.ts';
import type { Measured } from './measured.ts';

/** What is usual for a reading in its engine state, and who says so. */
export interface Usual {
  readonly state: string;
  readonly range: Interval;
  readonly source: string;
  /** Pa: what was taken off for the altitude. */
  readonly less: number;
}

/**
 * What is usual for a reading in its state; undefined when nobody says.
 * A vacuum is counted down from the barometer, so at a site with an altitude it is less by what the barometer is less
 * (U.S. Standard Atmosphere, 1976); the trade's rule for that is an inch for a thousand feet.
 */
export function usualRange({ limits }: Measured, header: Header): Usual | undefined {
  const { usual } = limits;
  if (usual === undefined) return undefined;
  const less = limits.field === 'vacuum' ? lessAt(headerNumber(header, 'site.altitude')) : 0;
  const { state, range, source } = usual;
  if (less === 0) return { state, range, source, less };
  return { state, range: { low: range.low - less, high: range.high - less }, source, less };
}

/** Who says what is usual, and what was taken off. */
export function sourceOf({ source, less }: Usual): string {
  if (less === 0) return source;
  const inHg = unitOf('inHg');
  const said =
    inHg === undefined ? '' : `${formatNumber(Number(fromSi(less, inHg, 'difference').toFixed(1)))} inHg`;
  return `${source}, less ${said} for the altitude`;
}

/** By how much less the barometer is there than at the sea, Pa; nothing where that is not noticeable or not known. */
function lessAt(altitude: number | undefined): number {
  if (altitude === undefined || altitude < noticeable) return 0;
  const here = standardPressure(altitude);
  const seaLevel = standardPressure(0);
  return typeof here === 'number' && typeof seaLevel === 'number' ? seaLevel - here : 0;
}

/** Metres; below, the weather moves the barometer more than the altitude does. */
const noticeable = 150;

import { seaLevelPressure, standardPressure } from '../../engine/air/standardAtmosphere.ts';
import { stationPressure } from '../../engine/air/stationPressure.ts';
import type { Header } from '../../study/header.ts';
import type { When } from '../../study/types.ts';
import { headerNumber } from '../headerWords.ts';
import type { Measured } from '../measured.ts';
import { explained, pressureSensor, pressureStep, siteError, weather } from '../tolerance.ts';

/** A barometer, Pa, with its half-width and what it is called. */
export interface Known {
  readonly si: number;
  readonly halfWidth: number;
  readonly from: string;
  /** Where it is only an end of what the barometer can be. */
  readonly bound?: 'at most' | 'at least';
}

/** What a header says of the site's air. */
export interface Site {
  /** The weather report's figure, Pa, where the header has one. */
  readonly seaLevel: number | undefined;
  readonly byReport: Known | undefined;
  readonly byAltitude: Known | undefined;
}

export function siteOf(header: Header): Site {
  const altitude = headerNumber(header, 'site.altitude');
  const seaLevel = headerNumber(header, 'site.sea_level_pressure');
  if (altitude === undefined) return { seaLevel, byReport: undefined, byAltitude: undefined };
  const here = standardPressure(altitude);
  const reported = seaLevel === undefined ? undefined : stationPressure(seaLevel, altitude);
  return {
    seaLevel,
    byReport:
      typeof reported === 'number'
        ? { si: reported, halfWidth: siteError, from: 'the weather report at this altitude' }
        : undefined,
    byAltitude:
      typeof here === 'number' ? { si: here, halfWidth: weather, from: 'this altitude' } : undefined,
  };
}

/** The pressure at the site by the weather report's figure and the altitude, where the report is of that day. */
export function siteByReport({ byReport }: Site, when: When): Known | undefined {
  return when === 'before' ? byReport : undefined;
}

/** The same, or by the altitude alone with the weather as its half-width. */
export function siteByAnything({ seaLevel, byReport, byAltitude }: Site, when: When): Known | undefined {
  // Without an altitude there is neither.
  return seaLevel !== undefined && when === 'before' ? byReport : byAltitude;
}

/** The highest barometer where nothing tells the place: by the sea in high weather. */
export const highestBarometer: Known = {
  si: seaLevelPressure + weather,
  halfWidth: 0,
  from: 'the highest by the sea',
  bound: 'at most',
};

/** And the lowest, Pa: 5000 m up, where the highest roads are, in low weather. */
export const lowestBarometer: Known = {
  si: 50_000,
  halfWidth: 0,
  from: 'the lowest on any road',
  bound: 'at least',
};

/** As high as the weather report says for the sea level, at a place that is well above it. */
export function isSeaLevelFigure(one: Measured, site: Site): boolean {
  if (one.reading.signal?.name !== 'baro') return false;
  const { seaLevel } = site;
  const here = siteByReport(site, one.reading.when);
  if (here === undefined || seaLevel === undefined || one.si < here.si) return false;
  const isFar = one.si - here.si > explained(pressureSensor, pressureStep, here.halfWidth);
  return isFar && Math.abs(one.si - seaLevel) < rounding;
}

/** Pa: a figure that was copied is at most rounded. */
const rounding = 600;

import { standardPressure } from '../../engine/air/standardAtmosphere.ts';
import { stationPressure } from '../../engine/air/stationPressure.ts';
import { isKeyOnManifold } from '../../study/barometer.ts';
import type { Header } from '../../study/header.ts';
import type { When } from '../../study/types.ts';
import { headerNumber } from '../engineFacts.ts';
import { keeping } from '../kept.ts';
import type { Measured } from '../measured.ts';
import { fullNameOf, inForm, type Moment, stateName } from '../moments.ts';
import type { RuledCase } from '../rule.ts';
import { explained, pressureSensor, pressureStep, siteError, weather } from '../tolerance.ts';

/** The barometer that a moment's pressures are set against, Pa, with its half-width and what it is called. */
export interface Known {
  readonly si: number;
  readonly halfWidth: number;
  readonly from: string;
}

/**
 * The barometer of the same visit: of the moment, of its cell, the visit's own, a key-on manifold pressure, or the site's by the weather report.
 * Undefined where there is none, or where those of the visit contradict each other: then nothing can be set against them.
 */
export function barometerOf(moment: Moment, ruled: RuledCase): Known | undefined {
  const own = inForm(moment, 'baro', 'kPa');
  if (own !== undefined && !isSeaLevelFigure(own, ruled.header)) return knownFrom(own);
  const { cells, visits } = ofVisits(barometersOf(ruled));
  const near = cells.get(moment.cell);
  if (near !== undefined) return near;
  const visit = visits.get(moment.when);
  if (visit !== undefined) return visit === 'apart' ? undefined : visit;
  return siteBarometer(ruled.header, moment.when, false);
}

interface Barometers {
  readonly cells: ReadonlyMap<number, Known>;
  readonly visits: ReadonlyMap<string, Known | 'apart'>;
}

/** By the lasting list of the case's barometers. */
const keptOfVisits = keeping<readonly Measured[], Barometers>();

function ofVisits(barometers: readonly Measured[]): Barometers {
  return keptOfVisits(barometers, [], () => readVisits(barometers));
}

function readVisits(barometers: readonly Measured[]): Barometers {
  const cells = new Map<number, Known>();
  const visits = new Map<string, Known | 'apart'>();
  for (const one of barometers) {
    const { cell, when } = one.reading;
    if (one.reading.signal?.name === 'baro' && !cells.has(cell)) cells.set(cell, knownFrom(one));
    const before = visits.get(when);
    if (before === undefined) visits.set(when, knownFrom(one));
    else if (
      before !== 'apart' &&
      Math.abs(before.si - one.si) > barometersApart(before.halfWidth, one.halfWidth)
    )
      visits.set(when, 'apart');
  }
  return { cells, visits };
}

/**
 * Readings that are a barometer: `baro`, then manifold pressures with the key on and the engine still.
 * The weather report's figure in the place of `baro` is none; `seaLevelForStation` tells it.
 * It is a lasting list.
 */
export function barometersOf(ruled: RuledCase): readonly Measured[] {
  return ruled.once(readBarometers);
}

function readBarometers({ header, holding, lasting }: RuledCase): readonly Measured[] {
  const all: Measured[] = [];
  for (const moment of holding('baro')) {
    const baro = isAway(moment) ? undefined : inForm(moment, 'baro', 'kPa');
    if (baro !== undefined && !isSeaLevelFigure(baro, header)) all.push(baro);
  }
  for (const moment of holding('map')) {
    const map = inForm(moment, 'map', 'kPa');
    if (map !== undefined && isKeyOnManifold(map.reading)) all.push(map);
  }
  return lasting('barometers', all);
}

/** On the road the car may be anywhere: what the air has there is not the site's. */
const isAway = (moment: Moment): boolean => driven.has(stateName(moment) ?? '');

const driven: ReadonlySet<string> = new Set([
  'light cruise',
  'cruise',
  'heavy load',
  'wide open throttle',
  'tip-in',
  'deceleration',
  'road test',
]);

/** How far apart two barometers of one visit may be. */
export function barometersApart(one: number, other: number): number {
  return explained(
    Math.max(one, pressureSensor),
    Math.max(other, pressureSensor),
    pressureStep,
    pressureStep,
  );
}

const knownFrom = (one: Measured): Known => ({
  si: one.si,
  halfWidth: one.halfWidth,
  from: `\`${fullNameOf(one)}\``,
});

/**
 * The pressure at the site on the day of a visit: of the weather report's figure and the altitude, where the report is of that day.
 * Otherwise of the altitude alone, where that is asked for, with the weather as its half-width.
 */
export function siteBarometer(header: Header, when: When, byAltitudeAlone: boolean): Known | undefined {
  let site = sites.get(header);
  if (site === undefined) {
    site = siteOf(header);
    sites.set(header, site);
  }
  if (site.isReported && when === 'before') return site.byReport;
  return byAltitudeAlone ? site.byAltitude : undefined;
}

/** What a header says of the site's air. It is asked for each pressure of a case. */
interface Site {
  readonly isReported: boolean;
  readonly byReport: Known | undefined;
  readonly byAltitude: Known | undefined;
}

const sites = new WeakMap<Header, Site>();

function siteOf(header: Header): Site {
  const altitude = headerNumber(header, 'site.altitude');
  const seaLevel = headerNumber(header, 'site.sea_level_pressure');
  if (altitude === undefined) return { isReported: false, byReport: undefined, byAltitude: undefined };
  const here = standardPressure(altitude);
  const reported = seaLevel === undefined ? undefined : stationPressure(seaLevel, altitude);
  return {
    isReported: seaLevel !== undefined,
    byReport:
      typeof reported === 'number'
        ? { si: reported, halfWidth: siteError, from: 'the weather report at this altitude' }
        : undefined,
    byAltitude:
      typeof here === 'number' ? { si: here, halfWidth: weather, from: 'this altitude' } : undefined,
  };
}

/** As high as the weather report says for the sea level, at a place that is well above it. */
export function isSeaLevelFigure(one: Measured, header: Header): boolean {
  if (one.reading.signal?.name !== 'baro') return false;
  const site = siteBarometer(header, one.reading.when, false);
  const seaLevel = headerNumber(header, 'site.sea_level_pressure');
  if (site === undefined || seaLevel === undefined || one.si < site.si) return false;
  const isFar = one.si - site.si > explained(pressureSensor, pressureStep, site.halfWidth);
  return isFar && Math.abs(one.si - seaLevel) < rounding;
}

/** Pa: a figure that was copied is at most rounded. */
const rounding = 600;

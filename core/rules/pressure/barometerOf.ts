import { isSameList, lasting } from '../kept.ts';
import { inForm, type Measured } from '../measured.ts';
import { fullNameOf, type Moment, stateName } from '../moments.ts';
import type { RuledCase } from '../rule.ts';
import { explained, pressureSensor, pressureStep } from '../tolerance.ts';
import { isSeaLevelFigure, type Known, type Site, siteByAnything } from './site.ts';

/**
 * The barometer that a moment's pressures are set against, of the same visit: of the moment, of its cell, the visit's own, a key-on manifold
 * pressure, or the site's by the weather report or else by its altitude. Undefined where there is none, or where those of the visit
 * contradict each other: then nothing can be set against them.
 */
export function barometerOf(moment: Moment, ruled: RuledCase): Known | undefined {
  return barometerAmong(visitsOf(ruled), moment, ruled.car.site);
}

export function barometerAmong({ cells, visits }: Barometers, moment: Moment, site: Site): Known | undefined {
  const own = inForm(moment.values.baro, 'kPa');
  if (own !== undefined && !isSeaLevelFigure(own, site)) return knownFrom(own);
  const near = cells.get(moment.cell);
  if (near !== undefined) return near;
  const visit = visits.get(moment.when);
  if (visit !== undefined) return visit === 'apart' ? undefined : visit;
  return siteByAnything(site, moment.when);
}

/** What the barometers of a case say; the very same as before a change while they do. */
export function visitsOf(ruled: RuledCase): Barometers {
  return ruled.once(readVisits);
}

export interface Barometers {
  readonly all: readonly Measured[];
  readonly cells: ReadonlyMap<number, Known>;
  readonly visits: ReadonlyMap<string, Known | 'apart'>;
}

function readVisits(ruled: RuledCase, before: Barometers | undefined): Barometers {
  const all = barometersOf(ruled);
  if (before !== undefined && isSameList(before.all, all)) return before;
  const cells = new Map<number, Known>();
  const visits = new Map<string, Known | 'apart'>();
  for (const one of all) {
    const { cell, when, signal } = one.reading;
    if (signal?.name === 'baro' && !cells.has(cell)) cells.set(cell, knownFrom(one));
    const first = visits.get(when);
    if (first === undefined) visits.set(when, knownFrom(one));
    else if (
      first !== 'apart' &&
      Math.abs(first.si - one.si) > barometersApart(first.halfWidth, one.halfWidth)
    )
      visits.set(when, 'apart');
  }
  return { all, cells, visits };
}

/**
 * Readings that are a barometer: `baro`, then manifold pressures with the key on and the engine still.
 * The weather report's figure in the place of `baro` is none; `seaLevelForStation` tells it.
 * It is the very same list as before a change while they are.
 */
export function barometersOf(ruled: RuledCase): readonly Measured[] {
  return ruled.once(readBarometers);
}

function readBarometers(
  { car, holding }: RuledCase,
  before: readonly Measured[] | undefined,
): readonly Measured[] {
  const all: Measured[] = [];
  for (const moment of holding('baro')) {
    const baro = isAway(moment) ? undefined : inForm(moment.values.baro, 'kPa');
    if (baro !== undefined && !isSeaLevelFigure(baro, car.site)) all.push(baro);
  }
  for (const moment of holding('map')) {
    const map = stateName(moment) === 'key on engine off' ? inForm(moment.values.map, 'kPa') : undefined;
    if (map !== undefined) all.push(map);
  }
  return lasting(all, before);
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

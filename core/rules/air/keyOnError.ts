import type { Measured } from '../measured.ts';
import type { Moment } from '../moments.ts';
import { barometersApart, visitsOf } from '../pressure/barometerOf.ts';
import { siteThatRefuses } from '../pressure/barometerUnfit.ts';
import type { RuledCase } from '../rule.ts';

/**
 * Pa: what the manifold sensor showed too much with the key on at that visit, where the place or another barometer refuses it.
 * That is told where it was read; undefined where nothing is wrong with it, or it was not read.
 */
export function keyOnError({ when }: Moment, ruled: RuledCase): number | undefined {
  const all = visitsOf(ruled).all.filter(({ reading }) => reading.when === when);
  for (const map of all) {
    if (!isOf('map', map)) continue;
    const here = siteThatRefuses(map, ruled.car.site);
    if (here !== undefined) return map.si - here.si;
    const baro = all.find((each) => isOf('baro', each) && areApart(map, each));
    if (baro !== undefined) return map.si - baro.si;
  }
  return undefined;
}

const isOf = (name: string, { reading }: Measured): boolean => reading.signal?.name === name;

const areApart = (one: Measured, other: Measured): boolean =>
  Math.abs(one.si - other.si) > barometersApart(one.halfWidth, other.halfWidth);

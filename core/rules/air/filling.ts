import { volumetricEfficiency } from '../../engine/air/airFlow.ts';
import { inForm, type Measured } from '../measured.ts';
import { type Moment, stateName } from '../moments.ts';
import { barometerOf } from '../pressure/barometerOf.ts';
import { soundManifold } from '../pressure/manifold.ts';
import type { RuledCase } from '../rule.ts';

/** The volumetric efficiency that a moment's air flow means, and what an engine can have there. */
export interface Filling {
  readonly maf: Measured;
  /** The manifold pressure that its density was taken from, where it was. */
  readonly map: Measured | undefined;
  readonly share: number;
  readonly low: number;
  readonly high: number;
  /** An intake-air sensor that is hotter than such air gets: its number was not taken. */
  readonly doubted: Measured | undefined;
  /** What its density was taken from. */
  readonly from: 'manifold pressure' | 'barometer';
}

/**
 * Filling by the manifold pressure, or at full throttle by the barometer. Undefined where something for it was not measured,
 * and in states that do not hold still.
 */
export function fillingOf(moment: Moment, ruled: RuledCase): Filling | undefined {
  const { displacement, isTwoStroke, isUnboosted } = ruled.car;
  const limits = isTwoStroke ? undefined : limitsAt(moment, isUnboosted);
  const maf = inForm(moment.values.maf, 'g/s');
  const rpm = inForm(moment.values.rpm, 'rpm');
  if (limits === undefined || maf === undefined || rpm === undefined || displacement === undefined)
    return undefined;
  const map = soundManifold(moment, ruled);
  const isFull = isUnboosted && stateName(moment) === 'wide open throttle';
  const hasMap = moment.values.map !== undefined;
  const pressure = map?.si ?? (isFull && !hasMap ? barometerOf(moment, ruled)?.si : undefined);
  // Air of an unknown temperature is taken for 40 °C: 30 K more or less are a tenth of its density.
  const charge = inForm(moment.values.iat, '°C');
  const doubted = charge !== undefined && isTooHot(charge, moment, isUnboosted) ? charge : undefined;
  const temperature = (doubted === undefined ? charge?.si : undefined) ?? 313.15;
  if (pressure === undefined) return undefined;
  const share = volumetricEfficiency(maf.si, rpm.si, pressure, temperature, displacement);
  if (typeof share !== 'number') return undefined;
  const from = map === undefined ? 'barometer' : 'manifold pressure';
  return { maf, map, share, low: limits.low, high: limits.high, doubted, from };
}

/** But for what a compressor heats on the road, the air is not hotter than the coolant, which `chargeHotterThanCoolant` tells; nor, beside no coolant, than intake air gets. */
function isTooHot(iat: Measured, moment: Moment, isUnboosted: boolean): boolean {
  const isStanding = standing.has(stateName(moment) ?? '');
  if (!isStanding && !isUnboosted) return false;
  const ect = inForm(moment.values.ect, '°C');
  if (ect !== undefined && iat.si > ect.si) return true;
  return iat.si - iat.halfWidth > (isStanding ? hottestStanding : hottestDriving);
}

const standing: ReadonlySet<string> = new Set([
  'warm idle',
  'idle in gear',
  '1500 rpm no load',
  '2500 rpm no load',
]);

/** K: the most that air takes up under a bonnet, 85 °C while the car stands and 70 °C while it is driven (common practice). */
const hottestStanding = 358.15;
const hottestDriving = 343.15;

type Limits = Pick<Filling, 'low' | 'high'>;

/**
 * What four-stroke engines have, referred to the density in the manifold (common practice; 75 to 95 % at full throttle, less through a
 * nearly closed throttle, where the gas that stays in the cylinder swells: Heywood, Internal Combustion Engine Fundamentals, section 6.2).
 * The limits leave room for a meter, a pressure and a temperature that are a little off, and behind a compressor for air that is
 * hotter than its sensor before it says.
 */
function limitsAt(moment: Moment, isUnboosted: boolean): Limits | undefined {
  switch (stateName(moment)) {
    case 'wide open throttle': {
      const isFast = (inForm(moment.values.rpm, 'rpm')?.si ?? 0) > fast;
      if (!isUnboosted) return { low: 0.5, high: 1.3 };
      return { low: isFast ? 0.7 : 0.6, high: 1.2 };
    }
    case 'warm idle':
    case 'idle in gear':
    case '1500 rpm no load':
    case '2500 rpm no load':
    case 'light cruise':
    case 'cruise':
    case 'heavy load':
      return { low: 0.38, high: 1.15 };
    default:
      return undefined;
  }
}

/** Turns a second, 2500 rpm: below, many engines fill less well. */
const fast = 2490 / 60;

/** Beyond what an engine can have. */
export const isUnlikely = ({ share, low, high }: Filling): boolean => share < low || share > high;

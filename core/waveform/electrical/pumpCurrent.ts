import { cannotCompute } from '../../expression/absent.ts';
import type { Absent } from '../../expression/value.ts';
import type { Recorded } from '../recorded.ts';
import { type Ripple, rippleOf } from './ripple.ts';

/** What the current of a fuel pump's brushed motor shows, SI (speed in turns per second). */
export interface PumpReading {
  readonly mean: number;
  readonly ripple: number;
  readonly frequency: number;
  readonly speed: number;
  /** The weakest hump of a turn against the mean of all: low means a bad bar. */
  readonly weakest: number | Absent;
}

/** Speeds that a pump can have, turns per second: 1000 to 12,000 rpm. */
const slowest = 1000 / 60;
const fastest = 200;

/**
 * Humps a turn of a motor with two brushes: one for each commutator bar when their number is even,
 * two for each when it is odd, since the brushes then change bars by turns: bars · poles / gcd(bars, poles) with two poles
 * (value from memory).
 */
export function humpsPerTurn(bars: number): number {
  return bars % 2 === 0 ? bars : 2 * bars;
}

/** The pump's speed from the commutator's ripple and the number of its bars; O(n log n) in at most 131,072 samples. */
export function pumpCurrent(record: Recorded, bars: number): PumpReading | Absent {
  if (!(Number.isInteger(bars) && bars >= 3 && bars <= 40))
    return cannotCompute('a commutator has a whole number of bars, from 3 to 40');
  const humps = humpsPerTurn(bars);
  const ripple = rippleOf(record, slowest * humps, fastest * humps);
  if ('kind' in ripple) return ripple;
  return {
    mean: ripple.mean,
    ripple: ripple.height,
    frequency: ripple.frequency,
    speed: ripple.frequency / humps,
    weakest: weakestOf(ripple, humps),
  };
}

/** The least of the heights by their place in a turn, against their mean. */
function weakestOf({ heightOf }: Ripple, humps: number): number | Absent {
  let sum = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let bar = 0; bar < humps; bar++) {
    const height = heightOf(bar, humps);
    if (height === undefined) return cannotCompute('there are fewer than three turns in it: record longer');
    sum += height;
    least = Math.min(least, height);
  }
  return least / (sum / humps);
}

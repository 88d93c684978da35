import { cannotCompute } from '../../expression/absent.ts';
import type { Absent } from '../../expression/value.ts';
import { momentAt } from '../crossings.ts';
import { median } from '../quantile.ts';
import { type Recorded, swingOf } from '../recorded.ts';

/** The levels that a switching sensor is read at, in the samples' unit: low < level < high. */
export interface SwitchLevels {
  readonly level: number;
  readonly low: number;
  readonly high: number;
}

/** What one pass over a switching sensor's samples finds. */
export interface Switching {
  /** From `low` or below to `high` or above, or back, each counted once. */
  readonly switches: number;
  /** Seconds above the level, the line between two samples cut where it passes. */
  readonly above: number;
  /** Median seconds from `low` up to `high`, and from `high` down to `low`. */
  readonly rise: number | Absent;
  readonly fall: number | Absent;
  readonly minimum: number;
  readonly maximum: number;
  /** Medians of the lowest points of the stays at `low` or below and the highest of those at `high` or above: a spike does not move them. */
  readonly usualLow: number;
  readonly usualHigh: number;
}

/** Where a sample lies: up to `low`, up to the level, below `high`, from `high` on. */
type Zone = 0 | 1 | 2 | 3;

/**
 * Reads a switching sensor in one pass. Count, share and times agree with `crossingsOf`, `shareAbove`, `riseTime` and `fallTime`;
 * each stay in a zone is one short loop, which keeps a million samples cheap.
 * O(n); the levels must ascend.
 */
export function switchingOf(
  { time, samples, starts }: Recorded,
  { level, low, high }: SwitchLevels,
): Switching | Absent {
  if (!(low < level && level < high)) return cannotCompute('the levels must ascend: low, level, high');
  const rises: number[] = [];
  const falls: number[] = [];
  const bottoms: number[] = [];
  const tops: number[] = [];
  let steepRises = 0;
  let steepFalls = 0;
  let above = 0;
  for (let stretch = 0; stretch < starts.length; stretch++) {
    const start = starts[stretch] ?? 0;
    const end = starts[stretch + 1] ?? samples.length;
    let i = start;
    /** The zone left, the outer zone (0 or 3) seen last and the last place in it, and since when it is above the level. */
    let before: Zone | undefined;
    let outer: Zone | undefined;
    let outerAt = start;
    let since = 0;
    while (i < end) {
      const first = samples[i] ?? Number.NaN;
      const zone: Zone = first <= low ? 0 : first <= level ? 1 : first < high ? 2 : 3;
      if (zone >= 2 && (before === undefined || before < 2))
        since = before === undefined ? (time[i] ?? 0) : momentAt(time, samples, i - 1, level);
      if (zone < 2 && before !== undefined && before >= 2)
        above += momentAt(time, samples, i - 1, level) - since;
      if (zone === 3 && outer === 0) {
        rises.push(momentAt(time, samples, i - 1, high) - momentAt(time, samples, outerAt, low));
        if (outerAt === i - 1) steepRises++;
      }
      if (zone === 0 && outer === 3) {
        falls.push(momentAt(time, samples, i - 1, low) - momentAt(time, samples, outerAt, high));
        if (outerAt === i - 1) steepFalls++;
      }
      let extreme = first;
      if (zone === 0) {
        for (i++; i < end; i++) {
          const sample = samples[i] ?? Number.NaN;
          if (!(sample <= low)) break;
          if (sample < extreme) extreme = sample;
        }
        // Noise on the way through the level leaves and comes back: that is one stay.
        if (outer === 0) bottoms[bottoms.length - 1] = Math.min(extreme, bottoms.at(-1) ?? extreme);
        else bottoms.push(extreme);
      } else if (zone === 3) {
        for (i++; i < end; i++) {
          const sample = samples[i] ?? Number.NaN;
          if (!(sample >= high)) break;
          if (sample > extreme) extreme = sample;
        }
        if (outer === 3) tops[tops.length - 1] = Math.max(extreme, tops.at(-1) ?? extreme);
        else tops.push(extreme);
      } else if (zone === 1) {
        for (i++; i < end; i++) {
          const sample = samples[i] ?? Number.NaN;
          if (!(sample <= level && sample > low)) break;
        }
      } else {
        for (i++; i < end; i++) {
          const sample = samples[i] ?? Number.NaN;
          if (!(sample > level && sample < high)) break;
        }
      }
      if (zone === 0 || zone === 3) {
        outer = zone;
        outerAt = i - 1;
      }
      before = zone;
    }
    if (before !== undefined && before >= 2) above += (time[end - 1] ?? 0) - since;
  }
  const ends = bottoms.length > 0 && tops.length > 0 ? undefined : swingOf(samples);
  const minimum = bottoms.length > 0 ? least(bottoms) : (ends?.low ?? Number.NaN);
  const maximum = tops.length > 0 ? -least(tops, -1) : (ends?.high ?? Number.NaN);
  return {
    switches: rises.length + falls.length,
    above,
    rise: usualTime(rises, steepRises),
    fall: usualTime(falls, steepFalls),
    minimum,
    maximum,
    usualLow: bottoms.length > 0 ? median(bottoms) : minimum,
    usualHigh: tops.length > 0 ? median(tops) : maximum,
  };
}

function least(numbers: readonly number[], sign: 1 | -1 = 1): number {
  let found = Number.POSITIVE_INFINITY;
  for (const each of numbers) if (sign * each < found) found = sign * each;
  return found;
}

function usualTime(edges: readonly number[], steep: number): number | Absent {
  if (edges.length === 0) return cannotCompute('no edge passes both levels');
  if (2 * steep > edges.length)
    return cannotCompute('most edges pass both levels between two samples: it was recorded too slowly');
  return median(edges);
}

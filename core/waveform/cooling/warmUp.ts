import { cannotCompute } from '../../expression/absent.ts';
import type { Absent } from '../../expression/value.ts';
import { median } from '../quantile.ts';
import type { Recorded } from '../recorded.ts';
import { slopeBreak } from './slopeBreak.ts';

/** What a coolant curve from a cold start shows: K and s. */
export interface WarmUpReading {
  readonly start: number;
  /** Where the climb breaks: the thermostat opens. */
  readonly opening: number | Absent;
  readonly openingTime: number | Absent;
  /** The median of the last quarter of what comes after the break; without a break, of the record's last tenth. */
  readonly regulating: number;
  /** From the start of the record until the coolant is first within 2 K of what it regulates at. */
  readonly regulatingTime: number | Absent;
}

/** Means of so many equal spans of time are looked at: fast, and quiet. */
const spans = 240;
/** The slope after the break must be at most this share of that before it. */
const broken = 0.45;
/** A climb that has become slower than this share of its steepest has no break left in it. */
const quick = 0.15;
/** A warm-up climbs this far at least, K. */
const leastClimb = 15;
/** It regulates within this band, K. */
const regulates = 2;

/**
 * Reads a warm-up off means of 240 equal spans of time; where its climb breaks off is found by `slopeBreak`. O(n).
 */
export function warmUp(record: Recorded): WarmUpReading | Absent {
  const { time, samples } = record;
  if (!(record.duration > 60)) return cannotCompute('a warm-up takes minutes: the record is too short');
  const means = meansOf(time, samples);
  const { moments, values } = means;
  const count = values.length;
  if (count < 20) return cannotCompute('there are too few samples for a warm-up: twenty or more');
  const start = values[0] ?? Number.NaN;
  const top = median(values.slice(-Math.max(3, Math.floor(count / 10))));
  if (!(top - start > leastClimb))
    return cannotCompute('the coolant hardly gets warmer: record from the cold start on');
  const found = slopeBreak(moments, values, broken, quick * steepest(moments, values));
  const rest = found === undefined ? [] : values.slice(found.place);
  const regulating =
    found === undefined ? top : median(rest.slice(-Math.max(3, Math.floor(rest.length / 4))));
  const reached = firstWithin(moments, values, regulating);
  const steady =
    found === undefined
      ? cannotCompute('it still climbs at the end: no temperature is held')
      : reached - (time[0] ?? 0);
  const first = moments[0] ?? 0;
  return {
    start,
    opening: found?.level ?? noBreak,
    openingTime: found === undefined ? noBreak : found.moment - (time[0] ?? first),
    regulating,
    regulatingTime: steady,
  };
}

const noBreak = cannotCompute(
  'the curve has no break: a thermostat that stands open, or a record that ends before it opens',
);

function meansOf(time: Float64Array, samples: Float64Array): { moments: number[]; values: number[] } {
  const first = time[0] ?? 0;
  const wide = ((time[time.length - 1] ?? 0) - first) / spans;
  const moments: number[] = [];
  const values: number[] = [];
  let next = 0;
  for (let k = 1; k <= spans; k++) {
    const end = k === spans ? Number.POSITIVE_INFINITY : first + k * wide;
    let [sum, when, there] = [0, 0, 0];
    for (; next < samples.length && (time[next] ?? 0) < end; next++, there++) {
      sum += samples[next] ?? 0;
      when += time[next] ?? 0;
    }
    if (there === 0) continue;
    moments.push(when / there);
    values.push(sum / there);
  }
  return { moments, values };
}

/** The steepest climb over a twelfth of the record, K/s. */
function steepest(moments: readonly number[], values: readonly number[]): number {
  const wide = Math.max(2, Math.floor(values.length / 12));
  let most = 0;
  for (let i = wide; i < values.length; i++) {
    const slope =
      ((values[i] ?? 0) - (values[i - wide] ?? 0)) / ((moments[i] ?? 0) - (moments[i - wide] ?? 0));
    if (slope > most) most = slope;
  }
  return most;
}

/** When the values first are within the band of the level. */
function firstWithin(moments: readonly number[], values: readonly number[], level: number): number {
  const at = values.findIndex((each) => Math.abs(each - level) <= regulates);
  return moments[at] ?? Number.NaN;
}

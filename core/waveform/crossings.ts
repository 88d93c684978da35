import { type Recorded, type Swing, swingOf } from './recorded.ts';

/** The crossings of a level in one stretch: they rise and fall by turns. */
export interface Crossings {
  /** Seconds, ascending. */
  readonly times: readonly number[];
  readonly risesFirst: boolean;
}

/**
 * The crossings of a level, stretch by stretch. One counts once a sample lies beyond level + hysteresis/2 upward
 * or below level − hysteresis/2 downward; its moment is the last at which the straight line between the samples
 * passed the level before that. Touching is not crossing. One pass.
 */
export function crossingsOf(
  { time, samples, starts }: Recorded,
  level: number,
  hysteresis: number,
): readonly Crossings[] {
  return starts.map((start, at) =>
    inStretch(
      time,
      samples,
      start,
      starts[at + 1] ?? samples.length,
      level,
      level - hysteresis / 2,
      level + hysteresis / 2,
    ),
  );
}

function inStretch(
  time: Float64Array,
  samples: Float64Array,
  start: number,
  end: number,
  level: number,
  low: number,
  high: number,
): Crossings {
  const at = (i: number): number => samples[i] ?? Number.NaN;
  const times: number[] = [];
  let i = start;
  while (i < end && at(i) >= low && at(i) <= high) i++;
  let above = i < end && at(i) > high;
  const risesFirst = !above;
  for (;;) {
    // Each state asks one question of a sample, which keeps a million of them cheap.
    if (above) while (i < end && at(i) >= low) i++;
    else while (i < end && at(i) <= high) i++;
    if (i >= end) break;
    above = !above;
    times.push(momentOf(time, samples, start, i, level, above));
  }
  return { times, risesFirst };
}

/** Back from the sample that decided to the two between which the level was passed. */
function momentOf(
  time: Float64Array,
  samples: Float64Array,
  start: number,
  decided: number,
  level: number,
  rising: boolean,
): number {
  let before = decided - 1;
  while (before > start) {
    const sample = samples[before] ?? Number.NaN;
    if (rising ? sample <= level : sample >= level) break;
    before--;
  }
  return momentAt(time, samples, before, level);
}

/** When the straight line from this sample to the next passes a level, s. */
export function momentAt(time: Float64Array, samples: Float64Array, before: number, level: number): number {
  const from = samples[before] ?? Number.NaN;
  const to = samples[before + 1] ?? Number.NaN;
  const start = time[before] ?? Number.NaN;
  const share = (level - from) / (to - from);
  return start + share * ((time[before + 1] ?? Number.NaN) - start);
}

/** The rising ones. */
export function risingOf({ times, risesFirst }: Crossings): readonly number[] {
  const first = risesFirst ? 0 : 1;
  return times.filter((_, at) => at % 2 === first);
}

/** The band about a level that a signal must leave for a cycle to count, as a share of its swing: noise inside it is passed over. */
const tolerance = 0.1;

/** The crossings of the middle between the least and the greatest sample; undefined when nothing moves. */
export function middleCrossings(record: Recorded): readonly Crossings[] | undefined {
  const { low, high } = swingOf(record.samples);
  if (!(high > low)) return undefined;
  return crossingsOf(record, low + (high - low) / 2, tolerance * (high - low));
}

/** The crossings of a level with the same tolerance, less where the level lies near an end of the swing. */
export function cycleCrossings(record: Recorded, level: number, { low, high }: Swing): readonly Crossings[] {
  const room = Math.min(level - low, high - level);
  return crossingsOf(record, level, Math.max(0, Math.min(tolerance * (high - low), room)));
}

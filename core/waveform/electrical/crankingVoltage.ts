import { cannotCompute } from '../../expression/absent.ts';
import type { Absent } from '../../expression/value.ts';
import { median } from '../quantile.ts';
import { type Recorded, swingOf } from '../recorded.ts';

/** What the battery's voltage shows around a start, V and s. */
export interface CrankingReading {
  /** Before the starter turns. */
  readonly rest: number;
  /** The lowest of all: the moment when the starter engages. */
  readonly dip: number;
  /** The lowest and the mean while it turns. */
  readonly minimum: number | Absent;
  readonly mean: number | Absent;
  readonly time: number;
  /** The median of what comes after the start. */
  readonly after: number | Absent;
}

/** A start pulls the voltage down by this much at least, V. */
const leastDip = 0.5;
/** Seconds after the start of the dip until the starter turns the engine; seconds above the level that end it. */
const engaging = 0.2;
/** Seconds before that end in which the voltage may be on its way up already. */
const recovering = 0.1;
const ended = 0.25;

/** Reads one start off the battery's voltage. The record begins before the starter engages. One pass and medians, O(n). */
export function crankingVoltage({ time, samples }: Recorded): CrankingReading | Absent {
  const count = samples.length;
  const { low } = swingOf(samples);
  const lead = Math.max(1, Math.min(Math.floor(count / 20), 2000));
  const rest = median(samples.subarray(0, lead));
  if (!(rest - low > leastDip))
    return cannotCompute(
      'the voltage does not fall as it does when a starter turns: record from before the start',
    );
  const level = rest - (rest - low) / 4;
  let start = 0;
  while (start < count && (samples[start] ?? 0) > level) start++;
  let last = start;
  for (let i = start; i < count && (time[i] ?? 0) - (time[last] ?? 0) <= ended; i++)
    if ((samples[i] ?? 0) <= level) last = i;
  const begin = time[start] ?? 0;
  const end = time[last] ?? 0;
  const turning: number[] = [];
  for (let i = start; i <= last; i++) {
    const now = time[i] ?? 0;
    if (now - begin >= engaging && end - now >= recovering) turning.push(samples[i] ?? 0);
  }
  const settled: number[] = [];
  for (let i = last + 1; i < count; i++) if ((time[i] ?? 0) - end > ended) settled.push(samples[i] ?? 0);
  const few = turning.length < 5;
  return {
    rest,
    dip: low,
    minimum: few ? tooShort : swingOf(Float64Array.from(turning)).low,
    mean: few ? tooShort : turning.reduce((a, b) => a + b, 0) / turning.length,
    time: end - begin,
    after: settled.length < 5 ? noAfter : median(settled),
  };
}

const tooShort = cannotCompute(
  'the starter did not turn long enough: there are no five samples between its first 0.2 s and its last 0.1 s',
);
const noAfter = cannotCompute('the record ends with the start');

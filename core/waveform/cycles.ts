import { cannotCompute } from '../expression/absent.ts';
import type { Absent } from '../expression/value.ts';
import { crossingsOf, cycleCrossings, middleCrossings, momentAt, risingOf } from './crossings.ts';
import { type Recorded, swingOf } from './recorded.ts';

/** How often a level is crossed, either way (see `crossingsOf`). Level and hysteresis in the samples' unit. */
export function countCrossings(record: Recorded, level: number, hysteresis: number): number | Absent {
  if (!(hysteresis >= 0)) return cannotCompute('a hysteresis is not below 0');
  let count = 0;
  for (const { times } of crossingsOf(record, level, hysteresis)) count += times.length;
  return count;
}

/** Crossings per second recorded: two make one cycle. */
export function switchRate(record: Recorded, level: number, hysteresis: number): number | Absent {
  if (!(record.duration > 0)) return cannotCompute('a switching rate needs samples at two moments');
  const count = countCrossings(record, level, hysteresis);
  return typeof count === 'number' ? count / record.duration : count;
}

/**
 * The mean time, s, from one rising crossing of the middle between least and greatest sample to the next.
 * Noise of up to a tenth of the swing makes no cycle; gaps in the record are left out.
 */
export function periodOf(record: Recorded): number | Absent {
  const stretches = middleCrossings(record);
  if (stretches === undefined) return flat;
  let cycles = 0;
  let seconds = 0;
  for (const stretch of stretches) {
    const rising = risingOf(stretch);
    if (rising.length < 2) continue;
    cycles += rising.length - 1;
    seconds += (rising.at(-1) ?? 0) - (rising[0] ?? 0);
  }
  return cycles > 0 && seconds > 0 ? seconds / cycles : cannotCompute('there is no whole cycle in it');
}

export function frequencyOf(record: Recorded): number | Absent {
  const period = periodOf(record);
  return typeof period === 'number' ? 1 / period : period;
}

/**
 * The share of the time above a level, over whole cycles: from the first rising crossing to the last.
 * Left out, the level is the middle between least and greatest sample.
 */
export function dutyOf(record: Recorded, level: number | undefined): number | Absent {
  const swing = swingOf(record.samples);
  if (!(swing.high > swing.low)) return flat;
  const middle = level ?? swing.low + (swing.high - swing.low) / 2;
  if (!(middle > swing.low && middle < swing.high)) return cannotCompute('the level is never crossed');
  let above = 0;
  let whole = 0;
  for (const { times, risesFirst } of cycleCrossings(record, middle, swing)) {
    for (let i = risesFirst ? 0 : 1; i + 2 < times.length; i += 2) {
      const rise = times[i] ?? 0;
      above += (times[i + 1] ?? 0) - rise;
      whole += (times[i + 2] ?? 0) - rise;
    }
  }
  return whole > 0 ? above / whole : cannotCompute('there is no whole cycle in it');
}

/** The share of the recorded time above a level, the line between two samples cut where it passes the level. */
export function shareAbove({ time, samples, starts, duration }: Recorded, level: number): number | Absent {
  if (!(duration > 0)) return cannotCompute('a share of the time needs samples at two moments');
  let above = 0;
  for (const [at, start] of starts.entries()) {
    const end = starts[at + 1] ?? samples.length;
    let i = start;
    while (i < end) {
      // A run below and a run above: the moments matter where one ends only.
      while (i < end && (samples[i] ?? Number.NaN) <= level) i++;
      if (i >= end) break;
      const from = i > start ? momentAt(time, samples, i - 1, level) : (time[i] ?? 0);
      while (i < end && (samples[i] ?? Number.NaN) > level) i++;
      const to = i < end ? momentAt(time, samples, i - 1, level) : (time[i - 1] ?? 0);
      above += to - from;
    }
  }
  return above / duration;
}

const flat = cannotCompute('it does not change: every sample is the same');

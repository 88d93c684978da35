import { firstAtOrAfter } from '../../expression/series.ts';
import { crossingsOf } from '../crossings.ts';
import { median, quantile } from '../quantile.ts';
import type { Recorded } from '../recorded.ts';

/** One time that the current was on: places of its first and last sample. */
export interface Pulse {
  readonly first: number;
  /** The last sample before the current is cut. */
  readonly last: number;
}

/** The current when it is off and about where it is highest. */
export interface PulseLevels {
  readonly off: number;
  readonly top: number;
}

/** Off is the median of what lies near the bottom, the top the highest thousandth: single spikes move neither. */
export function pulseLevels(samples: Float64Array): PulseLevels {
  const bottom = quantile(Float64Array.from(samples), 0.02);
  const top = quantile(Float64Array.from(samples), 0.999);
  const near = bottom + share * (top - bottom);
  return { off: median(samples.filter((each) => each <= near)), top };
}

/** A pulse counts from a seventh of the top on; noise about that is passed over. */
const share = 0.15;
const band = 0.1;

/**
 * The whole pulses of a current that is switched on and off: those whose beginning and end are both in the record.
 * A pulse ends where the current falls below nine tenths of what it was in its last third. O(n).
 */
export function pulsesOf(record: Recorded, { off, top }: PulseLevels): readonly Pulse[] {
  const swing = top - off;
  if (!(swing > 0)) return [];
  const { time, samples } = record;
  const pulses: Pulse[] = [];
  for (const { times, risesFirst } of crossingsOf(record, off + share * swing, band * swing)) {
    for (let k = risesFirst ? 0 : 1; k + 1 < times.length; k += 2) {
      const first = firstAtOrAfter(time, times[k] ?? 0);
      const end = firstAtOrAfter(time, times[k + 1] ?? 0);
      if (end - first < fewest) continue;
      const held = median(samples.subarray(end - Math.max(1, Math.floor((end - first) / 3)), end));
      let last = end - 1;
      while (last > first && (samples[last] ?? 0) < off + 0.9 * (held - off)) last--;
      last = beforeFall(samples, first, last);
      if (last - first >= fewest) pulses.push({ first, last });
    }
  }
  return pulses;
}

/** A ramp of fewer samples says nothing. */
const fewest = 8;

/** Back over samples that fall faster than the pulse usually changes: the current is cut already. */
function beforeFall(samples: Float64Array, first: number, last: number): number {
  const steps = Float64Array.from({ length: last - first }, (_, i) =>
    Math.abs((samples[first + i + 1] ?? 0) - (samples[first + i] ?? 0)),
  );
  const fast = 3 * quantile(steps, 0.5);
  let at = last;
  while (at > first && (samples[at - 1] ?? 0) - (samples[at] ?? 0) > fast) at--;
  return at;
}

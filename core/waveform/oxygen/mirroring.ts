import { cannotCompute } from '../../expression/absent.ts';
import type { Absent } from '../../expression/value.ts';
import { correlationOf, lagOf } from '../likeness.ts';
import type { Recorded } from '../recorded.ts';
import { along } from '../resample.ts';

/** How much the rear sensor moves like the front one, when it is moved back by its delay. */
export interface Mirroring {
  /** Pearson's coefficient at that delay. */
  readonly correlation: number;
  /** Seconds by which the rear comes later. */
  readonly lag: number;
}

/** Enough for the shape of a switching sensor; more would only be slow. */
const places = 2 ** 14;
/** Gas takes well under this from one sensor to the other, and the catalyst adds little, s. */
const longest = 2;

/**
 * The delay, from 0 to 2 s, at which front and rear move most alike, and how much they do there.
 * Both are laid on even steps; where there are more than 16,384 of them, on as many (longer stretches are read more coarsely).
 */
export function mirroringOf(front: Recorded, rear: Recorded): Mirroring | Absent {
  if (front.starts.length > 1 || rear.starts.length > 1)
    return cannotCompute('the record has a gap: cut one stretch out with `from … to`');
  const from = Math.max(front.time[0] ?? 0, rear.time[0] ?? 0);
  const to = Math.min(front.time.at(-1) ?? 0, rear.time.at(-1) ?? 0);
  const step = Math.max(front.step, rear.step, (to - from) / (places - 1));
  const count = Math.floor((to - from) / step + 1 + 1e-6);
  if (!(count >= 8))
    return cannotCompute('a likeness needs at least eight samples of both at the same moments');
  const even = Float64Array.from({ length: count }, (_, i) => Math.min(from + i * step, to));
  const evenly = ({ time, samples }: Recorded): Float64Array => along(time, samples, new Set(), even);
  const [x, y] = [evenly(front), evenly(rear)];
  const steps = lagOf(x, y, { earliest: 0, latest: Math.round(longest / step) });
  if (typeof steps !== 'number') return steps;
  const shift = Math.max(0, Math.round(steps));
  const correlation = correlationOf(x.subarray(0, count - shift), y.subarray(shift));
  return typeof correlation === 'number' ? { correlation, lag: steps * step } : correlation;
}

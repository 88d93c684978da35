import { cannotCompute } from '../expression/absent.ts';
import { aligned } from '../expression/series.ts';
import type { Absent, Series } from '../expression/value.ts';
import { lagOf } from './likeness.ts';
import { isRecorded, type Recorded, recorded } from './recorded.ts';
import { along } from './resample.ts';

/**
 * The seconds by which y comes later than x, of channels of one capture: both are laid on even steps first.
 */
export function lagBetween(x: Series, y: Series): number | Absent {
  const [a, b] = aligned(x, y);
  const left = recorded(a);
  const right = recorded(b);
  if (!isRecorded(left)) return left;
  if (!isRecorded(right)) return right;
  if (left.starts.length > 1 || right.starts.length > 1)
    return cannotCompute('the record has a gap: cut one stretch out with `from … to`');
  const from = Math.max(left.time[0] ?? 0, right.time[0] ?? 0);
  const to = Math.min(left.time.at(-1) ?? 0, right.time.at(-1) ?? 0);
  const step = Math.max(left.step, right.step);
  const count = Math.floor((to - from) / step + 1 + 1e-6);
  if (!(count >= 4)) return cannotCompute('a lag needs at least four samples at the same moments');
  if (count > mostSamples) return cannotCompute('the record is too long: cut it with `from … to`');
  const even = new Float64Array(count);
  for (let i = 0; i < count; i++) even[i] = Math.min(from + i * step, to);
  const evenly = ({ time, samples }: Recorded): Float64Array => along(time, samples, noGaps, even);
  const steps = lagOf(evenly(left), evenly(right));
  return typeof steps === 'number' ? steps * step : steps;
}

/** Bound of what is transformed at once: 4 million samples. */
const mostSamples = 2 ** 22;
const noGaps: ReadonlySet<number> = new Set();

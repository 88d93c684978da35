import { cannotCompute } from '../../expression/absent.ts';
import type { Absent } from '../../expression/value.ts';
import { countCrossings, shareAbove } from '../cycles.ts';
import { type Recorded, swingOf } from '../recorded.ts';

/** What a wide-range sensor shows as lambda. It does not switch: it says how far the mixture is off. */
export interface LambdaReading {
  readonly mean: number;
  readonly minimum: number;
  readonly maximum: number;
  /** Mean minus the lambda asked for: above 0 is lean. */
  readonly deviation: number;
  readonly timeRich: number | Absent;
  /** Times a second that it passes the lambda asked for; noise of up to a tenth of its swing, from top to bottom, is passed over. */
  readonly rate: number | Absent;
  readonly word: 'on target' | 'lean' | 'rich' | 'stuck';
}

/** A record whose lambda moves less than this stands still: a live sensor in closed loop always moves a little. */
const still = 0.001;

/** Reads lambda over time against the lambda asked for; `most` is the deviation that is still on target. O(n). */
export function lambdaSensor(record: Recorded, desired: number, most: number): LambdaReading | Absent {
  if (!(desired > 0)) return cannotCompute('the lambda asked for must be above 0');
  const { samples, duration } = record;
  const { low, high } = swingOf(samples);
  let sum = 0;
  for (let i = 0; i < samples.length; i++) sum += samples[i] ?? 0;
  const mean = sum / samples.length;
  const lean = shareAbove(record, desired);
  const passes = countCrossings(record, desired, (high - low) / 10);
  return {
    mean,
    minimum: low,
    maximum: high,
    deviation: mean - desired,
    timeRich: typeof lean === 'number' ? 1 - lean : lean,
    rate:
      duration > 0 && typeof passes === 'number'
        ? passes / duration
        : cannotCompute('a rate needs samples at two moments'),
    word:
      high - low < still
        ? 'stuck'
        : mean - desired > most
          ? 'lean'
          : desired - mean > most
            ? 'rich'
            : 'on target',
  };
}

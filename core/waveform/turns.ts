import { cannotCompute } from '../expression/absent.ts';
import type { Absent, Series } from '../expression/value.ts';
import { isRecorded, type Recorded, recorded } from './recorded.ts';
import { along } from './resample.ts';

/**
 * How far the crankshaft has turned at each sample since the first: at a steady speed (turns a second),
 * or by the samples of a speed, straight between them (trapezoidal sum).
 */
export function turnsAlong(record: Recorded, speed: number | Series): Float64Array | Absent {
  const { time } = record;
  const turns = new Float64Array(time.length);
  const first = time[0] ?? 0;
  if (typeof speed === 'number') {
    if (!(speed > 0)) return cannotCompute('the engine speed must be above 0');
    for (let i = 0; i < turns.length; i++) turns[i] = speed * ((time[i] ?? 0) - first);
    return turns;
  }
  const speeds = recorded(speed);
  if (!isRecorded(speeds)) return speeds;
  if (record.starts.length > 1 || speeds.starts.length > 1)
    return cannotCompute('the record has a gap: cut one stretch out with `from … to`');
  const here = along(speeds.time, speeds.samples, new Set(), time);
  let sum = 0;
  for (let i = 1; i < turns.length; i++) {
    sum += (((here[i - 1] ?? 0) + (here[i] ?? 0)) / 2) * ((time[i] ?? 0) - (time[i - 1] ?? 0));
    turns[i] = sum;
  }
  return Number.isFinite(sum) ? turns : cannotCompute('the engine speed was not recorded all along');
}

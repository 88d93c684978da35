import { signalOf } from '../signals/lookup.ts';
import { type FormRanges, type Interval, rangesOf } from '../signals/ranges.ts';
import { isKeyOnManifold } from '../study/barometer.ts';
import type { Reading } from '../study/types.ts';

/**
 * What a reading can possibly be. A manifold pressure with the engine standing still is a barometer,
 * so it can only be what the barometer can be.
 */
export function physicalLimit(reading: Reading, { physical }: FormRanges): Interval | undefined {
  const barometer = isKeyOnManifold(reading) ? signalOf('baro')?.forms[0] : undefined;
  return (barometer === undefined ? undefined : rangesOf(barometer).physical) ?? physical;
}

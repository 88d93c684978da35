import { cannotCompute } from '../../expression/absent.ts';
import type { Absent } from '../../expression/value.ts';
import type { Recorded } from '../recorded.ts';
import { richUp, type SensorBuild } from './sensorBuild.ts';
import { type SensorVerdict, verdictOf } from './sensorVerdict.ts';
import { type Switching, type SwitchLevels, switchingOf } from './switching.ts';

/** From where on a sensor is called lazy or biased. */
export interface SensorLimits {
  /** Switches per second. */
  readonly leastRate: number;
  /** Seconds between the two levels. */
  readonly mostTime: number;
  /** Volts by which the middle of the swing may lie off the level. */
  readonly mostBias: number;
}

/** What a technician reads off an oxygen sensor that switches. Times in s, rate per s, the rest in V; shares from 0 to 1. */
export interface SensorReading {
  readonly switches: number;
  readonly rate: number | Absent;
  readonly timeRich: number | Absent;
  readonly leanToRich: number | Absent;
  readonly richToLean: number | Absent;
  readonly minimum: number;
  readonly maximum: number;
  /** By how much the middle of the swing lies on the rich side of the level. */
  readonly bias: number;
  readonly verdict: SensorVerdict | Absent;
}

/**
 * Reads an oxygen sensor that switches: zirconia, or titania by its supply and polarity.
 * Counts and times are those of `switchingOf`, about its own middle where the whole swing is shifted past one of the levels;
 * the bias takes the medians of the low and high ends, which a spike does not move.
 * One pass over the samples, O(n).
 */
export function oxygenSensor(
  record: Recorded,
  build: SensorBuild,
  limits: SensorLimits,
): SensorReading | Absent {
  const seen = build.rich === 'high' ? record : turnedOver(record, build.supply);
  const found = switchingOf(seen, richUp(build));
  if ('kind' in found) return found;
  const { duration } = record;
  const ofTime = (seconds: number): number | Absent =>
    duration > 0 ? seconds : cannotCompute('it needs samples at two moments');
  const { own, levels } = withinReach(seen, richUp(build), found);
  const bias = (own.usualLow + own.usualHigh) / 2 - richUp(build).level;
  const reading = {
    switches: own.switches,
    rate: ofTime(own.switches / duration),
    timeRich: ofTime(found.above / duration),
    leanToRich: own.rise,
    richToLean: own.fall,
    minimum: build.rich === 'high' ? found.minimum : build.supply - found.maximum,
    maximum: build.rich === 'high' ? found.maximum : build.supply - found.minimum,
    bias,
  };
  return { ...reading, verdict: verdictOf({ ...reading, own, levels, build, limits, record }) };
}

/** The samples with rich at the top. */
function turnedOver(record: Recorded, supply: number): Recorded {
  return { ...record, samples: record.samples.map((each) => supply - each) };
}

/**
 * A sensor whose whole swing is shifted never passes one of the levels. It is read once more about its own middle,
 * so that a shifted sensor that switches is told from a stuck one.
 */
function withinReach(
  record: Recorded,
  levels: SwitchLevels,
  found: Switching,
): { readonly own: Switching; readonly levels: SwitchLevels } {
  const { low, high } = levels;
  const passes = found.minimum <= low && found.maximum >= high;
  if (passes || !(found.maximum - found.minimum > high - low)) return { own: found, levels };
  const middle = (found.minimum + found.maximum) / 2;
  const shifted = { level: middle, low: middle - (high - low) / 2, high: middle + (high - low) / 2 };
  const own = switchingOf(record, shifted);
  return 'kind' in own ? { own: found, levels } : { own, levels: shifted };
}

import { cannotCompute } from '../../expression/absent.ts';
import type { Absent } from '../../expression/value.ts';
import type { Recorded } from '../recorded.ts';
import type { SensorLimits, SensorReading } from './oxygenSensor.ts';
import { richUp, type SensorBuild } from './sensorBuild.ts';
import type { Switching, SwitchLevels } from './switching.ts';

/** One word or two for what the sensor does. */
export type SensorWord =
  | 'switching'
  | 'lazy'
  | 'weak'
  | 'biased rich'
  | 'biased lean'
  | 'stuck rich'
  | 'stuck lean'
  | 'stuck midway';

export interface SensorVerdict {
  readonly word: SensorWord;
  /** A sentence with the numbers it rests on. */
  readonly because: string;
}

interface Evidence extends Omit<SensorReading, 'verdict'> {
  /** Read about its own middle where it does not pass the levels. */
  readonly own: Switching;
  readonly levels: SwitchLevels;
  readonly build: SensorBuild;
  readonly limits: SensorLimits;
  readonly record: Recorded;
}

/** A swing this small against the way between the two levels is no switching. */
const still = 1 / 3;
/** A record must be long enough for this many switches at the slowest rate. */
const enough = 4;

/**
 * What the sensor does, by limits of common practice: stuck before weak, weak before biased, biased before lazy.
 * A sensor is never called lazy or stuck by a record that is too short to show it.
 */
export function verdictOf(of: Evidence): SensorVerdict | Absent {
  const { record, limits, own, levels, build } = of;
  const { duration } = record;
  const swing = own.maximum - own.minimum;
  const way = build.high - build.low;
  const wanted = enough / limits.leastRate;
  const counted = `${count(own.switches)} in ${seconds(duration)}`;
  const range = `${volts(of.minimum)} to ${volts(of.maximum)}`;
  if (own.switches < 2 && !(duration >= wanted))
    return cannotCompute(`${seconds(duration)} are too short to judge it: record ${seconds(wanted)} or more`);
  if (own.switches < 2) {
    if (swing < still * way || !crossesLevel(of)) return stuck(of, range);
    if (swing < way)
      return {
        word: 'weak',
        because: `It moves from ${range} only, in ${seconds(duration)}, and does not pass both levels.`,
      };
  }
  if (Math.abs(of.bias) > limits.mostBias) {
    return {
      word: of.bias > 0 ? 'biased rich' : 'biased lean',
      because: `It switches (${counted}), but the middle of its swing (${range}) lies ${volts(Math.abs(of.bias))} on the ${of.bias > 0 ? 'rich' : 'lean'} side of the level, more than ${volts(limits.mostBias)}.`,
    };
  }
  const slow = slowEdges(own, of, levels);
  if (slow.length > 0)
    return {
      word: 'lazy',
      because: `It takes ${slow.join(' and ')}, more than ${milliseconds(limits.mostTime)}.`,
    };
  if (own.switches / duration < limits.leastRate && duration >= wanted)
    return {
      word: 'lazy',
      because: `It switches ${counted}, fewer than ${Number(limits.leastRate.toPrecision(2))} a second.`,
    };
  return { word: 'switching', because: `It switches ${counted}, from ${range}${timed(own, of)}.` };
}

function stuck({ own, build }: Evidence, range: string): SensorVerdict {
  const levels = richUp(build);
  const word =
    own.minimum > levels.level && own.maximum > levels.high
      ? 'stuck rich'
      : own.maximum < levels.level && own.minimum < levels.low
        ? 'stuck lean'
        : 'stuck midway';
  return { word, because: `It stays at ${range} and does not switch.` };
}

function crossesLevel({ own, build }: Evidence): boolean {
  const { level } = richUp(build);
  return own.minimum < level && own.maximum > level;
}

/** Edges slower than the limit. Where two samples lie further apart than half the limit, a time between them says nothing. */
function slowEdges(
  own: Switching,
  { record, limits }: Evidence,
  { low, high }: SwitchLevels,
): readonly string[] {
  if (record.step > limits.mostTime / 2) return [];
  const said: string[] = [];
  const way = high - low;
  if (typeof own.rise === 'number' && own.rise > limits.mostTime && way > 0)
    said.push(`${milliseconds(own.rise)} from lean to rich`);
  if (typeof own.fall === 'number' && own.fall > limits.mostTime && way > 0)
    said.push(`${milliseconds(own.fall)} from rich to lean`);
  return said;
}

function timed(own: Switching, { record, limits }: Evidence): string {
  if (record.step > limits.mostTime / 2) return '; recorded too slowly to time the edges';
  const { rise, fall } = own;
  return typeof rise === 'number' && typeof fall === 'number'
    ? `, in ${milliseconds(rise)} to rich and ${milliseconds(fall)} to lean`
    : '';
}

function count(switches: number): string {
  return switches === 1 ? 'once' : `${switches} times`;
}
const volts = (v: number): string => `${v.toFixed(2)} V`;
const seconds = (s: number): string => `${Number(s.toPrecision(3))} s`;
const milliseconds = (s: number): string => `${Math.round(s * 1000)} ms`;

import { cannotCompute } from '../../expression/absent.ts';
import type { Absent } from '../../expression/value.ts';
import { median } from '../quantile.ts';
import type { Recorded } from '../recorded.ts';
import { type ExponentialRamp, exponentialRamp } from './exponentialRamp.ts';
import { type Notch, notchIn } from './notch.ts';
import { type Pulse, pulseLevels, pulsesOf } from './pulses.ts';

/** What the current of an injector, a coil or a solenoid shows; medians over its pulses, SI. */
export interface RampReading {
  readonly pulses: number;
  readonly onTime: number;
  readonly peak: number;
  /** The first slope, A/s. */
  readonly slope: number | Absent;
  readonly constant: number | Absent;
  readonly final: number | Absent;
  /** Time within 3 % of its peak before it is cut, where that is a seventh of the pulse or more. */
  readonly held: number | Absent;
  readonly pintle: number | Absent;
  readonly pintleCurrent: number | Absent;
  readonly end: RampEnd | Absent;
}

/** How a pulse ends: still climbing, at the current that the circuit's resistance allows, or held below that by the driver. */
export type RampEnd = 'rising' | 'saturated' | 'limited';

interface OfPulse {
  readonly onTime: number;
  readonly peak: number;
  readonly ramp: ExponentialRamp | Absent;
  readonly notch: Notch | undefined;
  readonly held: number;
  readonly start: number;
}

/**
 * Reads a current that is switched on and off. The time constant is fitted to the first half of the way to the notch,
 * where an armature moves, otherwise up to where the current stops climbing. Beginnings are taken from the fit. O(n).
 */
export function currentRamp(record: Recorded): RampReading | Absent {
  const levels = pulseLevels(record.samples);
  const pulses = pulsesOf(record, levels);
  if (pulses.length === 0)
    return cannotCompute('no whole pulse is in it: the current must be off, on and off again');
  const read = pulses.map((pulse) => ofPulse(record, pulse, levels.off));
  const ramps = read.flatMap(({ ramp }) => ('kind' in ramp ? [] : [ramp]));
  const notches = read.flatMap(({ notch, start }) => (notch === undefined ? [] : [{ ...notch, start }]));
  // Half of the pulses must show it, or it is none.
  const shown = notches.length * 2 >= read.length;
  const bent = ramps.length * 2 >= read.length;
  const noRamp = read.find(({ ramp }) => 'kind' in ramp)?.ramp;
  const why = noRamp !== undefined && 'kind' in noRamp ? noRamp : cannotCompute('there is no ramp');
  const peak = middle(read, ({ peak }) => peak);
  const final = bent ? middle(ramps, (each) => each.final) : why;
  const held = bent ? middle(read, (each) => each.held) : why;
  return {
    pulses: read.length,
    onTime: middle(read, ({ onTime }) => onTime),
    peak,
    slope: bent ? middle(ramps, (each) => each.final / each.constant) : why,
    constant: bent ? middle(ramps, (each) => each.constant) : why,
    final,
    held,
    pintle: shown ? middle(notches, ({ time, start }) => time - start) : noNotch,
    pintleCurrent: shown ? middle(notches, ({ current }) => current - levels.off) : noNotch,
    end: typeof held === 'object' || typeof final === 'object' ? why : endOf(held, final, peak),
  };
}

const noNotch = cannotCompute(
  'no notch stands out of the ramp: nothing moved, or the record is too coarse or too noisy',
);

function middle<T>(of: readonly T[], read: (each: T) => number): number {
  return median(of.map(read));
}

/** Limited: it stands still well below what the ramp climbs towards. */
function endOf(held: number, final: number, peak: number): RampEnd {
  if (!(held > 0)) return 'rising';
  return peak < 0.85 * final ? 'limited' : 'saturated';
}

function ofPulse({ time, samples }: Recorded, { first, last }: Pulse, off: number): OfPulse {
  const peak = highestMean(samples, first, last) - off;
  const flatFrom = flatBeginning(samples, first, last, off + flat * peak);
  const notch = notchIn(time, samples, first, last);
  const upTo = notch === undefined ? flatFrom : Math.floor(first + beforeMoving * (notch.place - first));
  const ramp = exponentialRamp(time, samples, first, upTo, off);
  const start = 'kind' in ramp ? straightStart(time, samples, first, off) : ramp.start;
  const end = time[last] ?? 0;
  return { onTime: end - start, peak, ramp, notch, held: end - (time[flatFrom] ?? end), start };
}

/** An armature moves in the second half of the way to its stop: what it must overcome first takes time. */
const beforeMoving = 0.5;

/** The highest mean of five samples in a row: noise does not lift it much. */
function highestMean(samples: Float64Array, first: number, last: number): number {
  let sum = 0;
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = first; i <= last; i++) {
    sum += samples[i] ?? 0;
    if (i >= first + 5) sum -= samples[i - 5] ?? 0;
    if (i < first + 4) continue;
    highest = Math.max(highest, sum / 5);
  }
  return highest;
}

/** A current this near its peak, and for a seventh of the pulse, stands still. */
const flat = 0.97;
const flatShare = 0.15;

/** The first place from which on the current stands still; the last place where it climbs until it is cut. */
function flatBeginning(samples: Float64Array, first: number, last: number, level: number): number {
  let i = first;
  while (i < last && (samples[i] ?? 0) < level) i++;
  return last - i > flatShare * (last - first) ? i : last;
}

/** Where a straight line through the first samples passes the level of no current. */
function straightStart(time: Float64Array, samples: Float64Array, first: number, off: number): number {
  const rise = (samples[first + 4] ?? 0) - (samples[first] ?? 0);
  const run = (time[first + 4] ?? 0) - (time[first] ?? 0);
  const begin = time[first] ?? 0;
  return rise > 0 ? begin - (((samples[first] ?? 0) - off) * run) / rise : begin;
}

import { cannotCompute } from '../../expression/absent.ts';
import type { Absent } from '../../expression/value.ts';

/** Where an engine runs, in the trade's four cells. */
export const operatingCellNames = ['idle', 'light load', 'cruise', 'heavy load'] as const;

/** Channels of one log, sample by sample, SI; what was not recorded is left out. */
export interface DriveLog {
  /** s */
  readonly time: Float64Array;
  /** Turns per second. */
  readonly rpm: Float64Array;
  /** Share of a full cylinder or of the outside air: 0 to 1. */
  readonly load: Float64Array;
  /** m/s */
  readonly speed: Float64Array | undefined;
  /** As generic data count it: 2 closed, 16 closed with a fault in a sensor, the others open. */
  readonly loop: Float64Array | undefined;
  /** s */
  readonly pulseWidth: Float64Array | undefined;
}

/** Where one cell ends and the next begins; common practice. */
export interface CellLimits {
  /** Below this speed of the engine, turns per second, and standing: idle. */
  readonly idleSpeed: number;
  /** Load below which it is light, and from which on it is heavy. */
  readonly light: number;
  readonly heavy: number;
  /** Load below which, above idle, the throttle is closed and the fuel cut. */
  readonly overrun: number;
  /** Seconds after open loop or fuel cut until the trims count again. */
  readonly settle: number;
}

/** Idle below 1100 rpm; a car that rolls faster than this, m/s, does not stand. */
const standing = 0.6;
/** Fuel cut above 1200 rpm, at pulses shorter than 1.2 ms (common practice). */
const cutSpeed = 20;
const cutPulse = 0.0012;

const leftOut = -1;

/**
 * The operating cell of each sample, as its place among `operatingCellNames`; -1 where the trims do not count:
 * a missing sample, open loop, fuel cut on overrun, and a moment after either. One pass, O(n).
 */
export function operatingCells(log: DriveLog, limits: CellLimits): Int8Array | Absent {
  const { idleSpeed, settle } = limits;
  if (!(limits.light < limits.heavy)) return cannotCompute('light load must end below heavy load');
  const { time, rpm, load, speed, loop, pulseWidth } = log;
  const light = justBelow(limits.light);
  const heavy = justBelow(limits.heavy);
  const overrun = justBelow(limits.overrun);
  const count = rpm.length;
  const cells = new Int8Array(count);
  let until = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    const now = time[i] ?? Number.NaN;
    const turns = rpm[i] ?? Number.NaN;
    const filled = load[i] ?? Number.NaN;
    const rolling = (speed?.[i] ?? 0) > standing;
    const idle = turns < idleSpeed && !rolling;
    const status = loop?.[i] ?? 2;
    const cut =
      turns > cutSpeed && (filled < overrun || (pulseWidth?.[i] ?? Number.POSITIVE_INFINITY) < cutPulse);
    if ((status !== 2 && status !== 16) || cut) {
      cells[i] = leftOut;
      until = now + settle;
    } else if (now < until || !(turns > 0) || Number.isNaN(filled)) cells[i] = leftOut;
    else cells[i] = idle ? 0 : filled < light ? 1 : filled < heavy ? 2 : 3;
  }
  return cells;
}

/** A reading of exactly the limit is not below it, however the two were rounded on their way to SI units. */
const justBelow = (limit: number): number => limit * (1 - 1e-12);

/** The mean of a channel in one cell, and how surely it is known. */
export interface CellMean {
  readonly mean: number;
  /** Half-width at about 95 %: twice the standard error, samples that follow each other counted as less than one each. */
  readonly scatter: number;
  readonly samples: number;
}

/** A cell with fewer samples says nothing. */
const fewest = 5;

/** The means of a channel by cell; undefined where fewer than five samples count. Two passes, O(n). */
export function meansByCell(samples: Float64Array, cells: Int8Array): readonly (CellMean | undefined)[] {
  return operatingCellNames.map((_, cell) => meanIn(samples, cells, cell));
}

function meanIn(samples: Float64Array, cells: Int8Array, cell: number): CellMean | undefined {
  let count = 0;
  let mean = 0;
  for (let i = 0; i < cells.length; i++) {
    const sample = samples[i] ?? Number.NaN;
    if (cells[i] !== cell || !Number.isFinite(sample)) continue;
    mean += (sample - mean) / ++count;
  }
  if (count < fewest) return undefined;
  let square = 0;
  let follow = 0;
  let before = Number.NaN;
  for (let i = 0; i < cells.length; i++) {
    const sample = samples[i] ?? Number.NaN;
    if (cells[i] !== cell || !Number.isFinite(sample)) {
      before = Number.NaN;
      continue;
    }
    const off = sample - mean;
    square += off * off;
    if (!Number.isNaN(before)) follow += off * before;
    before = off;
  }
  const variance = square / (count - 1);
  // First-order autocorrelation: n samples of which each repeats a share r of the last are worth n(1 − r)/(1 + r).
  const repeated = square > 0 ? Math.min(0.98, Math.max(0, follow / square)) : 0;
  const worth = Math.max(1, (count * (1 - repeated)) / (1 + repeated));
  return { mean, scatter: 2 * Math.sqrt(variance / worth), samples: count };
}

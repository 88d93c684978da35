import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/*
 * A second route to what is read off the samples' recordings: plain loops over the file's lines.
 * Nothing here comes from the core.
 */

export interface Column {
  readonly time: readonly number[];
  readonly volts: readonly number[];
}

/** A column of a recording from one moment to another, both included. */
export function column(file: string, heading: string, from: number, to: number): Column {
  const path = join(import.meta.dirname, '..', '..', 'samples', 'captures', file);
  const [head, ...rows] = readFileSync(path, 'utf8')
    .trim()
    .split('\n')
    .filter((line) => !line.startsWith('#'));
  const at = head?.split(',').indexOf(heading) ?? -1;
  const cells = rows
    .map((line) => line.split(',').map(Number))
    .filter(([t = Number.NaN]) => t >= from && t <= to);
  return { time: cells.map(([t]) => t ?? Number.NaN), volts: cells.map((row) => row[at] ?? Number.NaN) };
}

export const swing = ({ volts }: Column): number => Math.max(...volts) - Math.min(...volts);

/** Switches between `low` or below and `high` or above. */
export function switches({ volts }: Column, low: number, high: number): number {
  let count = 0;
  let side = '';
  for (const v of volts) {
    const now = v >= high ? 'rich' : v <= low ? 'lean' : side;
    if (side !== '' && now !== side) count++;
    side = now;
  }
  return count;
}

/** When the line from one sample to the next passes a voltage. */
function passes({ time, volts }: Column, i: number, level: number): number {
  const [a = 0, b = 0, s = 0, t = 0] = [volts[i], volts[i + 1], time[i], time[i + 1]];
  return s + ((level - a) / (b - a)) * (t - s);
}

/** Median time from the last crossing of one level to the first of the other. */
export function edge(of: Column, from: number, to: number): number {
  const up = to > from;
  const before = (v: number): boolean => (up ? v <= from : v >= from);
  const beyond = (v: number): boolean => (up ? v >= to : v <= to);
  const times: number[] = [];
  let left = -1;
  for (const [i, v] of of.volts.entries()) {
    if (before(v)) left = i;
    if (left >= 0 && beyond(v)) {
      times.push(passes(of, i - 1, to) - passes(of, left, from));
      left = -1;
    }
  }
  times.sort((a, b) => a - b);
  const half = times.length >> 1;
  return times.length % 2 === 1 ? (times[half] ?? 0) : ((times[half - 1] ?? 0) + (times[half] ?? 0)) / 2;
}

/** The share of the time above a level, the lines between the samples cut where they pass it. */
export function shareAbove({ time, volts }: Column, level: number): number {
  let above = 0;
  for (let i = 0; i + 1 < time.length; i++) {
    const [a = 0, b = 0, s = 0, t = 0] = [volts[i], volts[i + 1], time[i], time[i + 1]];
    if (a > level && b > level) above += t - s;
    else if (a > level) above += passes({ time, volts }, i, level) - s;
    else if (b > level) above += t - passes({ time, volts }, i, level);
  }
  return above / ((time.at(-1) ?? 0) - (time[0] ?? 0));
}

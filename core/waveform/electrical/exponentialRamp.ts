import { cannotCompute } from '../../expression/absent.ts';
import type { Absent } from '../../expression/value.ts';

/** A current that climbs as y = final·(1 − exp(−(t − start)/constant)). */
export interface ExponentialRamp {
  /** s */
  readonly constant: number;
  /** What it climbs towards, in the samples' unit above the level it began at. */
  readonly final: number;
  /** When it began at 0, s. */
  readonly start: number;
}

/**
 * Fits the law of a coil in a circuit with resistance, dy/dt = (final − y)/constant, in its integrated form
 * y = y₀ + (final/constant)·t − (1/constant)·∫y dt: least squares in three unknowns, which needs no slope of noisy samples
 * and no first guess. `zero` is the level that the current began at. Refused where the ramp is straight within its noise.
 * O(n).
 */
export function exponentialRamp(
  time: Float64Array,
  samples: Float64Array,
  first: number,
  last: number,
  zero: number,
): ExponentialRamp | Absent {
  const count = last - first + 1;
  if (count < 5) return straight;
  const begin = time[first] ?? 0;
  const span = (time[last] ?? 0) - begin;
  // Sums of the normal equations, time in units of the span.
  let [st, ss, stt, sts, sss] = [0, 0, 0, 0, 0];
  let [sy, sty, ssy] = [0, 0, 0];
  let area = 0;
  let before = (samples[first] ?? 0) - zero;
  let at = 0;
  for (let i = first; i <= last; i++) {
    const t = ((time[i] ?? 0) - begin) / span;
    const y = (samples[i] ?? 0) - zero;
    area += ((y + before) / 2) * (t - at);
    at = t;
    before = y;
    st += t;
    ss += area;
    stt += t * t;
    sts += t * area;
    sss += area * area;
    sy += y;
    sty += t * y;
    ssy += area * y;
  }
  const solved = solve3(
    [
      [count, st, ss],
      [st, stt, sts],
      [ss, sts, sss],
    ],
    [sy, sty, ssy],
  );
  if (solved === undefined) return straight;
  const [y0, towards, falls] = solved;
  const decay = -falls;
  if (!(decay > leastBend)) return straight;
  const constant = span / decay;
  const final = towards / decay;
  if (!(final > 0) || !(y0 < final)) return straight;
  return { constant, final, start: begin + constant * Math.log(1 - y0 / final) };
}

/** The part of a time constant that a ramp must last, at least, for its bend to be told from noise. */
const leastBend = 0.15;
const straight = cannotCompute('the ramp is too straight or too short for a time constant');

type Three = readonly [number, number, number];

/** Gauss with pivots; undefined where the rows depend on each other. */
function solve3(rows: readonly [Three, Three, Three], right: Three): Three | undefined {
  const m = rows.map((row, i) => [...row, right[i] ?? 0]);
  for (let k = 0; k < 3; k++) {
    const pivot = [...m.keys()].slice(k).reduce((best, i) => (abs(m, i, k) > abs(m, best, k) ? i : best), k);
    const [a, b] = [m[k], m[pivot]];
    if (a === undefined || b === undefined) return undefined;
    m[k] = b;
    m[pivot] = a;
    const top = b[k] ?? 0;
    if (Math.abs(top) < 1e-12) return undefined;
    for (const [i, row] of m.entries()) {
      if (i === k) continue;
      const by = (row[k] ?? 0) / top;
      for (let j = k; j < 4; j++) row[j] = (row[j] ?? 0) - by * (b[j] ?? 0);
    }
  }
  const at = (i: number): number => (m[i]?.[3] ?? 0) / (m[i]?.[i] ?? Number.NaN);
  return [at(0), at(1), at(2)];
}

function abs(m: readonly (readonly number[])[], i: number, k: number): number {
  return Math.abs(m[i]?.[k] ?? 0);
}

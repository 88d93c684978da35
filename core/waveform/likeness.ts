import { cannotCompute } from '../expression/absent.ts';
import type { Absent } from '../expression/value.ts';
import { transform } from './fourier.ts';

/**
 * Pearson's correlation of samples taken at the same moments; pairs in which one is missing are left out.
 * A number between −1 and 1.
 */
export function correlationOf(x: Float64Array, y: Float64Array): number | Absent {
  let count = 0;
  let meanX = 0;
  let meanY = 0;
  let xx = 0;
  let yy = 0;
  let xy = 0;
  for (let i = 0; i < x.length; i++) {
    const a = x[i] ?? Number.NaN;
    const b = y[i] ?? Number.NaN;
    if (!Number.isFinite(a) || !Number.isFinite(b)) continue;
    count++;
    // Welford's running sums lose no digits to a large mean.
    const da = a - meanX;
    const db = b - meanY;
    meanX += da / count;
    meanY += db / count;
    xx += da * (a - meanX);
    yy += db * (b - meanY);
    xy += da * (b - meanY);
  }
  if (count < 2) return cannotCompute('a correlation needs two samples of both at the same moments');
  if (!(xx > 0 && yy > 0)) return still;
  return Math.max(-1, Math.min(1, xy / Math.sqrt(xx) / Math.sqrt(yy)));
}

const still = cannotCompute('one of the channels does not change');

/**
 * By how many steps y comes later than x (negative: earlier): the shift of up to half the record with the greatest cross-correlation,
 * then between the steps by a parabola. Both have equal length and even steps, and no sample is missing.
 * The correlation of all shifts comes from one transform there and one back.
 */
export function lagOf(x: Float64Array, y: Float64Array, within: Shifts = anyShift): number | Absent {
  const found = fitOf(x, y, within);
  return 'kind' in found ? found : found.steps;
}

/** The lag in steps, and another shift that fits nearly as well, where there is one. */
export interface Fit {
  readonly steps: number;
  readonly rival: () => number | undefined;
}

/** What `lagOf` finds; a rival is looked for when it is asked for. */
export function fitOf(x: Float64Array, y: Float64Array, within: Shifts = anyShift): Fit | Absent {
  const count = x.length;
  const most = count >> 1;
  const earliest = Math.max(-most, within.earliest);
  const latest = Math.min(most, within.latest);
  if (count < 4) return cannotCompute('a lag needs at least four samples at the same moments');
  let size = 1;
  while (size < count + most) size *= 2;
  const re = new Float64Array(size);
  const im = new Float64Array(size);
  if (!centred(x, re) || !centred(y, im)) return still;
  // Sums of squares up to each place: what each shift's overlap could at most correlate.
  const ofX = runningSquares(re, count);
  const ofY = runningSquares(im, count);
  transform(re, im);
  crossSpectrum(re, im);
  transform(re, im, true);
  const raw = (shift: number): number => (re[shift < 0 ? shift + size : shift] ?? 0) / size;
  const alike = (shift: number): number => {
    const s = Math.abs(shift);
    const early = shift >= 0 ? ofX : ofY;
    const late = shift >= 0 ? ofY : ofX;
    const energy = (early[count - s] ?? 0) * ((late[count] ?? 0) - (late[s] ?? 0));
    return energy > 0 ? raw(shift) / Math.sqrt(energy) : Number.NEGATIVE_INFINITY;
  };
  let best = Math.max(0, earliest);
  for (let shift = earliest; shift <= latest; shift++) if (raw(shift) > raw(best)) best = shift;
  if (!(raw(best) > 0)) return cannotCompute('the channels do not move together at any shift');
  // The sum favours small shifts, whose overlap is longer; the coefficient does not, and has its top next to it.
  while (best < latest && alike(best + 1) > alike(best)) best++;
  while (best > earliest && alike(best - 1) > alike(best)) best--;
  const top = (at: number): number => {
    if (Math.abs(at) === most) return at;
    const before = alike(at - 1);
    const after = alike(at + 1);
    const bend = before - 2 * alike(at) + after;
    return bend < 0 ? at + (before - after) / (2 * bend) : at;
  };
  const rival = (): number | undefined => {
    // Over what overlaps, each about its own mean: a short overlap must not look alike by its level.
    const over = (shift: number): number => {
      const [from, end] = [Math.max(0, -shift), count - Math.max(0, shift)];
      const likeness = correlationOf(x.subarray(from, end), y.subarray(from + shift, end + shift));
      return typeof likeness === 'number' ? likeness : 0;
    };
    const others = otherTops(alike, best, earliest, latest).slice(0, mostRivals);
    const least = others.length === 0 ? 0 : over(best) / detectable;
    const other = others.find((shift) => over(shift) >= least);
    return other === undefined ? undefined : top(other);
  };
  return { steps: top(best), rival };
}

/**
 * The highest top must be this many times as high as the next to be told from it: the usual bound for correlation in
 * particle image velocimetry (Keane and Adrian, "Theory of cross-correlation analysis of PIV images", Applied
 * Scientific Research 49, 1992; from memory).
 */
const detectable = 1.2;

const mostRivals = 8;

/**
 * The tops that may be as high as the best, the nearest first. They lie beyond the best one's own hill, which ends where
 * the likeness has fallen to half of it.
 */
function otherTops(
  alike: (shift: number) => number,
  best: number,
  earliest: number,
  latest: number,
): readonly number[] {
  const highest = alike(best);
  let from = best;
  while (from >= earliest && alike(from) > highest / 2) from--;
  let to = best;
  while (to <= latest && alike(to) > highest / 2) to++;
  const tops: number[] = [];
  for (let shift = earliest + 1; shift < latest; shift++) {
    if (shift > from && shift < to) continue;
    const here = alike(shift);
    if (here >= highest / detectable && here >= alike(shift - 1) && here >= alike(shift + 1))
      tops.push(shift);
  }
  return tops.sort((a, b) => Math.abs(a - best) - Math.abs(b - best));
}

/** The shifts that are looked at, in steps; both ends belong to it. */
export interface Shifts {
  readonly earliest: number;
  readonly latest: number;
}
const anyShift: Shifts = { earliest: Number.NEGATIVE_INFINITY, latest: Number.POSITIVE_INFINITY };

/** Copies the samples less their mean; false when they are all the same. */
function centred(samples: Float64Array, into: Float64Array): boolean {
  const first = samples[0] ?? 0;
  let mean = 0;
  let moves = false;
  for (let i = 0; i < samples.length; i++) {
    const sample = samples[i] ?? 0;
    mean += (sample - first) / samples.length;
    if (sample !== first) moves = true;
  }
  for (let i = 0; i < samples.length; i++) into[i] = (samples[i] ?? 0) - first - mean;
  return moves;
}

function runningSquares(samples: Float64Array, count: number): Float64Array {
  const sums = new Float64Array(count + 1);
  for (let i = 0; i < count; i++) sums[i + 1] = (sums[i] ?? 0) + (samples[i] ?? 0) ** 2;
  return sums;
}

/** From the transform of x + i·y to conj(X)·Y, whose transform back is Σ x[i]·y[i + shift]; both were real. */
function crossSpectrum(re: Float64Array, im: Float64Array): void {
  const size = re.length;
  for (let k = 0; k <= size >> 1; k++) {
    const other = (size - k) % size;
    const ar = re[k] ?? 0;
    const ai = im[k] ?? 0;
    const br = re[other] ?? 0;
    const bi = im[other] ?? 0;
    const xr = (ar + br) / 2;
    const xi = (ai - bi) / 2;
    const yr = (ai + bi) / 2;
    const yi = (br - ar) / 2;
    const r = xr * yr + xi * yi;
    const i = xr * yi - xi * yr;
    re[k] = r;
    im[k] = i;
    re[other] = r;
    im[other] = -i;
  }
}

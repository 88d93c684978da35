import type { PlainCurve } from '../../expression/functionRow.ts';

/** A place on a curve: the value there and how steeply it changes, both in the curve's own SI units. */
export interface OnCurve {
  readonly y: number;
  /** dy/dx; where two stretches meet, the steeper one's, so that an uncertainty is never made too small. */
  readonly slope: number;
}

/**
 * The straight line between the two points on either side of x. The points' x must ascend.
 * Undefined outside the curve's ends, for x that is no number, and where the curve has no length:
 * what lies beyond the last point was not measured.
 */
export function curveAt(curve: PlainCurve, x: number): OnCurve | undefined {
  const { x: xs, y: ys } = curve;
  const last = xs.length - 1;
  const first = xs[0];
  const end = xs[last];
  if (first === undefined || end === undefined || last < 1 || !(x >= first && x <= end)) return undefined;
  let low = 0;
  let high = last - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((xs[middle] ?? Number.NaN) <= x) low = middle;
    else high = middle - 1;
  }
  const x0 = xs[low] ?? Number.NaN;
  const y0 = ys[low] ?? Number.NaN;
  const slope = slopeAfter(curve, low);
  const share = (x - x0) / ((xs[low + 1] ?? Number.NaN) - x0);
  // Weighted from both ends, so that a point of the curve is met exactly.
  const y = y0 * (1 - share) + (ys[low + 1] ?? Number.NaN) * share;
  if (!Number.isFinite(y) || !Number.isFinite(slope)) return undefined;
  if (x !== x0 || low === 0) return { y, slope };
  const before = slopeAfter(curve, low - 1);
  return { y, slope: Math.abs(before) > Math.abs(slope) ? before : slope };
}

function slopeAfter({ x, y }: PlainCurve, at: number): number {
  const rise = (y[at + 1] ?? Number.NaN) - (y[at] ?? Number.NaN);
  return rise / ((x[at + 1] ?? Number.NaN) - (x[at] ?? Number.NaN));
}

import { leastSquares } from './leastSquares.ts';

/** How a curve goes on behind its corner: straight, or as a valve's lift, which begins with the square of the angle. */
export interface Corner {
  /** Of the polynomial before the corner. */
  readonly degree: 0 | 1 | 2;
  /** Powers of the way behind the corner that are added there. */
  readonly powers: readonly number[];
}

/**
 * Where a curve turns off, between `from` and `to` (places of the samples, also broken): a polynomial all along and
 * powers of the way behind the corner, fitted by least squares for every place of the corner; the place with the least
 * sum of squares, `margin` or more from both ends, between the places by a parabola. Undefined where no place is better than its neighbours.
 */
export function cornerIn(
  samples: Float64Array,
  from: number,
  to: number,
  { degree, powers }: Corner,
  margin = 4,
): { readonly at: number; readonly explained: number } | undefined {
  const [first, end] = [Math.max(0, Math.floor(from)), Math.min(samples.length, Math.ceil(to))];
  const count = end - first;
  if (count < 12) return undefined;
  const scale = 1 / count;
  const target = samples.slice(first, end);
  const middle = target.reduce((sum, each) => sum + each, 0) / count;
  for (let i = 0; i < count; i++) target[i] = (target[i] ?? 0) - middle;
  const before = Array.from({ length: degree + 1 }, (_, power) =>
    Float64Array.from({ length: count }, (_, i) => (i * scale) ** power),
  );
  const told: number[] = [];
  for (let corner = margin; corner < count - margin; corner++) {
    const behind = powers.map((power) =>
      Float64Array.from({ length: count }, (_, i) => (i > corner ? ((i - corner) * scale) ** power : 0)),
    );
    told.push(leastSquares([...before, ...behind], target)?.explained ?? 0);
  }
  const best = told.indexOf(Math.max(...told));
  const [low, top, high] = [told[best - 1], told[best] ?? 0, told[best + 1]];
  if (low === undefined || high === undefined) return undefined;
  const bend = low - 2 * top + high;
  const shift = bend < 0 ? (low - high) / (2 * bend) : 0;
  return { at: first + margin + best + shift, explained: top };
}

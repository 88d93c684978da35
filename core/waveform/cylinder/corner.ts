import { explainedBy } from './leastSquares.ts';

/** How a curve goes on behind its corner: straight, or as a valve's lift, which begins with the square of the angle. */
export interface Corner {
  /** Of the polynomial before the corner. */
  readonly degree: 0 | 1 | 2;
  /** Powers of the way behind the corner that are added there, 1 or more. */
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
  const target = samples.slice(first, end);
  const middle = target.reduce((sum, each) => sum + each, 0) / count;
  for (let i = 0; i < count; i++) target[i] = (target[i] ?? 0) - middle;
  const products = productsOf(target, degree, powers);
  const whole = product(target, target, 0);
  const told: number[] = [];
  for (let corner = margin; corner < count - margin; corner++)
    told.push(explainedBy(products(corner), whole) ?? 0);
  const best = told.indexOf(Math.max(...told));
  const [low, top, high] = [told[best - 1], told[best] ?? 0, told[best + 1]];
  if (low === undefined || high === undefined) return undefined;
  const bend = low - 2 * top + high;
  const shift = bend < 0 ? (low - high) / (2 * bend) : 0;
  return { at: first + margin + best + shift, explained: top };
}

/**
 * The normal equations for a corner at any place. What lies behind the corner is the same ramp, moved: of its products only
 * those with the columns before it and with the target are summed for each corner.
 */
function productsOf(
  target: Float64Array,
  degree: number,
  powers: readonly number[],
): (corner: number) => Float64Array[] {
  const count = target.length;
  const power = (exponent: number): Float64Array =>
    Float64Array.from({ length: count }, (_, i) => (i / count) ** exponent);
  const before = Array.from({ length: degree + 1 }, (_, exponent) => power(exponent));
  const ramps = powers.map(power);
  // Ramps with each other: by how many of their samples lie behind the corner.
  const sums = ramps.map((left) => ramps.map((right) => runningSum(left, right)));
  const own = before.length;
  const width = own + ramps.length + 1;
  const fixed = before.map((left) => {
    const row = new Float64Array(width);
    for (const [k, right] of before.entries()) row[k] = product(left, right, 0);
    row[width - 1] = product(left, target, 0);
    return row;
  });
  return (corner) => {
    const matrix = fixed.map((row) => row.slice());
    for (const [k, ramp] of ramps.entries()) {
      const row = new Float64Array(width);
      for (const [i, column] of before.entries()) {
        const across = product(ramp, column, corner);
        row[i] = across;
        (matrix[i] ?? row)[own + k] = across;
      }
      for (const [j, sum] of (sums[k] ?? []).entries()) row[own + j] = sum[count - 1 - corner] ?? 0;
      row[width - 1] = product(ramp, target, corner);
      matrix.push(row);
    }
    return matrix;
  };
}

function runningSum(left: Float64Array, right: Float64Array): Float64Array {
  let sum = 0;
  return left.map((each, i) => {
    sum += each * (right[i] ?? 0);
    return sum;
  });
}

/** Of one column, moved by so many samples, with another. */
function product(left: Float64Array, right: Float64Array, moved: number): number {
  let sum = 0;
  for (let i = moved; i < right.length; i++) sum += (left[i - moved] ?? 0) * (right[i] ?? 0);
  return sum;
}

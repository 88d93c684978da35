/** Where a climb breaks off into a slower one. */
export interface SlopeBreak {
  /** The first of the values that belongs to what comes after. */
  readonly place: number;
  /** When, and at which level, in the units of what was given. */
  readonly moment: number;
  readonly level: number;
  /** The slope before and just after it. */
  readonly before: number;
  readonly after: number;
}

/** Either side is a parabola through so many values at least. */
const fewest = 10;
/** So much of what comes after is looked at: the coolant moves on once it is held. */
const looked = 60;

/**
 * The place at which two parabolas, one before and one after it, fit the values best (segmented regression, least squares):
 * a curve that only bends gives one slope on both sides of every place, a break gives two.
 * Undefined where the slope after is more than `most` of the slope before, or that is below `least`. O(n²) of some hundred values.
 */
export function slopeBreak(
  moments: readonly number[],
  values: readonly number[],
  most: number,
  least: number,
): SlopeBreak | undefined {
  let best: SlopeBreak | undefined;
  let lowest = Number.POSITIVE_INFINITY;
  for (let place = fewest; place + fewest <= values.length; place++) {
    const left = parabola(moments, values, Math.max(0, place - looked), place);
    const right = parabola(moments, values, place, Math.min(values.length, place + looked));
    if (left === undefined || right === undefined) continue;
    // Each side by its own number of values: what is looked at is not the same everywhere.
    const misfit = (left.misfit + right.misfit) / (left.count + right.count);
    const moment = meeting(left, right, moments, place);
    const before = left.slope(moment);
    const after = right.slope(moment);
    const drop = before - after;
    if (!(before > 0 && before >= least) || !(after < most * before)) continue;
    // Of breaks that fit alike, the sharper one: the misfit alone favours stretches that are straight.
    const cost = (misfit + tiny) / drop ** 2;
    if (cost < lowest) {
      lowest = cost;
      best = { place, moment, level: right.value(moment), before, after };
    }
  }
  return best;
}

const tiny = 1e-6;

interface Parabola {
  readonly count: number;
  readonly misfit: number;
  readonly value: (t: number) => number;
  readonly slope: (t: number) => number;
}

/** Where the two cross next to the place; the place itself where they do not. */
function meeting(left: Parabola, right: Parabola, moments: readonly number[], place: number): number {
  const start = moments[place - 1] ?? 0;
  const end = moments[place] ?? start;
  const wide = end - start;
  let at = (start + end) / 2;
  for (let step = 0; step < 8; step++) {
    const apart = left.value(at) - right.value(at);
    const turn = left.slope(at) - right.slope(at);
    if (turn === 0) break;
    at -= apart / turn;
  }
  return Math.abs(at - (start + end) / 2) <= 2 * wide ? at : (start + end) / 2;
}

/** Least squares through the values from one place up to another, about their middle so that the sums stay small. */
function parabola(
  moments: readonly number[],
  values: readonly number[],
  from: number,
  to: number,
): Parabola | undefined {
  const count = to - from;
  const first = moments[from] ?? 0;
  const half = ((moments[to - 1] ?? 0) - first) / 2;
  if (!(half > 0)) return undefined;
  const middle = first + half;
  let [s1, s2, s3, s4] = [0, 0, 0, 0];
  let [y0, y1, y2, yy] = [0, 0, 0, 0];
  for (let i = from; i < to; i++) {
    const u = ((moments[i] ?? 0) - middle) / half;
    const y = values[i] ?? 0;
    s1 += u;
    s2 += u * u;
    s3 += u ** 3;
    s4 += u ** 4;
    y0 += y;
    y1 += u * y;
    y2 += u * u * y;
    yy += y * y;
  }
  const d = determinant(count, s1, s2, s1, s2, s3, s2, s3, s4);
  if (Math.abs(d) < 1e-9) return undefined;
  const a = determinant(y0, s1, s2, y1, s2, s3, y2, s3, s4) / d;
  const b = determinant(count, y0, s2, s1, y1, s3, s2, y2, s4) / d;
  const c = determinant(count, s1, y0, s1, s2, y1, s2, s3, y2) / d;
  return {
    count,
    misfit: Math.max(0, yy - a * y0 - b * y1 - c * y2),
    value: (t) => a + (b + (c * (t - middle)) / half) * ((t - middle) / half),
    slope: (t) => (b + (2 * c * (t - middle)) / half) / half,
  };
}

function determinant(...m: readonly number[]): number {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = m;
  return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
}

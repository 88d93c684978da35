/**
 * The crank's turns since the first of the top dead centres at each moment: two from one to the next, the speed changing
 * steadily between them (a cubic through the dead centres whose slopes are those of the parabola through three
 * neighbours). NaN before the first and behind the last. `tops` ascend and are two or more; `time` ascends.
 */
export function turnsBetween(time: Float64Array, tops: readonly number[]): Float64Array {
  const slopes = slopesAt(tops);
  const turns = new Float64Array(time.length).fill(Number.NaN);
  let k = 0;
  for (let i = 0; i < time.length; i++) {
    const now = time[i] ?? Number.NaN;
    while (k + 2 < tops.length && now >= (tops[k + 1] ?? 0)) k++;
    const [from = 0, to = 0] = [tops[k], tops[k + 1]];
    if (!(now >= from && now <= to)) continue;
    const length = to - from;
    const s = (now - from) / length;
    const [left, right] = [(slopes[k] ?? 0) * length, (slopes[k + 1] ?? 0) * length];
    // Hermite's cubic from 2k to 2k + 2.
    turns[i] = 2 * k + s * s * (3 - 2 * s) * 2 + s * (1 - s) * ((1 - s) * left - s * right);
  }
  return turns;
}

/** Turns a second at each dead centre. */
function slopesAt(tops: readonly number[]): readonly number[] {
  return tops.map((_, k) => {
    const middle = Math.min(Math.max(1, k), tops.length - 2);
    const [a, b, c] = [tops[middle - 1], tops[middle] ?? 0, tops[middle + 1]];
    if (a === undefined || c === undefined) return 2 / ((tops[1] ?? 0) - (tops[0] ?? 0));
    const [before, behind] = [2 / (b - a), 2 / (c - b)];
    const bend = (behind - before) / (c - a);
    const slope = before + bend * (b - a);
    return slope + 2 * bend * ((tops[k] ?? b) - b);
  });
}

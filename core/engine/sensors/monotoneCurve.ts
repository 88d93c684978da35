/** A smooth curve through points. */
export interface MonotoneCurve {
  /** The value at x; undefined outside the points. */
  readonly at: (x: number) => number | undefined;
}

/**
 * The cubic Hermite curve through points whose x ascend (two or more) and whose y go one way:
 * slopes from the parabola through three neighbours, held within three times the smaller of the two chords' slopes,
 * which keeps every stretch monotone (Fritsch and Carlson, SIAM Journal on Numerical Analysis 17 (1980) 238–246).
 * Three points that lie on a parabola give that parabola.
 */
export function monotoneCurve(x: readonly number[], y: readonly number[]): MonotoneCurve {
  const last = x.length - 1;
  const width = (at: number): number => (x[at + 1] ?? Number.NaN) - (x[at] ?? Number.NaN);
  const chord = (at: number): number => ((y[at + 1] ?? Number.NaN) - (y[at] ?? Number.NaN)) / width(at);
  const slopes = x.map((_, at) => {
    if (last === 1) return chord(0);
    if (at === 0) return held(endSlope(width(0), width(1), chord(0), chord(1)), chord(0), chord(0));
    if (at === last) {
      const [near, far] = [chord(last - 1), chord(last - 2)];
      return held(endSlope(width(last - 1), width(last - 2), near, far), near, near);
    }
    const [left, right] = [width(at - 1), width(at)];
    const through = (right * chord(at - 1) + left * chord(at)) / (left + right);
    return held(through, chord(at - 1), chord(at));
  });
  return {
    at: (place) => {
      if (!(place >= (x[0] ?? Number.NaN) && place <= (x[last] ?? Number.NaN))) return undefined;
      let low = 0;
      let high = last - 1;
      while (low < high) {
        const middle = (low + high + 1) >> 1;
        if ((x[middle] ?? Number.NaN) <= place) low = middle;
        else high = middle - 1;
      }
      const wide = width(low);
      const t = (place - (x[low] ?? Number.NaN)) / wide;
      const s = 1 - t;
      // Weighted from both ends, so that a point is met exactly.
      const ends =
        (y[low] ?? Number.NaN) * s * s * (1 + 2 * t) + (y[low + 1] ?? Number.NaN) * t * t * (1 + 2 * s);
      const bend = wide * s * t * ((slopes[low] ?? Number.NaN) * s - (slopes[low + 1] ?? Number.NaN) * t);
      return ends + bend;
    },
  };
}

/** The slope at an end of the parabola through the three points there. */
function endSlope(near: number, far: number, nearChord: number, farChord: number): number {
  return ((2 * near + far) * nearChord - near * farChord) / (near + far);
}

function held(slope: number, left: number, right: number): number {
  const sign = Math.sign(left);
  if (sign !== Math.sign(right) || sign === 0) return 0;
  const most = 3 * Math.min(Math.abs(left), Math.abs(right));
  return sign * Math.min(most, Math.max(0, sign * slope));
}

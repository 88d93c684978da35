/** Chance that is the same for the same seed: nothing in the model knows the clock or `Math.random`. */
export interface Chance {
  /** From `low` to `high`, all equally likely. */
  readonly between: (low: number, high: number) => number;
  /** Around 0 with this standard deviation, never further than `most` (2.5 deviations when left out). */
  readonly around: (deviation: number, most?: number) => number;
  readonly oneOf: <T>(list: readonly [T, ...T[]]) => T;
  /** True in this share of cases. */
  readonly happens: (share: number) => boolean;
}

/** The generator of M. O'Neill's "mulberry32": 32 bits of state, good enough to draw engines with. */
export function chanceOf(seed: number): Chance {
  let state = (seed * 2654435761) >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const between = (low: number, high: number): number => low + (high - low) * next();
  return {
    between,
    around: (deviation, most = 2.5 * deviation) => {
      // Box and Muller's transformation; the tails are cut.
      const drawn = deviation * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
      return Math.max(-most, Math.min(most, drawn));
    },
    oneOf: (list) => list[Math.floor(next() * list.length)] ?? list[0],
    happens: (share) => next() < share,
  };
}

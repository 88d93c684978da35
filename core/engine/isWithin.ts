/**
 * Whether a value lies from one end to the other, both included. A hair is left for what a unit's conversion rounds off:
 * -60 °C is 213.14999999999998 K.
 */
export function isWithin(value: number, from: number, to: number): boolean {
  const hair = 1e-12 * Math.max(Math.abs(from), Math.abs(to));
  return value >= from - hair && value <= to + hair;
}

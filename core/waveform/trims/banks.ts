import type { TrimPoint } from './trimPattern.ts';

export type BankWord = 'both' | 'bank 1' | 'bank 2' | 'each its own';

/** Which points the pattern is read from, and which bank they are of. */
export interface Banks {
  readonly word: BankWord;
  readonly points: readonly TrimPoint[];
}

/**
 * Compares the banks load by load. Where they agree everywhere, the pattern is that of their mean;
 * where they differ, that of the bank that is clearly off zero while the other is not.
 * Each load has both banks, in one order.
 */
export function compareBanks(first: readonly TrimPoint[], second: readonly TrimPoint[]): Banks {
  const pairs = first.flatMap((a, at) => {
    const b = second[at];
    return b === undefined ? [] : [[a, b] as const];
  });
  const apart = pairs.some(([a, b]) => Math.abs(a.trim - b.trim) > Math.hypot(a.halfWidth, b.halfWidth));
  if (!apart)
    return {
      word: 'both',
      points: pairs.map(([a, b]) => ({
        ...a,
        trim: (a.trim + b.trim) / 2,
        halfWidth: Math.max(a.halfWidth, b.halfWidth),
      })),
    };
  const off = (points: readonly TrimPoint[]): boolean =>
    points.some(({ trim, halfWidth }) => Math.abs(trim) > 2 * halfWidth);
  if (off(first) && !off(second)) return { word: 'bank 1', points: first };
  if (off(second) && !off(first)) return { word: 'bank 2', points: second };
  return { word: 'each its own', points: furthest(first) >= furthest(second) ? first : second };
}

function furthest(points: readonly TrimPoint[]): number {
  return Math.max(...points.map(({ trim }) => Math.abs(trim)));
}

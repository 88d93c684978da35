import { exact, measured } from '../../quantity/amount.ts';
import type { Amount } from '../../quantity/types.ts';

/**
 * The mean of what was read cycle after cycle, with the half-width that the cycles’ own spread gives it: Student’s t at
 * 95 % times the standard deviation of the mean (JCGM 100:2008, 4.2.3 and G.3). One cycle alone has no spread to show.
 */
export function meanOfCycles(values: readonly number[], source: string): Amount {
  const n = values.length;
  const mean = values.reduce((sum, each) => sum + each, 0) / n;
  if (n < 2) return exact(mean);
  const variance = values.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (n - 1);
  return measured(mean, source, studentAt95(n - 1) * Math.sqrt(variance / n));
}

/** JCGM 100:2008, table G.2, at 95 %. */
const t95 = [12.71, 4.3, 3.18, 2.78, 2.57, 2.45, 2.36, 2.31, 2.26, 2.23, 2.2, 2.18, 2.16, 2.14, 2.13];

function studentAt95(freedom: number): number {
  // Beyond the table, to better than 1 %: 1.96 + 2.37/ν.
  return t95[freedom - 1] ?? 1.96 + 2.37 / freedom;
}

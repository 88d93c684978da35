import type { Limits } from './functionRow.ts';

/** "350 .. 900 °C", "above 0 rpm", "above 1, up to 20", "at most 1" */
export function sayLimits({ from, to, above, below }: Limits): string {
  if (from !== undefined && to !== undefined) return `${sharing(from, to)} .. ${to}`;
  if (above !== undefined && below !== undefined) return `above ${above}, below ${below}`;
  if (above !== undefined) return to === undefined ? `above ${above}` : `above ${above}, up to ${to}`;
  if (below !== undefined) return from === undefined ? `below ${below}` : `${from} up to below ${below}`;
  return from === undefined ? `at most ${to ?? ''}` : `at least ${from}`;
}

/** The lower end without its unit where the upper one has the same. */
function sharing(from: string, to: string): string {
  const [number = '', unit] = from.split(' ');
  return unit !== undefined && to.endsWith(` ${unit}`) ? number : from;
}

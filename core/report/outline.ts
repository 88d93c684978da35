/**
 * How deep each heading of a text lies in its outline, from 1, whatever levels its author chose:
 * a heading is one deeper than the last one of a higher level, so that no level is skipped.
 */
export function outlineDepths(levels: readonly number[]): number[] {
  const above: number[] = [];
  return levels.map((level) => {
    while (above.length > 0 && (above[above.length - 1] ?? 0) >= level) above.pop();
    above.push(level);
    return above.length;
  });
}

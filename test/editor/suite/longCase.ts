/** Captures beside the cases that show them; the short one is there to see what its length costs the long one. */
export const captures = {
  long: { file: 'long.csv', rows: 1_000_000 },
  short: { file: 'short.csv', rows: 2_000 },
} as const;

/** The kinds of chart that they are shown as. */
export const chartKinds = ['trace', 'switching'] as const;

/** A case that shows the three channels of a capture as a chart. */
export function caseOf(chart: (typeof chartKinds)[number], { file }: { readonly file: string }): string {
  return `diag: 1
case: A long drive
---
capture: Drive
as: drive
state: warm idle
chart: ${chart}
file: ${file}
channels:
  front: {column: front (V), signal: o2_b1s1, unit: V}
  rear: {column: rear (V), signal: o2_b1s2, unit: V}
  maf: {column: maf (g/s), signal: maf, unit: g/s}
`;
}

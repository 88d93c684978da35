/** What a chart may be, and what it shows. */
export const chartKinds = {
  trims: 'total fuel trim against air flow, both banks in one frame',
  switching: 'an oxygen sensor over time, with its switches and its time rich and lean',
  trace: 'channels over time, one frame for each unit',
  cylinders: 'a value by cylinder, in firing order',
  crank: 'a cylinder’s pressure against crank angle, with the four strokes and the valve events',
  scatter: 'one quantity against another',
  curve: 'a transfer curve, with readings on it',
  compare: 'two captures laid over each other at their first event',
} as const;

export type ChartKind = keyof typeof chartKinds;

export const chartKindNames = Object.keys(chartKinds) as readonly ChartKind[];

export function isChartKind(word: string): word is ChartKind {
  return Object.hasOwn(chartKinds, word);
}

/** What a chart may be: what it shows, and what an author gives it. */
export const chartKinds = {
  trims: {
    shows: 'total fuel trim against air flow, both banks in one frame',
    takes:
      'under readings or a log its own `stft_b1`, `ltft_b1`, `maf`; in a `chart` cell a trim `against` the air flow of the same states or log',
  },
  switching: {
    shows: 'an oxygen sensor over time, with its switches and its time rich and lean',
    takes: 'samples in volts; a `mark` in volts is the level instead of 0.45 V',
  },
  trace: {
    shows: 'channels over time, one frame for each unit',
    takes: 'samples of captures; a `mark` is a limit in their unit, or a moment',
  },
  cylinders: {
    shows: 'a value by cylinder, in firing order',
    takes: 'values by cylinder, one or several sets',
  },
  crank: {
    shows: 'a cylinder’s pressure against crank angle, with the four strokes and the valve events',
    takes:
      'under a capture its own pressure; in a `chart` cell a pressure `against` `crank_angle(…)`, each `mark` an angle (`50 °BBDC`)',
  },
  scatter: {
    shows: 'one quantity against another',
    takes:
      'in a `chart` cell a value `against` another: samples of one capture, or values by the same states',
  },
  curve: {
    shows: 'a transfer curve, with readings on it',
    takes: 'in a `chart` cell a curve of a `reference`, and readings `against` what it is entered with',
  },
  compare: {
    shows: 'captures laid over each other at their first rise through a level',
    takes: 'samples of two or three captures; the first `mark` in their unit is the level',
  },
} as const satisfies Readonly<Record<string, { readonly shows: string; readonly takes: string }>>;

export type ChartKind = keyof typeof chartKinds;

export const chartKindNames = Object.keys(chartKinds) as readonly ChartKind[];

export function isChartKind(word: string): word is ChartKind {
  return Object.hasOwn(chartKinds, word);
}

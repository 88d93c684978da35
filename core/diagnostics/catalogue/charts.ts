import type { Rows } from '../row.ts';

/** Findings about charts: what is asked for and cannot be drawn. */
export interface ChartsFacts {
  readonly 'nothing-to-plot': { readonly kind: string; readonly needs: string };
  readonly 'chart-not-computed': { readonly what: string; readonly why: string };
  readonly 'chart-kind-missing': { readonly kinds: readonly string[] };
  readonly 'not-plotted': {
    readonly kind: string;
    readonly what: string;
    readonly is: string;
    readonly takes: string;
  };
  readonly 'mixed-units': {
    readonly kind: string;
    readonly what: string;
    readonly is: string;
    readonly others: string;
  };
  readonly 'mark-not-on-chart': {
    readonly what: string;
    readonly is: string;
    readonly axes: readonly string[];
  };
}

export const chartsRows: Rows<ChartsFacts> = {
  'nothing-to-plot': {
    severity: 'warning',
    title: 'A chart with nothing on it',
    say: ({ kind, needs }) => `Nothing here can be drawn as \`${kind}\`. It needs ${needs}.`,
    why: 'A chart draws values of the case. An empty frame would look as if something had been measured.',
    wrong: 'readings: Key on, engine off\nchart: trims\nvalues:\n  map: 29.6 inHg',
    right:
      'readings: Idle and cruise\nchart: trims\nstates:\n  idle: warm idle\n  drive: cruise\ntable: |\n  reading  idle  drive  unit\n  maf      4.4   22.4   g/s\n  stft_b1  +8    +1     %\n  ltft_b1  +17   +3     %',
  },
  'chart-not-computed': {
    severity: 'warning',
    title: 'A chart whose values cannot be computed',
    say: ({ what, why }) => `There is no chart, since \`${what}\` cannot be computed: ${why}`,
    why: 'A chart that is asked for and does not come would be missed. What it is drawn from says why.',
    wrong:
      'capture: Cylinder 1, half a turn\nchart: crank\nrows: |\n  time  pressure\n  s     kPa\n  0     102\n  0.1   140',
    right:
      'capture: Cylinder 1, several turns\nchart: crank\nfile: captures/cylinder-1.csv\nchannels:\n  pressure: {column: pressure, unit: kPa}',
  },
  'chart-kind-missing': {
    severity: 'warning',
    title: 'A chart that does not say what sort it is',
    say: ({ kinds }) =>
      `It cannot be seen from what is plotted how this should be drawn. Write \`kind\`: ${kinds.map((each) => `\`${each}\``).join(', ')}.`,
    why: 'Samples over time, a curve and values by cylinder show by themselves how they are drawn. A single number does not.',
    wrong: 'chart: The idle\nplot:\n  - before.idle.map',
    right: 'chart: The vacuum over the drive\nkind: trace\nplot:\n  - log.map',
  },
  'not-plotted': {
    severity: 'warning',
    title: 'A value that this chart cannot show',
    say: ({ kind, what, is, takes }) =>
      `\`${what}\` is ${is}, and \`${kind}\` draws ${takes}. Take it out, or give it a chart of its own.`,
    why: 'Each kind of chart asks one question of one sort of value. What is left out silently would be missed.',
    wrong: 'chart: The starter current\nkind: trace\nplot:\n  - engine.displacement',
    right: 'chart: The starter current\nkind: trace\nplot:\n  - starter.current',
  },
  'mixed-units': {
    severity: 'warning',
    title: 'Values that do not share a scale',
    say: ({ kind, what, is, others }) =>
      `\`${what}\` is in ${is} and the others on this scale are in ${others}, so \`${kind}\` leaves it out. Convert it, or draw it in a chart of its own.`,
    why: 'Two quantities on one scale can be moved against each other at will, and then show whatever one likes.',
    wrong: 'chart: Two things\nkind: compare\nplot:\n  - healthy.current\n  - suspect.voltage',
    right: 'chart: One thing twice\nkind: compare\nplot:\n  - healthy.current\n  - suspect.current',
  },
  'mark-not-on-chart': {
    severity: 'warning',
    title: 'A mark that has no place on the chart',
    say: ({ what, is, axes }) =>
      `The mark \`${what}\` is ${is}, and the chart's axes are in ${axes.join(' and ')}. Write it in one of these units.`,
    why: 'A limit is drawn where its number stands on an axis. In another unit it stands nowhere.',
    wrong: 'chart: Front sensor\nkind: trace\nplot:\n  - o2.front\nmark:\n  - 14.7 psi',
    right: 'chart: Front sensor\nkind: trace\nplot:\n  - o2.front\nmark:\n  - 0.45 V',
  },
};

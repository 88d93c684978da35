import type { Chart, ChartData } from '../../core/chart/chart.ts';
import { toVegaLite } from '../../core/chart/draw.ts';
import type { ChartSpec } from '../../core/chart/spec.ts';
import type { Series } from '../../core/expression/value.ts';
import { unitOf } from '../../core/quantity/unit.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { chartAt } from '../../core/service/chartAt.ts';
import { chartImage } from '../../extension/charts/chartImage.ts';
import { drawChart } from '../../extension/charts/drawChart.ts';
import { exampleCharts } from '../chart/exampleCharts.ts';
import { formatSeconds, report } from './harness.ts';

/** A million samples of a switching sensor (synthetic) cost little more to draw than two thousand. */
const volt = unitOf('V');
if (volt === undefined) throw new Error('There is no volt.');
const type = { dimension: volt.dimension, kind: 'none', unit: volt } as const;

function sensor(count: number): Series {
  const time = Float64Array.from({ length: count }, (_, i) => (i * 100) / count);
  const samples = time.map((t) => 0.45 + 0.35 * Math.sin(2 * Math.PI * 1.3 * t) + 0.01 * Math.sin(t * 7919));
  return { kind: 'series', type, capture: 'o2', time, samples, spread: [] };
}

const span = { start: 0, end: 0 };
const chart: Chart = { kind: 'trace', span };

const dataOf = (value: Series): ChartData => ({
  items: [
    {
      name: 'o2.front',
      label: 'front sensor',
      signal: 'o2_b1s1',
      column: undefined,
      state: 'warm idle',
      when: undefined,
      value,
      against: undefined,
      from: [],
      span,
    },
  ],
  marks: [],
  engine: { firingOrder: undefined },
  listed: true,
});

const many = dataOf(sensor(1_000_000));
const few = dataOf(sensor(2_000));

function drawn(data: ChartData): number {
  const { spec } = toVegaLite(chart, data);
  if (spec === undefined) throw new Error('Nothing is drawn.');
  return drawChart(spec as ChartSpec).children.length;
}

const small = 'the chart of 2,000 points';

/** A drawing takes so long that each is timed by itself; sides take turns. */
const rounds = 15;
const sides = [
  { name: 'of a million', run: () => drawn(many) },
  { name: small, run: () => drawn(few) },
].map((side) => ({ ...side, rounds: [] as number[] }));
for (let round = -3; round < rounds; round++) {
  for (const { run, rounds: times } of round % 2 === 0 ? sides : sides.toReversed()) {
    const lasted = timeOf(run);
    if (round >= 0) times.push(lasted);
  }
}
report('The chart of a million samples, as a drawing', sides, [{ to: small, atMost: 1.5 }], formatSeconds);

/** Seconds. */
function timeOf(run: () => unknown): number {
  const from = performance.now();
  run();
  return (performance.now() - from) / 1000;
}

/** From the question to the image, when everything has been read: the slowest of the kinds counts. */
const hovers = exampleCharts().map(({ name, text, cell }) => {
  const study = checkCase(text);
  const offset = (study.file.cells[cell]?.raw.text.search(/^chart:/m) ?? 0) + 1;
  const run = (): number => {
    const at = chartAt(study, cell, offset);
    if (at === undefined) throw new Error(`${name} has no hover.`);
    return chartImage(at.spec).length;
  };
  return { name, run };
});

const bound = 0.05;
const measured = hovers.map(({ name, run }) => {
  for (let k = 0; k < 5; k++) run();
  const times = Array.from({ length: rounds }, () => timeOf(run));
  return { name: `hover: ${name}`, rounds: times };
});
report('A chart in a hover, warm', measured, [], formatSeconds);
const medians = measured.map(({ rounds }) => rounds.toSorted((a, b) => a - b)[rounds.length >> 1] ?? 0);
const slowest = Math.max(...medians);
console.log(`  The slowest takes ${formatSeconds(slowest)}; ${formatSeconds(bound)} is the bound.`);
if (slowest > bound) process.exitCode = 1;

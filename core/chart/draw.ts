import type { ChartKind } from '../casefile/kinds/chartKinds.ts';
import type { Chart, ChartData, Draw, Drawn, Extent } from './chart.ts';
import { compare } from './kinds/compare.ts';
import { crank } from './kinds/crank.ts';
import { curve } from './kinds/curve.ts';
import { cylinders } from './kinds/cylinders.ts';
import { scatter } from './kinds/scatter.ts';
import { switching } from './kinds/switching.ts';
import { trace } from './kinds/trace.ts';
import { trims } from './kinds/trims.ts';
import type { ChartSpec } from './spec.ts';
import { vegaLiteOf } from './vegaLite.ts';

const kinds: Readonly<Record<ChartKind, Draw>> = {
  trims,
  switching,
  trace,
  cylinders,
  crank,
  scatter,
  curve,
  compare,
};

/** Enough for a page: a column is about a pixel. */
export const wholeExtent: Extent = { columns: 500 };

export function draw(chart: Chart, data: ChartData, extent: Extent = wholeExtent): Drawn {
  return kinds[chart.kind](chart, data, extent);
}

/** A chart as a specification for Vega-Lite, with what could not be drawn. The same chart of the same data is the same text. */
export function toVegaLite(
  chart: Chart,
  data: ChartData,
  extent: Extent = wholeExtent,
): Drawn & { readonly spec: ChartSpec | undefined } {
  const drawn = draw(chart, data, extent);
  return { ...drawn, spec: drawn.drawing === undefined ? undefined : vegaLiteOf(drawn.drawing) };
}

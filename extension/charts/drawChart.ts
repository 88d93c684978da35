import type { ChartSpec } from '../../core/chart/spec.ts';
import type { Element } from '../../core/report/markup/markup.ts';
import { compileChart } from './compileChart.ts';
import { drawVega } from './drawVega.ts';

/** A chart as a still drawing: an `svg` element in the page's own colours. Named and described by whoever places it. */
export function drawChart(chart: ChartSpec): Element {
  return drawVega(compileChart(chart), chart);
}

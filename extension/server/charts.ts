import type { Spec } from 'vega';
import type { ChartSpec } from '../../core/chart/spec.ts';
import { chartImage } from '../charts/chartImage.ts';
import { compileChart } from '../charts/compileChart.ts';

/** What the server needs of the packages that draw: they are large, and read when the first chart is asked for. */
export interface Charts {
  readonly compile: (chart: ChartSpec) => Spec;
  /** A chart as a whole SVG file, in colours of its own. */
  readonly image: (chart: ChartSpec) => string;
}

export const charts: Charts = { compile: compileChart, image: chartImage };

import { SVGStringRenderer, type View } from 'vega';
import type { ChartSpec } from '../../core/chart/spec.ts';
import { type Element, element } from '../../core/report/markup/markup.ts';
import { compileChart } from './compileChart.ts';
import { readSvg } from './readSvg.ts';
import { viewOf } from './viewOf.ts';

declare module 'vega' {
  /** Its types leave the renderer out; only what is used here is said. */
  class SVGStringRenderer {
    initialize(
      element: undefined,
      width: number,
      height: number,
      origin: readonly [number, number],
      scale: number,
    ): this;
    render(scene: unknown): this;
    svg(): string;
  }
}

/** A chart as a still drawing: an `svg` element in the page's own colours. Named and described by whoever places it. */
export function drawChart(chart: ChartSpec): Element {
  const view = viewOf(compileChart(chart), chart.data);
  try {
    const drawn = readSvg(svgOf(view.run(), chart));
    return element(
      'svg',
      { ...drawn.attributes, class: 'chart', width: String(chart.width), height: String(chart.height) },
      ...drawn.children,
    );
  } finally {
    view.finalize();
  }
}

/** Without a load to wait for, the view is drawn at once. */
function svgOf(view: View, { width, height, spec }: ChartSpec): string {
  const { left = 0, top = 0 } = spec.padding as Readonly<Record<string, number>>;
  const renderer = new SVGStringRenderer();
  renderer.initialize(undefined, width, height, [left, top], 1);
  renderer.render((view.scenegraph() as unknown as { readonly root: unknown }).root);
  return renderer.svg();
}

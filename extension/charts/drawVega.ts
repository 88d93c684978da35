import { type Spec, SVGStringRenderer, type View } from 'vega';
import type { ChartSpec } from '../../core/chart/spec.ts';
import { type Element, element } from '../../core/report/markup/markup.ts';
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

/** Of a drawing that one looks at more closely: what is seen of the axis, and a name that no other drawing of the page has. */
export interface Closer {
  readonly from: number;
  readonly to: number;
  readonly name: string;
}

/** A chart, compiled already, as an `svg` element. */
export function drawVega(spec: Spec, { data, width, height }: ChartSpec, closer?: Closer): Element {
  const view = viewOf(spec, data);
  try {
    if (closer !== undefined) view.signal('from', closer.from).signal('to', closer.to);
    const drawn = readSvg(svgOf(view.run(), spec, width, height), closer?.name);
    const size = { width: String(width), height: String(height) };
    return element('svg', { ...drawn.attributes, class: 'chart', ...size }, ...drawn.children);
  } finally {
    view.finalize();
  }
}

/** Without a load to wait for, the view is drawn at once. */
function svgOf(view: View, { padding }: Spec, width: number, height: number): string {
  const { left = 0, top = 0 } = padding as Readonly<Record<string, number>>;
  const renderer = new SVGStringRenderer();
  renderer.initialize(undefined, width, height, [left, top], 1);
  renderer.render((view.scenegraph() as unknown as { readonly root: unknown }).root);
  return renderer.svg();
}

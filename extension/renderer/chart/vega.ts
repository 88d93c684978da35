import type { Spec } from 'vega';
import type { ChartSpec, Json } from '../../../core/chart/spec.ts';
import type { Element } from '../../../core/report/markup/markup.ts';
import { drawVega } from '../../charts/drawVega.ts';
import { isWhole, type Window } from './window.ts';

/** Draws a chart that was compiled already, as far as a window shows it; `name` is one that no other drawing of the page has. */
export function drawWindow(chart: ChartSpec, window: Window, name: string): Element {
  const spec = isWhole(window, chart.x) && isWhole(chart.x, window) ? chart.spec : withoutMoving(chart.spec);
  return drawVega(spec as unknown as Spec, chart, { ...window, name });
}

/** Words over a moment were placed for the window that the chart was made for. */
function withoutMoving(spec: ChartSpec['spec']): ChartSpec['spec'] {
  const data = (spec.data ?? []) as readonly { readonly [key: string]: Json }[];
  return {
    ...spec,
    data: data.map((each) =>
      Array.isArray(each.values)
        ? { ...each, values: (each.values as readonly Json[]).filter((value) => !moves(value)) }
        : each,
    ),
  };
}

const moves = (value: Json): boolean =>
  typeof value === 'object' && value !== null && 'moves' in value && value.moves === true;

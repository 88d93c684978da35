import type { Study } from '../study/types.ts';
import { chartOf } from './chartOf.ts';
import { draw } from './draw.ts';
import { drawnOf } from './drawnOf.ts';
import type { ChartSpec } from './spec.ts';
import { vegaLiteOf } from './vegaLite.ts';

/** Enough for a wide screen: no line has more than four points in a column. */
const columns = 700;

/**
 * The chart of a cell within a window, with the detail that is seen there. The window counts in the unit of the chart's
 * axis. Undefined where there is no chart, or none over time.
 */
export function closerOf(
  study: Study,
  cell: number,
  { from, to }: { readonly from: number; readonly to: number },
): ChartSpec | undefined {
  const asked = chartOf(study, cell);
  const factor = drawnOf(study, cell)?.drawing?.secondsInOne;
  if (asked === undefined || 'unclear' in asked || factor === undefined || !(to > from)) return undefined;
  const window = { from: from * factor, to: to * factor };
  const { drawing } = draw(asked.chart, asked.data, { columns, window });
  return drawing === undefined ? undefined : vegaLiteOf(drawing);
}

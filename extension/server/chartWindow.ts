import { closerOf } from '../../core/chart/closerOf.ts';
import type { ChartSpec } from '../../core/chart/spec.ts';
import type { ChartWindowParams } from '../shared/chartMessages.ts';
import { compiledSpec } from './compiledResults.ts';
import { loadCharts } from './loadCharts.ts';
import type { Asked } from './openCases.ts';

/** The chart of a cell's document within a window, compiled; null when there is none. */
export async function chartWindow(
  asked: Asked | undefined,
  window: ChartWindowParams,
): Promise<ChartSpec | null> {
  if (asked === undefined) return null;
  const { open, view } = asked;
  for (let cell = view.firstCell; cell < view.pastCell; cell++) {
    const chart = closerOf(open.study, cell, window);
    if (chart !== undefined) return compiledSpec(chart, await loadCharts());
  }
  return null;
}

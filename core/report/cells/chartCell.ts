import type { ChartCell } from '../../casefile/cell.ts';
import { drawnOf } from '../../chart/drawnOf.ts';
import { type CellContent, type CellContext, words } from './cellContext.ts';

/** What a chart plots in words, where it cannot be drawn; the chart itself follows where it can. */
export function chartContent(cell: ChartCell, { study, index }: CellContext): CellContent {
  const isDrawn = drawnOf(study, index)?.drawing !== undefined;
  const items = [...(cell.plot ?? []), ...(cell.mark ?? [])].map(({ expression, label }) => [
    { code: words(expression) },
    ...(label === undefined ? [] : [` ${words(label)}`]),
  ]);
  return {
    title: words(cell.title),
    margin: ['Chart', ...(cell.chartKind === undefined ? [] : [words(cell.chartKind)])],
    blocks: isDrawn || items.length === 0 ? [] : [{ kind: 'bullets', lead: 'Plots', style: 'bullet', items }],
  };
}

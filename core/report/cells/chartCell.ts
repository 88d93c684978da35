import type { ChartCell } from '../../casefile/cell.ts';
import { type CellContent, words } from './cellContext.ts';

/** A chart by what it plots; the drawing itself belongs to the editor. */
export function chartContent(cell: ChartCell): CellContent {
  const items = [...(cell.plot ?? []), ...(cell.mark ?? [])].map(({ expression, label }) => [
    { code: words(expression) },
    ...(label === undefined ? [] : [` ${words(label)}`]),
  ]);
  return {
    title: words(cell.title),
    margin: ['Chart', ...(cell.chartKind === undefined ? [] : [words(cell.chartKind)])],
    blocks: items.length === 0 ? [] : [{ kind: 'bullets', lead: 'Plots', style: 'bullet', items }],
  };
}

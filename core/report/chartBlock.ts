import type { ChartTable, Drawing } from '../chart/drawing.ts';
import { drawnOf } from '../chart/drawnOf.ts';
import { titleOf } from '../chart/layout.ts';
import type { ChartSpec } from '../chart/spec.ts';
import { vegaLiteOf } from '../chart/vegaLite.ts';
import type { ChartBlock, Table } from './blocks.ts';
import type { CellContext } from './cells/cellContext.ts';
import type { Element } from './markup/markup.ts';

/** Draws a chart as an `svg` element. What draws is large, and stands outside of the core. */
export type DrawChart = (chart: ChartSpec) => Element;

/** The chart that a cell asks for; none where there is nothing to draw. */
export function chartBlocks({
  study,
  index,
  drawChart,
}: Pick<CellContext, 'study' | 'index' | 'drawChart'>): readonly ChartBlock[] {
  const drawing = drawnOf(study, index)?.drawing;
  return drawing === undefined ? [] : [chartBlock(drawing, drawChart)];
}

function chartBlock(drawing: Drawing, drawChart: DrawChart | undefined): ChartBlock {
  const spec = vegaLiteOf(drawing);
  return {
    kind: 'chart',
    title: titleOf(drawing),
    summary: drawing.summary,
    table: tableOf(drawing.table),
    spec,
    drawing: drawChart?.(spec),
  };
}

function tableOf({ rowsAre, columns, rows }: ChartTable): Table {
  return {
    kind: 'table',
    caption: '',
    rowsAre,
    columns,
    rows: rows.map(({ name, figures, unit }) => ({
      name,
      key: undefined,
      figures,
      unit,
      other: undefined,
      remarks: [],
      strips: [],
    })),
  };
}

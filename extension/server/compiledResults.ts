import type { ChartSpec, VegaLiteSpec } from '../../core/chart/spec.ts';
import type { CellResult } from '../../core/service/cellResult.ts';
import type { ResultOfCell, ResultsParams } from '../shared/protocol.ts';
import type { Charts } from './charts.ts';
import { chartsAtHand, loadCharts } from './loadCharts.ts';

/**
 * Sends results whose charts are compiled, so that what shows them needs to know less. The first chart waits until what
 * compiles it has been read; results that come meanwhile wait behind it, in their order.
 */
export function inOrder(send: (results: ResultsParams) => void): (results: ResultsParams) => void {
  let last: Promise<void> | undefined;
  return (results) => {
    const charts = chartsAtHand();
    if (last === undefined && (charts !== undefined || !results.cells.some(hasChart))) {
      send(charts === undefined ? results : compiled(results, charts));
      return;
    }
    const mine = (last ?? Promise.resolve())
      .then(loadCharts)
      .then(
        (ready) => send(compiled(results, ready)),
        // Without it, charts are told in words and figures.
        () => send(results),
      )
      .then(() => {
        if (last === mine) last = undefined;
      });
    last = mine;
  };
}

/** A chart's specification for Vega itself in place of the one for Vega-Lite. */
export function compiledSpec(chart: ChartSpec, { compile }: Charts): ChartSpec {
  return { ...chart, spec: compile(chart) as unknown as VegaLiteSpec };
}

const known = new WeakMap<CellResult, CellResult>();

function compiled(results: ResultsParams, charts: Charts): ResultsParams {
  return {
    ...results,
    cells: results.cells.map((of) =>
      of.result === undefined || !hasChart(of)
        ? of
        : { ...of, result: compiledResult(of.result, of.cell, charts) },
    ),
  };
}

function compiledResult(result: CellResult, cell: string, charts: Charts): CellResult {
  let made = known.get(result);
  if (made === undefined) {
    const blocks = result.blocks.map((block) =>
      block.kind === 'chart' ? { ...block, cell, spec: compiledSpec(block.spec, charts) } : block,
    );
    made = { ...result, blocks };
    known.set(result, made);
  }
  return made;
}

const hasChart = ({ result }: ResultOfCell): boolean =>
  result?.blocks.some(({ kind }) => kind === 'chart') ?? false;

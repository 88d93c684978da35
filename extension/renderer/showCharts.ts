import type { ChartBlock } from '../../core/report/blocks.ts';
import type { AskCloser } from './askCloser.ts';

/** Charts on the page, until they are disposed of. */
export interface ShownCharts {
  dispose(): void;
}

/**
 * Charts stand on the page in words first. What draws them is large: it is read when there is a chart to draw, and
 * where it cannot be had the words stay.
 */
export function showCharts(
  blocks: readonly ChartBlock[],
  root: ShadowRoot,
  ask: AskCloser | undefined,
): ShownCharts {
  const figures = [...root.querySelectorAll<HTMLElement>('figure.chart')];
  const drawn: ShownCharts[] = [];
  let isGone = false;
  if (figures.length === blocks.length && blocks.some(isCompiled)) {
    import('./chart/showChart.ts').then(
      ({ chartSheet, showChart }) => {
        if (isGone) return;
        root.adoptedStyleSheets = [...root.adoptedStyleSheets, chartSheet()];
        for (const [at, figure] of figures.entries()) {
          const block = blocks[at];
          if (block !== undefined && isCompiled(block)) drawn.push(showChart(figure, block, ask));
        }
      },
      () => undefined,
    );
  }
  return {
    dispose() {
      isGone = true;
      for (const each of drawn) each.dispose();
    },
  };
}

/** Only what the extension compiled is drawn. */
function isCompiled({ spec }: ChartBlock): boolean {
  const schema = spec?.spec?.$schema;
  return typeof schema === 'string' && schema.includes('/vega/');
}

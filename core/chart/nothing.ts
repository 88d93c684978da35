import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { diagnose } from '../diagnostics/diagnostic.ts';
import type { Chart, Drawn, Item } from './chart.ts';
import { isAbsent } from './sort.ts';

/** No chart. That is told, unless its values are only still to be measured or to be put right where they stand. */
export function nothingToPlot(
  { kind, span }: Chart,
  items: readonly Item[],
  needs: string,
  diagnostics: readonly Diagnostic[],
): Drawn {
  const isExpected =
    diagnostics.length > 0 || items.some((item) => isAbsent(item) || item.against?.value.kind === 'absent');
  return {
    drawing: undefined,
    diagnostics: isExpected ? diagnostics : [diagnose('nothing-to-plot', span, { kind, needs })],
  };
}

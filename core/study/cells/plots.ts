import type { ChartCell } from '../../casefile/cell.ts';
import type { TextNode } from '../../casefile/tree.ts';
import type { Diagnostic } from '../../diagnostics/diagnostic.ts';
import type { Range } from '../../expression/value.ts';
import { measured } from '../../quantity/amount.ts';
import { halfWidthSi, quantitySi } from '../../quantity/convert.ts';
import { parseRange } from '../../quantity/parseRange.ts';
import type { Amount, Quantity } from '../../quantity/types.ts';
import type { Plot } from '../cellFacts.ts';
import { placedIn } from '../placed.ts';
import type { Parse } from '../source.ts';

export interface Plots {
  readonly plots: readonly Plot[];
  readonly diagnostics: readonly Diagnostic[];
}

export const noPlots: Plots = { plots: [], diagnostics: [] };

/** What a chart draws and marks: expressions, and limits written as in a reference (`17 .. 22 inHg`, `at most 3 psi`). */
export function plotsOf(cell: ChartCell, parse: Parse): Plots {
  const diagnostics: Diagnostic[] = [];
  const plots: Plot[] = (cell.plot ?? []).map(({ expression, against, label }) => ({
    role: 'plot',
    label: label?.text.trim(),
    drawn: parse(expression),
    against: against === undefined ? undefined : parse(against),
  }));
  for (const { expression, label } of cell.mark ?? []) {
    const limit = rangeIn(expression);
    diagnostics.push(...(limit?.diagnostics ?? []));
    if (limit !== undefined && limit.range === undefined) continue;
    plots.push({
      role: 'mark',
      label: label?.text.trim(),
      drawn: limit?.range === undefined ? parse(expression) : { node: expression, range: limit.range },
      against: undefined,
    });
  }
  return { plots, diagnostics };
}

/** Undefined where the text is no range. A range that is wrong has diagnostics, and no value. */
function rangeIn(
  node: TextNode,
): { readonly range: Range | undefined; readonly diagnostics: readonly Diagnostic[] } | undefined {
  const start = node.text.length - node.text.trimStart().length;
  const found = parseRange(node.text, start);
  if (found === undefined) return undefined;
  const { value } = found;
  const one = value?.low ?? value?.high;
  if (value === undefined || one === undefined) {
    return { range: undefined, diagnostics: placedIn(node, found.diagnostics) };
  }
  const type = { dimension: one.unit.dimension, kind: one.kind, unit: one.unit };
  const range: Range = { kind: 'range', type, low: amountOf(value.low), high: amountOf(value.high) };
  return { range, diagnostics: placedIn(node, found.diagnostics) };
}

function amountOf(quantity: Quantity | undefined): Amount | undefined {
  return quantity === undefined ? undefined : measured(quantitySi(quantity), 'a mark', halfWidthSi(quantity));
}

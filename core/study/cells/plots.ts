import type { CaptureCell, ChartCell } from '../../casefile/cell.ts';
import type { TextNode } from '../../casefile/tree.ts';
import type { Diagnostic } from '../../diagnostics/diagnostic.ts';
import type { Range } from '../../expression/value.ts';
import { measured } from '../../quantity/amount.ts';
import { halfWidthSi, quantitySi } from '../../quantity/convert.ts';
import { pressure } from '../../quantity/dimension.ts';
import { parseRange } from '../../quantity/parseRange.ts';
import type { Amount, Quantity } from '../../quantity/types.ts';
import type { Plot } from '../cellFacts.ts';
import { placedIn } from '../placed.ts';
import type { Parse } from '../source.ts';
import type { Reading } from '../types.ts';

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

/**
 * What `chart: crank` under a capture stands for: its first pressure against its crank angle, with the valve events
 * that are read from it.
 */
export function crankPlots(cell: CaptureCell, readings: readonly Reading[], parse: Parse): Plots {
  const asked = cell.chart;
  if (asked?.text !== 'crank') return noPlots;
  const sampled = readings.find(({ type }) => type.kind === 'series' && type.quantity.dimension === pressure);
  if (sampled === undefined) return noPlots;
  const { fullName, key } = sampled;
  // Written nowhere: what is found in it is found at the word that asks for the chart.
  const written = (text: string) =>
    parse({ kind: 'text', text, style: 'plain', span: asked.span, map: [[0, asked.span.start]] });
  return {
    plots: [
      { role: 'plot', label: key, drawn: written(fullName), against: written(`crank_angle(${fullName})`) },
      ...events.map(
        ([event, label]): Plot => ({
          role: 'mark',
          label,
          drawn: written(`valve_events(${fullName}).${event}`),
          against: undefined,
        }),
      ),
    ],
    diagnostics: [],
  };
}

const events = [
  ['evo', 'exhaust opens'],
  ['ivo', 'intake opens'],
  ['evc', 'exhaust closes'],
  ['ivc', 'intake closes'],
] as const;

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

import type { Drawn } from '../../core/chart/chart.ts';
import { type Asked, chartOf } from '../../core/chart/chartOf.ts';
import { toVegaLite } from '../../core/chart/draw.ts';
import type { Drawing } from '../../core/chart/drawing.ts';
import type { ChartSpec } from '../../core/chart/spec.ts';
import { checkCase } from '../../core/rules/checkCase.ts';

/** The chart that a cell of a case asks for; the last cell when none is named. */
export function askedIn(text: string, cell?: number): Asked {
  const study = checkCase(text);
  const asked = chartOf(study, cell ?? study.file.cells.length - 1);
  if (asked === undefined || 'unclear' in asked) throw new Error('No chart is asked for.');
  return asked;
}

export function drawnIn(text: string, cell?: number): Drawn & { readonly spec: ChartSpec | undefined } {
  const { chart, data } = askedIn(text, cell);
  return toVegaLite(chart, data);
}

export interface Whole {
  readonly drawing: Drawing;
  readonly spec: ChartSpec;
}

/** A chart that must be drawn. */
export function wholeIn(text: string, cell?: number): Whole {
  const { drawing, spec, diagnostics } = drawnIn(text, cell);
  if (drawing === undefined || spec === undefined) {
    throw new Error(`Not drawn: ${diagnostics.map(({ code }) => code).join(', ')}`);
  }
  return { drawing, spec };
}

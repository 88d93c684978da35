import type { Spec } from 'vega';
import { compile, type TopLevelSpec } from 'vega-lite';
import type { ChartSpec } from '../../core/chart/spec.ts';

/**
 * A chart's specification as Vega itself takes it, without the lines' points.
 * Nothing is logged: what is wrong with a chart was told when it was drawn.
 */
export function compileChart({ spec, width, height }: ChartSpec): Spec {
  const { spec: compiled } = compile(spec as unknown as TopLevelSpec, { logger: silent });
  const { left, right, top, bottom } = spec.padding as Readonly<Record<string, number>>;
  return {
    ...compiled,
    // Frames that stand in a row leave the size of the whole open.
    width: width - (left ?? 0) - (right ?? 0),
    height: height - (top ?? 0) - (bottom ?? 0),
  };
}

const silent = {
  level: () => silent,
  error: () => silent,
  warn: () => silent,
  info: () => silent,
  debug: () => silent,
};

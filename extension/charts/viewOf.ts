import { parse, type Spec, textMetrics, View, type ViewOptions } from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import type { Points } from '../../core/chart/spec.ts';
import { textWidth } from '../../core/chart/textWidth.ts';

/**
 * A chart as a Vega view. Expressions are interpreted and never turned into code, and whatever would be loaded is refused.
 * Texts are as wide as the core takes them to be, so that a chart is the same on every machine.
 */
export function viewOf(spec: Spec, data: Readonly<Record<string, Points>>): View {
  measureByTable();
  const view = new View(parse(spec, undefined, { ast: true }), {
    renderer: 'none',
    expr: expressionInterpreter,
    loader: refusing,
    logger: silent,
  });
  for (const [name, points] of Object.entries(data)) view.data(name, rowsOf(points));
  return view;
}

function rowsOf({ x, y }: Points): { x: number; y: number | null }[] {
  return x.map((at, i) => ({ x: at, y: y[i] ?? null }));
}

interface Measured {
  readonly fontSize?: number;
}

declare module 'vega' {
  /** Its types leave it out. */
  const textMetrics: { width: (item: Measured, text: unknown) => number };
}

/** Vega asks a canvas where there is one, and machines differ in their fonts. */
function measureByTable(): void {
  textMetrics.width = ({ fontSize = 11 }, text) => textWidth(String(text), fontSize);
}

const refused = (): Promise<never> => Promise.reject(new Error('A chart loads nothing.'));

const refusing: NonNullable<ViewOptions['loader']> = {
  load: refused,
  sanitize: refused,
  http: refused,
  file: refused,
};

const silent: NonNullable<ViewOptions['logger']> = {
  level: () => 0 as never,
  error: () => silent,
  warn: () => silent,
  info: () => silent,
  debug: () => silent,
};

import type { ChartKind } from '../casefile/kinds/chartKinds.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Value } from '../expression/value.ts';
import type { When } from '../study/types.ts';
import type { Span } from '../text/span.ts';
import type { Drawing } from './drawing.ts';

/** What an author asks to see. */
export interface Chart {
  readonly kind: ChartKind;
  /** Where it is asked for: the place of what is wrong with the chart as a whole. */
  readonly span: Span;
}

/** What it is drawn from: values of the study. */
export interface ChartData {
  readonly items: readonly Item[];
  readonly marks: readonly Mark[];
  readonly engine: Engine;
  /** True where the author listed what to draw; otherwise what does not belong on the chart is passed over. */
  readonly listed: boolean;
}

export interface Item {
  /** `before.idle.stft_b1`, or the expression as written. */
  readonly name: string;
  /** What is written beside it. */
  readonly label: string;
  /** The signal's name, or that of the computed value; empty for an expression. */
  readonly signal: string;
  /** Among several states side by side: the cell's own name for it. */
  readonly column: string | undefined;
  /** The engine state, as written. */
  readonly state: string | undefined;
  readonly when: When | undefined;
  readonly value: Value;
  readonly against: { readonly name: string; readonly label: string; readonly value: Value } | undefined;
  /** The readings it comes from, by full name. */
  readonly from: readonly string[];
  readonly span: Span;
}

export interface Mark {
  readonly text: string;
  readonly label: string | undefined;
  readonly value: Value;
  readonly from: readonly string[];
  readonly span: Span;
}

/** What charts need of the header. */
export interface Engine {
  /** Cylinder numbers in the order they fire; undefined where the header does not say. */
  readonly firingOrder: readonly string[] | undefined;
}

/** How much of a chart is wanted. */
export interface Extent {
  /** Columns of pixels: no line has more than four points in each. */
  readonly columns: number;
  /** Of a chart over time, in seconds; left out, all of it. */
  readonly window?: { readonly from: number; readonly to: number };
}

/** A chart that is set, or why it cannot be. */
export interface Drawn {
  readonly drawing: Drawing | undefined;
  readonly diagnostics: readonly Diagnostic[];
}

/** How one kind of chart is drawn. */
export type Draw = (chart: Chart, data: ChartData, extent: Extent) => Drawn;

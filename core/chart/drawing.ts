import type { ChartKind } from '../casefile/kinds/chartKinds.ts';
import type { Tone } from './palette.ts';

/**
 * A chart as it is set: frames one under the other with a common axis, what stands in them, and the same in words.
 * Numbers are in the units that the axes name.
 */
export interface Drawing {
  readonly kind: ChartKind;
  /** What is drawn: "Total trim against air flow". */
  readonly title: string;
  /** Where it was taken: "warm idle, before". */
  readonly taken: string;
  /** Pixels; left out, as wide as a column of text. */
  readonly width?: number;
  readonly x: Axis;
  readonly frames: readonly Frame[];
  /** Words beneath the axis, each over its stretch: the strokes. */
  readonly beneath: readonly Stretch[];
  /** Where the axis is time that can be looked at more closely: the seconds in one of its units. */
  readonly secondsInOne: number | undefined;
  /** The chart in sentences, for who does not see it. */
  readonly summary: readonly string[];
  readonly table: ChartTable;
}

export interface Axis {
  readonly name: string;
  /** Empty where there is none. */
  readonly unit: string;
  readonly from: number;
  readonly to: number;
  /** Undefined: round numbers. */
  readonly ticks?: readonly Tick[];
}

export interface Tick {
  readonly at: number;
  readonly says: string;
}

export interface Frame {
  readonly y: Axis;
  /** Pixels. */
  readonly height: number;
  readonly layers: readonly Layer[];
}

export type Layer = Line | Dots | Band | Rule | Marks | Note;

/** A thin line, named at its end. */
export interface Line {
  readonly kind: 'line';
  readonly tone: Tone;
  /** What it is; empty where another frame shows it whole. */
  readonly of: string;
  /** In the order in which it is drawn; NaN breaks it. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Set at its end; empty where the frame says it. */
  readonly says: string;
  /** Drawn as a background: the usual, the known good. */
  readonly quiet?: true;
}

export interface Dots {
  readonly kind: 'dots';
  readonly tone: Tone;
  /** A filled circle, an open one, an open square, or a small point of a cloud. */
  readonly shape: 'filled' | 'open' | 'square' | 'cloud';
  readonly dots: readonly Dot[];
  /** What the dots are, named beside the last one; empty where each has its own words. */
  readonly says: string;
}

export interface Dot {
  readonly x: number;
  readonly y: number;
  /** Half-widths, 0 where none is stated. */
  readonly plusMinus: number;
  readonly plusMinusX: number;
  /** Set beside it. */
  readonly says: string;
}

/** A limit as a shaded band across the frame; an open end runs to the frame's edge. */
export interface Band {
  readonly kind: 'band';
  readonly along: 'x' | 'y';
  readonly from: number | undefined;
  readonly to: number | undefined;
  /** With its number: "-10 .. 10 %". */
  readonly says: string;
}

/** A single value, as a hairline across the frame. */
export interface Rule {
  readonly kind: 'rule';
  readonly along: 'x' | 'y';
  readonly at: number;
  readonly says: string;
}

/** Moments as small rings on a height: where a line passes it. */
export interface Marks {
  readonly kind: 'marks';
  readonly at: readonly number[];
  readonly y: number;
}

/** Words in the margin beside a height. */
export interface Note {
  readonly kind: 'note';
  readonly y: number;
  readonly says: string;
}

export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly says: string;
}

/** The chart's figures as a table: names left, then a column for each heading. */
export interface ChartTable {
  readonly rowsAre: string;
  readonly columns: readonly string[];
  readonly rows: readonly {
    readonly name: string;
    readonly figures: readonly TableFigure[];
    readonly unit: string;
  }[];
}

/** A number with its half-width, or words where there is none. */
export interface TableFigure {
  readonly number: string | undefined;
  readonly plusMinus: string | undefined;
  readonly words: string | undefined;
}

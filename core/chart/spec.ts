/** Plain JSON, as Vega-Lite takes it. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

export interface VegaLiteSpec {
  readonly [key: string]: Json;
}

/** The points of a line, in columns; null breaks it. */
export interface Points {
  readonly x: readonly number[];
  readonly y: readonly (number | null)[];
}

/**
 * A chart for Vega-Lite. The lines' points stand beside it by name, so that they can be exchanged while one looks closer;
 * `from` and `to` are parameters of the specification: the stretch of the axis that is shown.
 */
export interface ChartSpec {
  readonly spec: VegaLiteSpec;
  readonly data: Readonly<Record<string, Points>>;
  readonly x: { readonly name: string; readonly unit: string; readonly from: number; readonly to: number };
  /** Where the axis is time that can be looked at more closely: the seconds in one of its units. */
  readonly secondsInOne: number | undefined;
  /** What a cursor reads, in words and units. */
  readonly reads: {
    readonly lines: readonly { readonly data: string; readonly name: string; readonly unit: string }[];
    readonly dots: readonly { readonly x: number; readonly says: string }[];
  };
  /** Pixels, the whole drawing. */
  readonly width: number;
  readonly height: number;
  /** Where the frames stand in it: one plot width, and each frame's top and height. */
  readonly plot: {
    readonly left: number;
    readonly width: number;
    readonly frames: readonly { readonly top: number; readonly height: number }[];
  };
}

import type { Series } from '../expression/value.ts';
import { decimate } from '../waveform/decimate.ts';
import type { Extent } from './chart.ts';
import type { Axis } from './drawing.ts';
import { shown, timeUnit, within } from './measure.ts';

/** The stretch of time that is drawn, in the unit that suits it. */
export interface TimeAxis {
  readonly axis: Axis;
  /** Seconds in one of the axis' units. */
  readonly factor: number;
}

export function timeAxisOf(all: readonly Series[], { window }: Extent): TimeAxis {
  const from = Math.min(...all.map(({ time }) => time[0] ?? 0));
  const to = Math.max(...all.map(({ time }) => time[time.length - 1] ?? 0));
  // The unit is that of the whole record: looking closer does not change it.
  const { unit, factor } = timeUnit(to - from);
  const shownFrom = window?.from ?? from;
  const shownTo = window?.to ?? to;
  return {
    axis: {
      name: 'time',
      unit,
      from: shownFrom / factor,
      to: (shownTo > shownFrom ? shownTo : shownFrom + 1) / factor,
    },
    factor,
  };
}

/** A series as the points that are drawn: few, and every extreme among them. `shift` is taken from its time, in seconds. */
export function tracePoints(
  series: Series,
  { columns, window }: Extent,
  factor: number,
  shift = 0,
  beyond: 0 | 1 = 1,
): { readonly x: Float64Array; readonly y: Float64Array } {
  const moved =
    window === undefined || shift === 0 ? window : { from: window.from + shift, to: window.to + shift };
  const { time, samples } = within(series, moved, beyond);
  const few = decimate(time, samples, columns);
  return {
    x: few.time.map((at) => (at - shift) / factor),
    y: few.samples.map((si) => shown(si, series.type)),
  };
}

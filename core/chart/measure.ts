import { firstAtOrAfter } from '../expression/series.ts';
import type { Series } from '../expression/value.ts';
import { halfWidth } from '../quantity/amount.ts';
import { fromSi } from '../quantity/convert.ts';
import { plain } from '../quantity/dimension.ts';
import { formatNumber, qualifierOf } from '../quantity/format.ts';
import type { Amount, QuantityType } from '../quantity/types.ts';
import type { Axis, TableFigure } from './drawing.ts';

/** A number of the study on a chart's scale. */
export const shown = (si: number, { unit, kind }: QuantityType): number => fromSi(si, unit, kind);

export const shownWidth = (amount: Amount, { unit }: QuantityType): number =>
  halfWidth(amount) / Math.abs(unit.factor);

/** "inHg", "psi gauge"; plain numbers have none. */
export function unitWords(type: QuantityType): string {
  const symbol = type.unit.symbol === '1' ? '' : type.unit.symbol;
  const word = qualifierOf(type);
  return word === undefined || word === 'difference' ? symbol : `${symbol} ${word}`;
}

/** "pressure", "current"; empty for plain numbers, and where a quantity has no word of its own. */
export function quantityWord({ dimension }: QuantityType): string {
  return dimension === plain || /[^a-z ]/.test(dimension.name) ? '' : dimension.name;
}

/** Whether numbers of both can stand on one scale. */
export function sameScale(a: QuantityType, b: QuantityType): boolean {
  return a.dimension === b.dimension && (a.kind === b.kind || a.kind === 'open' || b.kind === 'open');
}

/** A value on an axis, in words: "16.7 inHg". */
export function said(value: number, unit: string, plusMinus = 0): string {
  const width = plusMinus > 0 ? ` ± ${formatNumber(Number(plusMinus.toPrecision(2)))}` : '';
  return `${formatNumber(value, plusMinus, 4)}${width}${unit === '' ? '' : ` ${unit}`}`;
}

export function numberFigure(value: number, plusMinus = 0): TableFigure {
  if (!Number.isFinite(value)) return wordsFigure('–');
  return {
    number: formatNumber(value, plusMinus),
    plusMinus: plusMinus > 0 ? formatNumber(Number(plusMinus.toPrecision(2))) : undefined,
    words: undefined,
  };
}

export const wordsFigure = (words: string): TableFigure => ({
  number: undefined,
  plusMinus: undefined,
  words,
});

/** The least and the greatest of what is there; undefined when nothing is. */
export function extremes(lists: Iterable<ArrayLike<number>>): readonly [number, number] | undefined {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const list of lists) {
    for (let i = 0; i < list.length; i++) {
      const each = list[i] ?? Number.NaN;
      if (each < low && each > Number.NEGATIVE_INFINITY) low = each;
      if (each > high && each < Number.POSITIVE_INFINITY) high = each;
    }
  }
  return low <= high ? [low, high] : undefined;
}

/** What is left of a step where a number was meant to be on it: rounding of the computer's last digits. */
const rest = 1e-9;

/**
 * An axis that holds these numbers, from one round number to another, with a little room at either end so that nothing
 * stands on the frame; never beyond zero for its sake.
 */
export function roundAxis(name: string, unit: string, [low, high]: readonly [number, number]): Axis {
  const spread = high - low;
  const room = spread > 0 ? spread : Math.abs(low) > 0 ? Math.abs(low) * 0.1 : 1;
  const step = roundStep(room / 8);
  const round = (at: number): number => Number((at * step).toPrecision(12));
  const air = spread / 25;
  const from = round(Math.floor((low < 0 ? low - air : Math.max(0, low - air)) / step + rest));
  const to = round(Math.ceil((high > 0 ? high + air : Math.min(0, high + air)) / step - rest));
  return { name, unit, from, to: to > from ? to : from + step };
}

/** 1, 2 or 5 times a power of ten, at least `about`. */
export function roundStep(about: number): number {
  const power = 10 ** Math.floor(Math.log10(about));
  const share = about / power;
  return power * (share <= 1 ? 1 : share <= 2 ? 2 : share <= 5 ? 5 : 10);
}

/** Seconds read as the unit that suits their span: minutes for a long drive, milliseconds for a spark. */
export function timeUnit(seconds: number): { readonly unit: string; readonly factor: number } {
  if (seconds > 7200) return { unit: 'h', factor: 3600 };
  if (seconds > 300) return { unit: 'min', factor: 60 };
  return seconds < 0.5 && seconds > 0 ? { unit: 'ms', factor: 0.001 } : { unit: 's', factor: 1 };
}

/** The part of a series inside a window of time, with so many samples beyond each end: one, and lines reach the edge. Nothing is copied. */
export function within(
  series: Series,
  window: { readonly from: number; readonly to: number } | undefined,
  beyond: 0 | 1,
): { readonly time: Float64Array; readonly samples: Float64Array } {
  const { time, samples } = series;
  if (window === undefined) return { time, samples };
  const first = firstAtOrAfter(time, window.from);
  const past = firstAtOrAfter(time, window.to);
  const start = time[first] === window.from ? first : Math.max(0, first - beyond);
  const end = Math.min(time.length, past + (time[past] === window.to ? 1 : beyond));
  return { time: time.subarray(start, end), samples: samples.subarray(start, end) };
}

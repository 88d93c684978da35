import type { Absent } from '../expression/value.ts';
import { halfWidth } from '../quantity/amount.ts';
import { fromSi } from '../quantity/convert.ts';
import { formatNumber } from '../quantity/format.ts';
import type { Amount, QuantityType, Unit } from '../quantity/types.ts';
import type { Figure } from './blocks.ts';

/**
 * A number for a table. Its digits end where its uncertainty ends;
 * an exact number keeps the decimals that its author wrote, so that 0.10 V stays 0.10 V.
 */
export function figureOf(amount: Amount, type: QuantityType, written?: number): Figure {
  const value = fromSi(amount.si, type.unit, type.kind);
  const half = halfWidth(amount) / Math.abs(type.unit.factor);
  const figure = numberFigure(value, half);
  if (half > 0 || written === undefined || !Number.isFinite(value)) return figure;
  return { ...figure, number: unsignedZero(value.toFixed(Math.min(written, 20))) };
}

/** The same amount in another unit, to about the same fineness as `own` shows it. */
export function figureIn(unit: Unit, amount: Amount, type: QuantityType, own: Figure): Figure {
  if (own.number === undefined) return own;
  const value = fromSi(amount.si, unit, type.kind);
  const half = halfWidth(amount) / Math.abs(unit.factor);
  if (half > 0 || !Number.isFinite(value)) return numberFigure(value, half);
  const step = (10 ** -decimalsOf(own.number) * Math.abs(type.unit.factor)) / Math.abs(unit.factor);
  // A degree Fahrenheit is half a degree Celsius, which nobody reads; elsewhere no two figures become one.
  const coarser = type.kind === 'point' ? 2 : 1;
  const decimals = Math.min(20, Math.max(0, Math.ceil(-Math.log10(coarser * step))));
  return { number: unsignedZero(value.toFixed(decimals)), plusMinus: undefined, words: undefined };
}

/**
 * A distance in SI units on the type's scale, to the fineness of its own half-width: no offset, no sign.
 * One that was converted for the reader has no digits of its own, and gets three.
 */
export function distanceFigure(si: number, type: QuantityType, half = 0, converted = false): Figure {
  const factor = Math.abs(type.unit.factor);
  const distance = Math.abs(si) / factor;
  return {
    number: formatNumber(converted ? Number(distance.toPrecision(3)) : distance, half / factor, 4),
    plusMinus: undefined,
    words: undefined,
  };
}

export function wordsFigure(words: string): Figure {
  return { number: undefined, plusMinus: undefined, words };
}

/** What stands where a value is not: the author's words for it, or why there is none. */
export function absentFigure(absent: Absent): Figure {
  return wordsFigure(absent.why === '' ? absent.status : absent.why);
}

/** "19.8 ± 0.2 inHg"; plain numbers have no unit. */
export function inWords(figure: Figure, unit: string): string {
  if (figure.number === undefined) return figure.words ?? '';
  const half = figure.plusMinus === undefined ? '' : ` ± ${figure.plusMinus}`;
  return `${figure.number}${half}${unit === '' || unit === '1' ? '' : ` ${unit}`}`;
}

/** Decimals of a number as written: 1 for "13.1", 0 for "181"; undefined when a text does not start with a plain number. */
export function decimalsWritten(text: string): number | undefined {
  const found = /^\s*["']?[+\-−]?\d+(?:\.(\d+))?(?![\d.,eE])/.exec(text);
  return found === null ? undefined : (found[1]?.length ?? 0);
}

function numberFigure(value: number, half: number): Figure {
  return {
    number: formatNumber(value, half),
    plusMinus: half > 0 ? formatNumber(Number(half.toPrecision(2))) : undefined,
    words: undefined,
  };
}

const decimalsOf = (number: string): number => {
  const point = number.indexOf('.');
  return point < 0 ? 0 : number.length - point - 1;
};

const unsignedZero = (number: string): string => (/^-0(\.0*)?$/.test(number) ? number.slice(1) : number);

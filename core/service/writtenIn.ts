import { exact, measured } from '../quantity/amount.ts';
import { fromSi, halfWidthSi, quantitySi } from '../quantity/convert.ts';
import { qualifierOf } from '../quantity/format.ts';
import type { Kind, Quantity, QuantityType, Unit } from '../quantity/types.ts';
import { decimalsWritten, figureIn, figureOf } from '../report/figure.ts';

/** A quantity in another unit, with its ± and its qualifier; `of` is the kind that its place gives it. */
export function writtenIn(
  unit: Unit,
  quantity: Quantity,
  of: Kind | undefined,
  written: string,
): string | undefined {
  const number = numberIn(unit, quantity, of, written);
  if (number === undefined) return undefined;
  const qualifier = quantity.kindGiven ? qualifierOf(typeOf(quantity, of)) : undefined;
  return [number, unit.symbol, ...(qualifier === undefined ? [] : [qualifier])].join(' ');
}

/** The number alone: at least as fine as it is written, and to four digits, so that a limit stays where it is. */
export function numberIn(
  unit: Unit,
  quantity: Quantity,
  of: Kind | undefined,
  written: string,
): string | undefined {
  const type = typeOf(quantity, of);
  const si = quantitySi(quantity, type.kind);
  const half = halfWidthSi(quantity);
  const amount = half > 0 ? measured(si, 'written', half) : exact(si);
  const figure = figureIn(unit, amount, type, figureOf(amount, type, decimalsWritten(written)));
  if (figure.number === undefined) return undefined;
  if (figure.plusMinus !== undefined) return `${figure.number} ± ${figure.plusMinus}`;
  const value = fromSi(si, unit, type.kind);
  const [, fraction = ''] = figure.number.split('.');
  const forFour = value === 0 ? 0 : 3 - Math.floor(Math.log10(Math.abs(value)));
  const decimals = Math.min(20, Math.max(0, fraction.length, forFour));
  return value
    .toFixed(decimals)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '');
}

export function typeOf({ unit, kind, kindGiven }: Quantity, of: Kind | undefined): QuantityType {
  return { dimension: unit.dimension, kind: kindGiven ? kind : (of ?? kind), unit };
}

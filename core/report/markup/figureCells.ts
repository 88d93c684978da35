import type { Figure } from '../blocks.ts';
import { element, type Markup } from './markup.ts';

/** How a column of figures is set: the longest fraction (with its point) that it holds, and whether half-widths stand in it. */
export interface FigureColumn {
  readonly fraction: number;
  readonly plusMinus: boolean;
}

export function figureColumn(figures: readonly (Figure | undefined)[]): FigureColumn {
  return {
    fraction: Math.max(0, ...figures.map((figure) => fractionOf(figure?.number ?? ''))),
    plusMinus: figures.some((figure) => figure?.plusMinus !== undefined),
  };
}

/**
 * A figure as table cells, aligned at the point of its column by unseen digits; its half-width has a cell of its own.
 * `under` is the same in the other system of units, in a second line of the same cells.
 */
export function figureCells(
  figure: Figure | undefined,
  column: FigureColumn,
  className: string,
  under?: { readonly figure: Figure | undefined; readonly unit: string },
): Markup[] {
  const lines = under === undefined ? [figure] : [figure, under.figure];
  if (lines.every((line) => line?.number === undefined)) {
    const words = lines.map((line) => line?.words ?? '').filter((text) => text !== '');
    const span = column.plusMinus ? { colspan: '2' } : {};
    return [element('td', { class: `words${className}`, ...span }, ...stacked(words.map((text) => [text])))];
  }
  const numbers = lines.map((line, at): Markup[] => {
    if (line?.number === undefined) return [line?.words ?? ''];
    const number = aligned(line.number, column.fraction);
    // Who hears the table instead of seeing it hears the other unit where it belongs.
    return at === 0 ? number : [...number, element('span', { class: 'heard' }, ` ${under?.unit ?? ''}`)];
  });
  const tight = column.plusMinus ? ' tight' : '';
  const number = element('td', { class: `num${className}${tight}` }, ...stacked(numbers));
  if (!column.plusMinus) return [number];
  const halves = lines.map((line) => (line?.plusMinus === undefined ? [] : [`± ${line.plusMinus}`]));
  return [number, element('td', { class: `pm${className}` }, ...stacked(halves))];
}

/** The second line is the other system's. */
export function stacked([first = [], second]: readonly (readonly Markup[])[]): Markup[] {
  return second === undefined ? [...first] : [...first, element('span', { class: 'under' }, ...second)];
}

function aligned(number: string, fraction: number): Markup[] {
  const shown = number.replace(/^-/, '−');
  const missing = fraction - fractionOf(number);
  if (missing <= 0 || isRange(number)) return [shown];
  const pad = number.includes('.') ? '0'.repeat(missing) : `.${'0'.repeat(missing - 1)}`;
  return [shown, element('span', { class: 'pad', 'aria-hidden': 'true' }, pad)];
}

/** The point and what is behind it: 0 for "13", 2 for "13.1". In a range nothing is aligned. */
function fractionOf(number: string): number {
  const point = number.indexOf('.');
  return point < 0 || isRange(number) ? 0 : number.length - point;
}

const isRange = (number: string): boolean => number.includes('..') || number.startsWith('at ');

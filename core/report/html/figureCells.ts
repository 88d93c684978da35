import type { Figure } from '../blocks.ts';
import { escapeHtml } from './escape.ts';

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
): string {
  const lines = under === undefined ? [figure] : [figure, under.figure];
  const span = column.plusMinus ? ' colspan="2"' : '';
  if (lines.every((line) => line?.number === undefined)) {
    const words = stacked(lines.map((line) => escapeHtml(line?.words ?? '')).filter((text) => text !== ''));
    return `<td class="words${className}"${span}>${words}</td>`;
  }
  const numbers = lines.map((line) =>
    line?.number === undefined ? escapeHtml(line?.words ?? '') : aligned(line.number, column.fraction),
  );
  // Who hears the table instead of seeing it hears the other unit where it belongs.
  const unit = under === undefined ? '' : `<span class="heard"> ${escapeHtml(under.unit)}</span>`;
  if (numbers.length === 2 && under?.figure?.number !== undefined) numbers[1] += unit;
  const number = `<td class="num${className}${column.plusMinus ? ' tight' : ''}">${stacked(numbers)}</td>`;
  if (!column.plusMinus) return number;
  const halves = lines.map((line) =>
    line?.plusMinus === undefined ? '' : `± ${escapeHtml(line.plusMinus)}`,
  );
  return `${number}<td class="pm${className}">${stacked(halves)}</td>`;
}

/** The second line is the other system's. */
export function stacked([first = '', second]: readonly string[]): string {
  return second === undefined ? first : `${first}<span class="under">${second}</span>`;
}

function aligned(number: string, fraction: number): string {
  const shown = escapeHtml(number.replace(/^-/, '−'));
  const missing = fraction - fractionOf(number);
  if (missing <= 0 || isRange(number)) return shown;
  const pad = number.includes('.') ? '0'.repeat(missing) : `.${'0'.repeat(missing - 1)}`;
  return `${shown}<span class="pad" aria-hidden="true">${pad}</span>`;
}

/** The point and what is behind it: 0 for "13", 2 for "13.1". In a range nothing is aligned. */
function fractionOf(number: string): number {
  const point = number.indexOf('.');
  return point < 0 || isRange(number) ? 0 : number.length - point;
}

const isRange = (number: string): boolean => number.includes('..') || number.startsWith('at ');

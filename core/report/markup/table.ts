import type { Table, TableRow } from '../blocks.ts';
import { type FigureColumn, figureCells, figureColumn, stacked } from './figureCells.ts';
import { element, type Markup } from './markup.ts';
import { narrowNameMarkup, narrowRunsMarkup } from './runs.ts';
import { stripMarkup } from './strip.ts';

/**
 * A handbook's table. With one column of figures the other system of units and the remarks stand beside;
 * with several the other system stands in a second line under each figure, and the remarks below the row.
 */
export function tableMarkup(table: Table): Markup {
  const { head, rows } = table.columns.length > 0 ? severalColumns(table) : oneColumn(table);
  const caption = table.caption === '' ? [] : [element('caption', {}, table.caption)];
  return element(
    'div',
    { class: 'wide' },
    element(
      'table',
      {},
      ...caption,
      element('thead', {}, element('tr', {}, columnHead({}, table.rowsAre), ...head)),
      element('tbody', {}, ...rows),
    ),
  );
}

interface Columns {
  readonly head: readonly Markup[];
  readonly rows: readonly Markup[];
}

function oneColumn({ rows, remarksAre = 'remarks' }: Table): Columns {
  const own = figureColumn(rows.map((row) => row.figures[0]));
  const hasOther = rows.some((row) => row.other !== undefined);
  const other = figureColumn(rows.map((row) => row.other?.figures[0]));
  const hasRemarks = rows.some(isRemarkable);
  return {
    head: [
      figureHead('value', own),
      unitHead,
      ...(hasOther ? [figureHead('also', other), unitHead] : []),
      ...(hasRemarks ? [columnHead({}, remarksAre)] : []),
    ],
    rows: rows.map((row) =>
      element(
        'tr',
        {},
        rowHead(row),
        ...figureCells(row.figures[0], own, ''),
        element('td', { class: 'unit' }, row.unit),
        ...(hasOther
          ? [
              ...figureCells(row.other?.figures[0], other, ' other'),
              element('td', { class: 'unit other' }, row.other?.unit ?? ''),
            ]
          : []),
        ...(hasRemarks ? [element('td', { class: 'remark' }, ...remarks(row))] : []),
      ),
    ),
  };
}

function severalColumns({ rows, columns }: Table): Columns {
  const layout = columns.map((_, at) =>
    figureColumn(rows.flatMap((row) => [row.figures[at], row.other?.figures[at]])),
  );
  const width = 2 + layout.reduce((sum, { plusMinus }) => sum + (plusMinus ? 2 : 1), 0);
  return {
    head: [...layout.map((column, at) => figureHead(columns[at] ?? '', column)), unitHead],
    rows: rows.flatMap((row) => {
      const { figures, other, unit } = row;
      const cells = layout.flatMap((column, at) =>
        figureCells(
          figures[at],
          column,
          ' aside',
          other === undefined ? undefined : { figure: other.figures[at], unit: other.unit },
        ),
      );
      const units = stacked([unit, ...(other === undefined ? [] : [other.unit])].map((each) => [each]));
      const line = element('tr', {}, rowHead(row), ...cells, element('td', { class: 'unit' }, ...units));
      if (!isRemarkable(row)) return [line];
      const below = element('td', { class: 'remark', colspan: String(width) }, ...remarks(row));
      return [line, element('tr', { class: 'below' }, below)];
    }),
  };
}

const columnHead = (attributes: { class?: string; colspan?: string }, name: string): Markup =>
  element('th', { scope: 'col', ...attributes }, name);

const unitHead = columnHead({ class: 'unit' }, 'unit');

function figureHead(name: string, { plusMinus }: FigureColumn): Markup {
  return columnHead(plusMinus ? { class: 'num', colspan: '2' } : { class: 'num' }, name);
}

function rowHead({ name, key }: TableRow): Markup {
  const own = key === undefined ? [] : [' ', element('span', { class: 'key' }, key)];
  return element('th', { scope: 'row' }, ...narrowNameMarkup(name), ...own);
}

const isRemarkable = (row: TableRow): boolean => row.remarks.length > 0 || row.strips.length > 0;

/** Each drawing stands with the words about it. */
function remarks(row: TableRow): Markup[] {
  return [
    ...row.remarks.map((runs) => element('p', {}, ...narrowRunsMarkup(runs))),
    ...row.strips.map((strip) => element('p', {}, `${strip.says} `, stripMarkup(strip))),
  ];
}

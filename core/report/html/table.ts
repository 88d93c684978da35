import type { Figure, Table, TableRow } from '../blocks.ts';
import { escapeHtml } from './escape.ts';
import { writeRuns } from './runs.ts';
import { writeStrip } from './strip.ts';

/**
 * Columns of figures are aligned at the point: every number is padded, invisibly, to the longest fraction of its column.
 * With one column the other system of units stands beside; with several it stands in a second line under each figure.
 */
export function writeTable(table: Table): string {
  const several = table.columns.length > 0;
  const layout = layoutOf(table, several);
  const rows = table.rows.map((row) => (several ? severalFigures(row, layout) : oneFigure(row, layout)));
  return `<div class="wide"><table>
${table.caption === '' ? '' : `<caption>${escapeHtml(table.caption)}</caption>\n`}<thead><tr>${head(table, layout)}</tr></thead>
<tbody>
${rows.join('\n')}
</tbody>
</table></div>`;
}

/** What the columns must hold, looked up once for the whole table. */
interface Layout {
  readonly fractions: readonly number[];
  readonly plusMinus: readonly boolean[];
  readonly otherFraction: number;
  readonly otherPlusMinus: boolean;
  readonly otherBeside: boolean;
  readonly remarks: boolean;
}

function layoutOf(table: Table, several: boolean): Layout {
  const count = several ? table.columns.length : 1;
  const fractions: number[] = [];
  const plusMinus: boolean[] = [];
  for (let column = 0; column < count; column++) {
    const own = table.rows.map((row) => row.figures[column]);
    const all = several ? [...own, ...table.rows.map((row) => row.other?.figures[column])] : own;
    fractions.push(longestFraction(several ? own : all));
    plusMinus.push(all.some((figure) => figure?.plusMinus !== undefined));
  }
  const others = several ? [] : table.rows.map((row) => row.other?.figures[0]);
  return {
    fractions,
    plusMinus,
    otherFraction: longestFraction(others),
    otherPlusMinus: others.some((figure) => figure?.plusMinus !== undefined),
    otherBeside: others.some((figure) => figure !== undefined),
    remarks: table.rows.some((row) => row.remarks.length > 0 || row.strips.length > 0),
  };
}

function head(table: Table, layout: Layout): string {
  const column = (name: string, index: number): string =>
    `<th scope="col" class="num"${layout.plusMinus[index] === true ? ' colspan="2"' : ''}>${escapeHtml(name)}</th>`;
  const figures = table.columns.length > 0 ? table.columns.map(column) : [column('value', 0)];
  const other = layout.otherBeside
    ? `<th scope="col" class="num"${layout.otherPlusMinus ? ' colspan="2"' : ''}>also</th><th scope="col" class="unit">unit</th>`
    : '';
  const remarks = layout.remarks ? `<th scope="col">${escapeHtml(table.remarksAre ?? 'remarks')}</th>` : '';
  return `<th scope="col">${escapeHtml(table.rowsAre)}</th>${figures.join('')}<th scope="col" class="unit">unit</th>${other}${remarks}`;
}

function oneFigure(row: TableRow, layout: Layout): string {
  const own = cells(row.figures[0], layout.fractions[0] ?? 0, layout.plusMinus[0] ?? false, '');
  const beside = !layout.otherBeside
    ? ''
    : row.other === undefined
      ? `<td${layout.otherPlusMinus ? ' colspan="3"' : ' colspan="2"'}></td>`
      : `${cells(row.other.figures[0], layout.otherFraction, layout.otherPlusMinus, ' other')}<td class="unit other-unit">${escapeHtml(row.other.unit)}</td>`;
  return `<tr>${rowHead(row, 1)}${own}<td class="unit">${escapeHtml(row.unit)}</td>${beside}${remark(row, layout, 1)}</tr>`;
}

function severalFigures(row: TableRow, layout: Layout): string {
  const lines = row.other === undefined ? 1 : 2;
  const figures = (of: readonly Figure[]): string =>
    layout.fractions
      .map((fraction, column) => cells(of[column], fraction, layout.plusMinus[column] ?? false, ' aside'))
      .join('');
  const first = `<tr>${rowHead(row, lines)}${figures(row.figures)}<td class="unit">${escapeHtml(row.unit)}</td>${remark(row, layout, lines)}</tr>`;
  if (row.other === undefined) return first;
  return `${first}\n<tr class="other">${figures(row.other.figures)}<td class="unit">${escapeHtml(row.other.unit)}</td></tr>`;
}

function rowHead(row: TableRow, lines: number): string {
  const key = row.key === undefined ? '' : ` <span class="key">${escapeHtml(row.key)}</span>`;
  const span = lines > 1 ? ` rowspan="${lines}"` : '';
  return `<th scope="row"${span}>${escapeHtml(row.name)}${key}</th>`;
}

function cells(figure: Figure | undefined, fraction: number, plusMinus: boolean, also: string): string {
  const span = plusMinus ? ' colspan="2"' : '';
  if (figure?.number === undefined) {
    return `<td class="words${also}"${span}>${escapeHtml(figure?.words ?? '')}</td>`;
  }
  const number = `<td class="num${also}${plusMinus ? ' tight' : ''}">${aligned(figure.number, fraction)}</td>`;
  if (!plusMinus) return number;
  const half = figure.plusMinus === undefined ? '' : `± ${escapeHtml(figure.plusMinus)}`;
  return `${number}<td class="pm${also}">${half}</td>`;
}

function aligned(number: string, fraction: number): string {
  const shown = escapeHtml(number.replace(/^-/, '−'));
  const missing = fraction - fractionOf(number);
  if (missing <= 0 || number.includes('..')) return shown;
  const pad = number.includes('.') ? '0'.repeat(missing) : `.${'0'.repeat(missing - 1)}`;
  return `${shown}<span class="pad" aria-hidden="true">${pad}</span>`;
}

/** The point and what is behind it: 0 for "13", 2 for "13.1". In a range nothing is aligned. */
function fractionOf(number: string): number {
  const point = number.indexOf('.');
  return point < 0 || number.includes('..') ? 0 : number.length - point;
}

function longestFraction(figures: readonly (Figure | undefined)[]): number {
  return Math.max(0, ...figures.map((figure) => fractionOf(figure?.number ?? '')));
}

function remark(row: TableRow, layout: Layout, lines: number): string {
  if (!layout.remarks) return '';
  const span = lines > 1 ? ` rowspan="${lines}"` : '';
  const words = row.remarks.map((runs) => `<p>${writeRuns(runs)}</p>`).join('');
  return `<td class="remark"${span}>${words}${row.strips.map(writeStrip).join('')}</td>`;
}

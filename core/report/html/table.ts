import type { Table, TableRow } from '../blocks.ts';
import { escapeHtml } from './escape.ts';
import { type FigureColumn, figureCells, figureColumn, stacked } from './figureCells.ts';
import { writeRuns } from './runs.ts';
import { writeStrip } from './strip.ts';

/**
 * A handbook's table. With one column of figures the other system of units and the remarks stand beside;
 * with several the other system stands in a second line under each figure, and the remarks below the row.
 */
export function writeTable(table: Table): string {
  const { head, rows } = table.columns.length > 0 ? severalColumns(table) : oneColumn(table);
  const caption = table.caption === '' ? '' : `<caption>${escapeHtml(table.caption)}</caption>\n`;
  return `<div class="wide"><table>
${caption}<thead><tr><th scope="col">${escapeHtml(table.rowsAre)}</th>${head}</tr></thead>
<tbody>
${rows.join('\n')}
</tbody>
</table></div>`;
}

interface Columns {
  readonly head: string;
  readonly rows: readonly string[];
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
      ...(hasRemarks ? [`<th scope="col">${escapeHtml(remarksAre)}</th>`] : []),
    ].join(''),
    rows: rows.map((row) => {
      const beside = hasOther
        ? `${figureCells(row.other?.figures[0], other, ' other')}<td class="unit other">${escapeHtml(row.other?.unit ?? '')}</td>`
        : '';
      const remarks = hasRemarks ? `<td class="remark">${writeRemarks(row)}</td>` : '';
      return `<tr>${rowHead(row)}${figureCells(row.figures[0], own, '')}<td class="unit">${escapeHtml(row.unit)}</td>${beside}${remarks}</tr>`;
    }),
  };
}

function severalColumns({ rows, columns }: Table): Columns {
  const layout = columns.map((_, at) =>
    figureColumn(rows.flatMap((row) => [row.figures[at], row.other?.figures[at]])),
  );
  const width = 2 + layout.reduce((sum, { plusMinus }) => sum + (plusMinus ? 2 : 1), 0);
  return {
    head: layout.map((column, at) => figureHead(columns[at] ?? '', column)).join('') + unitHead,
    rows: rows.map((row) => {
      const { figures, other, unit } = row;
      const cells = layout.map((column, at) =>
        figureCells(
          figures[at],
          column,
          ' aside',
          other === undefined ? undefined : { figure: other.figures[at], unit: other.unit },
        ),
      );
      const units = stacked([unit, ...(other === undefined ? [] : [other.unit])].map(escapeHtml));
      const below = isRemarkable(row)
        ? `\n<tr class="below"><td class="remark" colspan="${width}">${writeRemarks(row)}</td></tr>`
        : '';
      return `<tr>${rowHead(row)}${cells.join('')}<td class="unit">${units}</td></tr>${below}`;
    }),
  };
}

const unitHead = '<th scope="col" class="unit">unit</th>';

function figureHead(name: string, { plusMinus }: FigureColumn): string {
  return `<th scope="col" class="num"${plusMinus ? ' colspan="2"' : ''}>${escapeHtml(name)}</th>`;
}

function rowHead({ name, key }: TableRow): string {
  const own = key === undefined ? '' : ` <span class="key">${escapeHtml(key)}</span>`;
  return `<th scope="row">${escapeHtml(name)}${own}</th>`;
}

const isRemarkable = (row: TableRow): boolean => row.remarks.length > 0 || row.strips.length > 0;

/** Each drawing stands with the words about it. */
function writeRemarks({ remarks, strips }: TableRow): string {
  const said = remarks.map((runs) => `<p>${writeRuns(runs)}</p>`);
  const drawn = strips.map((strip) => `<p>${escapeHtml(strip.says)} ${writeStrip(strip)}</p>`);
  return [...said, ...drawn].join('');
}

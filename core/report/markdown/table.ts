import type { Figure, Table, TableRow } from '../blocks.ts';
import { codeSpan, escapeMarkdown, runsAsMarkdown } from './escape.ts';

/** A table in Markdown: figures to the right, units in a column of their own, the other system beside or below. */
export function tableAsMarkdown(table: Table): string {
  const several = table.columns.length > 0;
  const beside = !several && table.rows.some((row) => row.other !== undefined);
  const remarks = table.rows.some((row) => row.remarks.length > 0 || row.strips.length > 0);
  const head = [
    table.rowsAre,
    ...(several ? table.columns : ['value']),
    'unit',
    ...(beside ? ['also', 'unit'] : []),
    ...(remarks ? [table.remarksAre ?? 'remarks'] : []),
  ];
  const rules = head.map((name, at) => {
    const isFigure = (at > 0 && at <= Math.max(1, table.columns.length)) || name === 'also';
    return isFigure ? '---:' : '---';
  });
  const rows = table.rows.flatMap((row) => lines(row, several, beside, remarks));
  const caption = table.caption === '' ? '' : `*${escapeMarkdown(table.caption)}*\n\n`;
  return (
    caption + [head.map(escapeMarkdown), rules, ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n')
  );
}

function lines(row: TableRow, several: boolean, beside: boolean, remarks: boolean): string[][] {
  const name = `${escapeMarkdown(row.name)}${row.key === undefined ? '' : ` ${codeSpan(row.key)}`}`;
  const remark = remarks
    ? [
        [...row.remarks.map(runsAsMarkdown), ...row.strips.map((strip) => escapeMarkdown(strip.says))].join(
          '; ',
        ),
      ]
    : [];
  const other = row.other;
  const own = [
    name,
    ...row.figures.map(figure),
    escapeMarkdown(row.unit),
    ...(beside ? [figure(other?.figures[0]), escapeMarkdown(other?.unit ?? '')] : []),
    ...remark,
  ];
  if (!several || other === undefined) return [own];
  return [own, ['', ...other.figures.map(figure), escapeMarkdown(other.unit), ...(remarks ? [''] : [])]];
}

function figure(of: Figure | undefined): string {
  if (of === undefined) return '';
  if (of.number === undefined) return escapeMarkdown(of.words ?? '');
  return escapeMarkdown(of.plusMinus === undefined ? of.number : `${of.number} ± ${of.plusMinus}`).replace(
    /^\\/,
    '',
  );
}

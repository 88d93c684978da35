import type { ChartBlock } from '../blocks.ts';
import { element, type Markup } from './markup.ts';
import { tableMarkup } from './table.ts';

/** A chart with its name and its description, and beneath it the same in words and figures for who wants to read them. */
export function chartMarkup(block: ChartBlock): Markup {
  const { drawing, title, summary } = block;
  if (drawing === undefined) {
    return element('figure', { class: 'chart' }, element('figcaption', {}, title), ...inWords(block));
  }
  const drawn = element(
    'svg',
    { ...drawing.attributes, role: 'img', 'aria-label': title },
    element('desc', {}, summary.join(' ')),
    ...drawing.children,
  );
  return element('figure', { class: 'chart' }, element('div', { class: 'wide' }, drawn), chartWords(block));
}

/** Behind a line that opens it: sentences and a table. */
export function chartWords(block: Pick<ChartBlock, 'summary' | 'table'>): Markup {
  const told = element('summary', {}, 'The chart in words and figures');
  return element('details', {}, told, ...inWords(block));
}

function inWords({ summary, table }: Pick<ChartBlock, 'summary' | 'table'>): readonly Markup[] {
  return [...summary.map((sentence) => element('p', {}, sentence)), tableMarkup(table)];
}

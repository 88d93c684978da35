import { declarations } from '../../core/chart/palette.ts';
import type { ChartSpec } from '../../core/chart/spec.ts';
import { writeMarkup } from '../../core/report/html/markup.ts';
import { element } from '../../core/report/markup/markup.ts';
import { drawChart } from './drawChart.ts';

/**
 * A chart as an image of its own: nobody lends it colours there, so it brings its paper with it, light or dark as the
 * reader prefers. Either way it can be read on any page.
 */
export function chartImage(chart: ChartSpec): string {
  const { attributes, children } = drawChart(chart);
  const { width, height } = chart;
  return writeMarkup(
    element(
      'svg',
      { ...attributes, viewBox: `0 0 ${width} ${height}` },
      element('style', {}, style),
      element('rect', { class: 'paper', width: String(width), height: String(height), rx: '3' }),
      ...children,
    ),
  );
}

const style = `svg { font-family: system-ui, sans-serif; ${declarations('light')} } .paper { fill: ${paper('light')}; } @media (prefers-color-scheme: dark) { svg { ${declarations('dark')} } .paper { fill: ${paper('dark')}; } }`;

function paper(theme: 'light' | 'dark'): string {
  return theme === 'light' ? '#fdfcf8' : '#1b1a17';
}

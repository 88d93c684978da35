import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { chartOf } from '../../core/chart/chartOf.ts';
import { toVegaLite } from '../../core/chart/draw.ts';
import { declarations, type ThemeName, themeNames } from '../../core/chart/palette.ts';
import { writeMarkup } from '../../core/report/html/markup.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { drawChart } from '../../extension/charts/drawChart.ts';
import { openBrowser } from '../editor/harness/openBrowser.ts';
import { exampleCharts } from './exampleCharts.ts';

/** `npm run pictures:charts -- FOLDER`: draws an example of every kind in every theme, to be looked at. */
const target = process.argv[2] ?? join(import.meta.dirname, '..', '..', 'out', 'charts');
mkdirSync(target, { recursive: true });
const paper: Readonly<Record<ThemeName, string>> = {
  light: '#ffffff',
  dark: '#1f1f1f',
  'high contrast': '#000000',
  'high contrast light': '#ffffff',
};
const browser = await openBrowser();
try {
  for (const theme of themeNames) {
    const page = await browser.newPage({ viewport: { width: 1420, height: 400 }, deviceScaleFactor: 1 });
    const drawings = exampleCharts().map(({ text, cell }) => {
      const asked = chartOf(checkCase(text), cell);
      if (asked === undefined || 'unclear' in asked) throw new Error('There is no chart.');
      const { spec } = toVegaLite(asked.chart, asked.data);
      if (spec === undefined) throw new Error(`${asked.chart.kind} is not drawn.`);
      return writeMarkup(drawChart(spec));
    });
    await page.setContent(`<!doctype html><meta charset="utf-8"><style>
body { margin: 16px; background: ${paper[theme]}; font-family: system-ui, sans-serif; ${declarations(theme)} }
body { columns: 2; column-gap: 20px; }
svg { display: block; margin-bottom: 28px; break-inside: avoid; }
</style>${drawings.join('\n')}`);
    await page.screenshot({ path: join(target, `${theme.replaceAll(' ', '-')}.png`), fullPage: true });
    await page.close();
  }
} finally {
  await browser.close();
}

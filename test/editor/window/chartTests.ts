import type { WindowTest } from './runInWindow.ts';

const text = `diag: 1
case: Sensor
---
capture: Front sensor
as: o2
state: warm idle
chart: switching
file: o2.csv
channels:
  front: {column: front, signal: o2_b1s1, unit: V}
`;

/** A switching sensor (synthetic): 30 s, a sample every 10 ms. */
const rows = Array.from(
  { length: 3000 },
  (_, i) => `${(i * 0.01).toFixed(2)},${(0.45 + 0.4 * Math.sin(i * 0.4)).toFixed(3)}`,
);

/** What only a real editor shows of charts: their own file is loaded, and questions go to the server and back. */
export const chartTests: readonly WindowTest[] = [
  {
    name: 'a chart is drawn under its cell, and a closer look brings the samples that were left out',
    files: { 'case.diag': text, 'o2.csv': ['time (s),front', ...rows, ''].join('\n') },
    run: async (window) => {
      await window.openNotebook('case.diag');
      const output = window.page.frameLocator('iframe.webview.ready').frameLocator('#active-frame');
      const plot = output.locator('.plot');
      const line = plot.locator('svg path[stroke*=ink]').first();
      await window.sees('the drawing', line);
      await window.comesTo('the stretch', () => plot.getAttribute('aria-valuemax'), '29.99');
      await plot.focus();
      for (let k = 0; k < 4; k++) await plot.press('+');
      await window.comesTo('the stretch', () => plot.getAttribute('aria-valuemax'), '1.874375');
      // All samples up to there and one beyond: every hundredth of a second.
      const points = async () => (await line.getAttribute('d'))?.split('L').length;
      await window.comesTo('the points of the line', points, 189);
      await plot.press('Home');
      await window.comesTo('the stretch', () => plot.getAttribute('aria-valuemax'), '29.99');
    },
  },
];

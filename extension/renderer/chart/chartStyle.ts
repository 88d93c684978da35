import { declarations } from '../../../core/chart/palette.ts';

/** Charts take the theme's own ink; the tones beside it are those that are told apart in each sort of theme. */
export const chartStyle = `
:host { ${declarations('light')} --chart-ink: var(--ink); --chart-soft: var(--soft); }
:host-context(.vscode-dark) { ${declarations('dark')} --chart-ink: var(--ink); --chart-soft: var(--soft); }
:host-context(.vscode-high-contrast) { ${declarations('high contrast')} }
:host-context(.vscode-high-contrast-light) { ${declarations('high contrast light')} }
figure.chart { margin: 0.9em 0; }
figure.chart > figcaption { font-weight: 600; }
.look { display: flex; flex-wrap: wrap; gap: 0.4em 1.4em; align-items: flex-start; }
.plot { position: relative; flex: 0 1 auto; max-width: 100%; touch-action: pan-y; }
.plot svg { display: block; max-width: 100%; height: auto; font-family: var(--text); }
.plot .cursor { stroke: var(--chart-ink); stroke-width: 1; stroke-dasharray: 1 2; }
.plot .chosen { fill: var(--chart-ink); fill-opacity: 0.12; }
.beside { flex: 0 1 auto; padding-top: 1.4em; }
.beside table { border: none; line-height: 1.35; }
.beside tbody th { min-width: 0; max-width: 16em; padding: 0.08em 0.85em 0.08em 0; color: var(--soft); }
.beside tbody td { padding: 0.08em 0.3em 0.08em 0; white-space: nowrap; font-variant-numeric: lining-nums tabular-nums; }
.beside tbody td:nth-child(2) { min-width: 4.5em; text-align: right; }
.beside p { margin: 0; max-width: 24em; min-height: 1.5em; }
.closer { display: flex; gap: 0.4em; margin: 0.5em 0 0; }
.closer button { font: inherit; color: var(--ink); background: none; border: 1px solid var(--hair); border-radius: 2px; padding: 0 0.6em; min-height: 24px; cursor: pointer; }
.closer button:disabled { color: var(--soft); border-style: dotted; cursor: default; }
figure.chart details { margin: 0.2em 0 0; }
figure.chart summary { color: var(--soft); }
@media (forced-colors: active) {
  .plot svg { forced-color-adjust: none; --chart-ink: CanvasText; --chart-second: LinkText; --chart-third: CanvasText; --chart-soft: CanvasText; --chart-hair: GrayText; --chart-shade: transparent; }
}
`;

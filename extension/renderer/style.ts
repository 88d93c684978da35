import { tableStyle } from '../../core/report/markup/tableStyle.ts';

/**
 * A well-set page in the editor's own colours and fonts: only its theme's variables, which follow the reader's choice
 * by themselves. All text stands on one edge; signs and rules hang in the margin before it.
 * Nothing is said by colour alone.
 */
export const style = `
:host {
  --ink: var(--vscode-editor-foreground, var(--vscode-foreground));
  --soft: color-mix(in srgb, var(--vscode-descriptionForeground, var(--ink)) 80%, var(--ink));
  --hair: color-mix(in srgb, var(--ink) 40%, transparent);
  --alarm: color-mix(in srgb, var(--vscode-errorForeground, var(--ink)) 80%, var(--ink));
  --warning: var(--vscode-editorWarning-foreground, var(--ink));
  --text: var(--vscode-font-family, system-ui, sans-serif);
  --code: var(--vscode-editor-font-family, ui-monospace, monospace);
  --edge: 1.97em;
  --gap: 0.85em;
  --name: 13em;
  --units: nowrap;
  display: block;
}
* { box-sizing: border-box; }
.page {
  color: var(--ink);
  font: var(--vscode-editor-font-size, 14px) / 1.5 var(--text);
  font-variant-numeric: lining-nums;
  padding: 0.3em 0.5em 0.6em var(--edge);
  overflow-wrap: break-word;
}
.page > :first-child { margin-top: 0; }
.page > :last-child { margin-bottom: 0; }
p { margin: 0.5em 0; max-width: 44em; }
code, pre { font-family: var(--code); font-size: 0.93em; font-variant-ligatures: none; }
strong { font-weight: 600; }
.lead { font-style: italic; color: var(--soft); margin-right: 0.35em; }
.soft { color: var(--soft); }
:focus-visible { outline: 1px solid var(--vscode-focusBorder, currentColor); outline-offset: 2px; }

.wide { margin: 0.5em 0 0.9em; max-width: 100%; width: fit-content; }
${tableStyle}
.verdict, .suspect { position: relative; max-width: 50em; margin: 0.75em 0; }
.verdict p, .suspect p { margin: 0; max-width: none; }
.sign { position: absolute; left: calc(-1 * var(--edge)); width: 1.3em; text-align: center; }
.verdict > p:first-of-type > code { color: var(--soft); }
.verdict .word { font-weight: 600; }
.verdict.fails .word, .verdict.fails .sign { color: var(--alarm); }
.verdict .because { color: var(--soft); }

.caution, .finding { position: relative; max-width: 50em; margin: 0.8em 0; }
.caution::before, .finding::before { content: ""; position: absolute; left: calc(0.45em - var(--edge)); top: 0.25em; bottom: 0.25em; border-left: 3px solid var(--hair); }
.caution::before { border-left: 4px double var(--warning); }
.finding.error::before { border-left-color: var(--alarm); }
.finding.warning::before { border-left-color: var(--warning); }
.caution p, .finding p { margin: 0.1em 0; max-width: none; }
.finding.error > p:first-child > strong { color: var(--alarm); }
.finding pre { margin: 0.35em 0; padding: 0.3em 0.6em; overflow-x: auto; background: var(--vscode-textCodeBlock-background, transparent); }
.finding .ln { color: var(--soft); user-select: none; }
.finding mark { background: none; color: inherit; font-weight: 600; text-decoration: underline wavy var(--alarm) 1px; text-underline-offset: 0.25em; }
.finding.warning mark { text-decoration-color: var(--warning); }
.finding.info { margin: 0.4em 0; }
.finding.info::before { border-left: none; }
.finding.info .soft { white-space: nowrap; }
.finding.info strong { font-weight: 400; font-style: italic; color: var(--soft); }

:host-context(.vscode-high-contrast) .finding pre,
:host-context(.vscode-high-contrast-light) .finding pre { background: none; border: 1px solid var(--vscode-contrastBorder, currentColor); }
:host-context(.vscode-high-contrast), :host-context(.vscode-high-contrast-light) { --soft: var(--ink); --hair: var(--ink); }
@media (forced-colors: active) {
  .verdict.fails .word, .verdict.fails .sign, .finding.error > p:first-child > strong { color: CanvasText; }
  svg.strip { color: CanvasText; forced-color-adjust: none; }
}
@media (max-width: 56em) {
  :host { --units: normal; }
}
@media (max-width: 32em) {
  .page { padding-left: 1.4em; --edge: 1.4em; --gap: 0.45em; --name: 6.5em; }
}
`;

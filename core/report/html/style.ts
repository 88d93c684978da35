import { declarations } from '../../chart/palette.ts';
import { tableStyle } from '../markup/tableStyle.ts';

/**
 * The look of a well-set page: one measure of text, a margin for what a cell is, tables ruled above and below.
 * Colours keep 4.5 : 1 or more on their ground in both schemes, and nothing is said by colour alone.
 */
export const style = `
:root {
  ${declarations('light')}
  color-scheme: light dark;
  --paper: #fdfcf8; --ink: #1f1e1a; --soft: #5d5a50; --rule: #b9b4a4; --tint: #f1eee3; --link: #1d4f7c; --alarm: #8c1d18;
  --hair: var(--ink); --gap: 0.53em; --name: 7.4em; --units: normal;
  --serif: Charter, "Bitstream Charter", "Sitka Text", Cambria, "Noto Serif", "Liberation Serif", Georgia, serif;
  --sans: "Source Sans 3", "Segoe UI", "Noto Sans", "Liberation Sans", Arial, sans-serif;
  --code: ui-monospace, "Cascadia Mono", "Segoe UI Mono", "Liberation Mono", Menlo, Consolas, monospace;
}
@media (prefers-color-scheme: dark) {
  :root { ${declarations('dark')} --paper: #1b1a17; --ink: #e9e5d8; --soft: #aaa595; --rule: #5a5649; --tint: #26241f; --link: #9cc4ea; --alarm: #f2a69b; }
}
* { box-sizing: border-box; }
html { background: var(--paper); color: var(--ink); font: 17px/1.5 var(--serif); font-variant-numeric: lining-nums; }
body { margin: 0 auto; max-width: 62rem; padding: 2.5rem 1.5rem 5rem; overflow-wrap: break-word; }
a { color: var(--link); text-underline-offset: 0.15em; }
a:focus-visible, [tabindex]:focus-visible { outline: 2px solid var(--link); outline-offset: 2px; }
h1, h2, h3, h4, h5, h6 { line-height: 1.2; font-weight: 600; text-wrap: balance; break-after: avoid; margin: 0; }
h1 { font-size: 1.9rem; }
h2 { font-size: 1.65rem; }
h3 { font-size: 1.16rem; }
section.cell > h2, section.cell > h3 { font-size: 1.2rem; }
section.cell > h4 { font-size: 1.12rem; }
section.answers > h2, section.answers > h3 { font-size: 1.35rem; }
h4, h5, h6 { font-size: 1rem; font-style: italic; }
/* Headings of a note stand below its cell's, whatever the author wrote. */
.body > :is(h1, h2, h3, h4, h5, h6) { font-size: 1.06rem; margin-top: 0.9rem; }
.no-heading .body > :is(h1, h2, h3):first-child { margin-top: 0; }
p, ul, ol, dl, table, pre, figure, blockquote { margin: 0.55rem 0; }
ul, ol { padding-left: 1.4rem; }
li { margin: 0.15rem 0; }
code, pre { font-family: var(--code); font-size: 0.82em; font-variant-ligatures: none; }
code { overflow-wrap: anywhere; }
pre { overflow-x: auto; }
blockquote { margin-left: 0; padding-left: 1rem; border-left: 1px solid var(--rule); color: var(--soft); }
.soft { color: var(--soft); }
.lead { font-variant-caps: all-small-caps; letter-spacing: 0.05em; margin-right: 0.3em; }
.skip { position: absolute; left: -100vw; }
.skip:focus { left: 1rem; top: 0.5rem; background: var(--paper); padding: 0.3rem 0.6rem; }

header.front { padding-bottom: 1.4rem; }
header.front p { margin: 0.4rem 0 0; color: var(--soft); }
nav.contents { border-top: 1px solid var(--ink); padding-top: 0.8rem; }
nav.contents h2 { font-size: 1.05rem; font-style: italic; font-weight: 400; }
nav.contents ol { list-style: none; padding: 0; margin: 0.5rem 0 0; }
nav.contents li { display: grid; grid-template-columns: 2.2rem 1fr; margin: 0.7rem 0; break-inside: avoid; }
nav.contents .no { font-variant-numeric: lining-nums tabular-nums; color: var(--soft); }
nav.contents p { margin: 0.1rem 0 0; font-size: 0.88rem; color: var(--soft); }

article.case { margin-top: 4.5rem; border-top: 3px double var(--ink); padding-top: 1.4rem; }
main > article.case:only-child { margin-top: 0; border-top: 0; padding-top: 0; }
.case > h1, .case > h2, .case > .summary, .answers > h2, .answers > h3 { margin-left: 11.5rem; }
.summary { color: var(--soft); margin-top: 0.3rem; margin-bottom: 0; }
.answers { margin-top: 3rem; }
section.cell { display: grid; grid-template-columns: 9.5rem minmax(0, 1fr); column-gap: 2rem; margin-top: 2.1rem; }
section.cell > h2, section.cell > h3, section.cell > h4 { grid-column: 2; }
section.cell > .margin { grid-column: 1; grid-row: 1 / span 2; text-align: right; font-size: 0.82rem; line-height: 1.35; color: var(--soft); padding-top: 0.22rem; }
.margin p { margin: 0 0 0.12rem; }
.margin .what { font-style: italic; }
.margin .audience { color: var(--ink); font-variant-caps: all-small-caps; letter-spacing: 0.05em; }
section.cell > .body { grid-column: 2; min-width: 0; }
.body > p, .body > ul, .body > ol, .body > blockquote { max-width: 40rem; }
.no-heading .body > :first-child { margin-top: 0; }

dl.facts { display: grid; grid-template-columns: max-content minmax(0, 1fr); column-gap: 1.4rem; row-gap: 0.18rem; max-width: 44rem; }
dl.facts dt { color: var(--soft); }
dl.facts dd { margin: 0; min-width: 0; overflow-wrap: anywhere; }

table { font-size: 0.94rem; }
${tableStyle}
.verdict { max-width: 44rem; padding-left: 1.7rem; position: relative; break-inside: avoid; margin: 0.6rem 0; }
.verdict .sign { position: absolute; left: 0; width: 1.2rem; text-align: center; font-family: "DejaVu Sans", "Segoe UI Symbol", "Apple Symbols", var(--serif); }
.verdict p { margin: 0; }
.verdict .because { font-size: 0.88rem; color: var(--soft); }
.verdict .word { font-weight: 600; font-variant-numeric: lining-nums; }
.verdict.fails .word, .verdict.fails .sign { color: var(--alarm); }
.suspect { max-width: 44rem; padding-left: 1.7rem; position: relative; margin: 0.9rem 0; break-inside: avoid; }
.suspect .sign { position: absolute; left: 0; width: 1.2rem; text-align: center; font-family: "DejaVu Sans", "Segoe UI Symbol", "Apple Symbols", var(--serif); }
.suspect p { margin: 0; }

.caution { border: 1.5px solid var(--alarm); border-left-width: 6px; padding: 0.55rem 0.9rem; margin: 0.7rem 0; max-width: 44rem; font-size: 0.92rem; line-height: 1.4; break-inside: avoid; }
.caution p { margin: 0; }
.caution strong { color: var(--alarm); }

.finding { border-left: 3px solid var(--rule); padding-left: 0.9rem; margin: 0.8rem 0; max-width: 46rem; font-size: 0.92rem; break-inside: avoid; }
.finding.error { border-left-color: var(--alarm); }
.finding.info { border-left: none; padding-left: 0; margin: 0.4rem 0; }
.finding.info .soft { white-space: nowrap; }
.finding.info strong { font-weight: 400; font-style: italic; color: var(--soft); }
.finding p { margin: 0.1rem 0; }
.finding pre { background: var(--tint); padding: 0.35rem 0.6rem; margin: 0.3rem 0; overflow-x: auto; white-space: pre; }
.finding .ln { color: var(--soft); user-select: none; }
.finding mark { background: none; color: inherit; font-weight: 700; text-decoration: underline wavy 1px; text-underline-offset: 0.25em; }

figure { break-inside: avoid; }
figure.chart { margin: 1.1rem 0; font-family: var(--sans); }
figure.chart .wide { margin: 0; }
svg.chart { display: block; max-width: 100%; height: auto; }
figure.chart details { font-size: 0.88rem; }
figure.chart summary { color: var(--soft); cursor: default; }
figure.chart summary:focus-visible { outline: 2px solid var(--link); outline-offset: 2px; }
figure.chart p { max-width: 44rem; }
figure img { display: block; max-width: 100%; max-height: 28rem; height: auto; }
figcaption { font-size: 0.88rem; color: var(--soft); margin-top: 0.25rem; }
figure .missing { border: 1px dashed var(--rule); padding: 0.8rem; max-width: 44rem; }
footer { margin-top: 4rem; border-top: 1px solid var(--rule); padding-top: 0.6rem; font-size: 0.84rem; color: var(--soft); }

@media (max-width: 66rem) {
  section.cell { grid-template-columns: 7.6rem minmax(0, 1fr); column-gap: 1.2rem; }
  .case > h1, .case > h2, .case > .summary, .answers > h2, .answers > h3 { margin-left: 8.8rem; }
}
@media (max-width: 46rem) {
  body { padding: 1.4rem 1rem 3rem; }
  section.cell { display: block; }
  .case > h1, .case > h2, .case > .summary, .answers > h2, .answers > h3 { margin-left: 0; }
  section.cell > .margin { text-align: left; padding: 0 0 0.15rem; }
  .margin p { display: inline; }
  .margin p + p::before { content: " · "; }
  dl.facts { display: block; }
  dl.facts dt { margin-top: 0.35rem; }
}
@media (forced-colors: active) {
  .caution, .finding { border-color: CanvasText; }
  .verdict.fails .word, .verdict.fails .sign, .caution strong { color: CanvasText; }
  svg.strip { color: CanvasText; forced-color-adjust: none; }
  svg.chart { forced-color-adjust: none; --chart-ink: CanvasText; --chart-second: LinkText; --chart-third: CanvasText; --chart-soft: CanvasText; --chart-hair: GrayText; --chart-shade: transparent; }
}
@page { size: auto; margin: 18mm 16mm 20mm; }
@media print {
  :root { ${declarations('light')} --paper: #fff; --ink: #000; --soft: #444; --rule: #999; --tint: #f4f4f4; --link: #000; --alarm: #000; }
  html { font-size: 10.5pt; }
  body { max-width: none; padding: 0; }
  .skip { display: none; }
  a { text-decoration: none; }
  article.case { margin-top: 0; border-top: 0; padding-top: 0; break-before: page; }
  main > article.case:only-child { break-before: auto; }
  section.cell { display: block; margin-top: 1.3rem; }
  .case > h1, .case > h2, .case > .summary, .answers > h2, .answers > h3 { margin-left: 0; }
  section.cell > .margin { text-align: left; padding: 0; break-after: avoid; }
  .margin p { display: inline; }
  .margin p + p::before { content: " · "; }
  .answers { break-before: page; }
  .wide { overflow: visible; }
  .finding pre { white-space: pre-wrap; }
  p, li { orphans: 3; widows: 3; }
  footer { break-before: avoid; }
}
`;

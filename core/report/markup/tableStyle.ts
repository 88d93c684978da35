/**
 * How a handbook's table is set, in the report as in the editor; what differs there are the variables:
 * `--ink`, `--soft`, `--hair`, `--code` (a font), `--gap` (between columns, on either side), `--name` (the least
 * width of the column of names) and `--units` (whether a unit may go on in the next line: `normal` or `nowrap`).
 *
 * A long name or a long unit goes on in the next line before the table scrolls; numbers never break.
 * What is only heard is placed, so it scrolls with the table only where the table is its ground.
 */
export const tableStyle = `
.wide { overflow-x: auto; position: relative; }
table { border-collapse: collapse; border-top: 1.5px solid var(--ink); border-bottom: 1.5px solid var(--ink); line-height: 1.4; break-inside: avoid; }
caption { text-align: left; font-style: italic; color: var(--soft); padding-bottom: 0.3em; }
th { font-weight: 400; text-align: left; }
thead th { font-style: italic; color: var(--soft); vertical-align: bottom; padding: 0.25em var(--gap); border-bottom: 0.75px solid var(--hair); }
thead th.num { text-align: right; }
tbody th, tbody td { vertical-align: baseline; padding: 0.17em var(--gap); }
tbody tr:first-child > * { padding-top: 0.36em; }
tbody tr:last-child > * { padding-bottom: 0.36em; }
th:first-child, td:first-child { padding-left: 0; }
tbody th { min-width: var(--name); max-width: 24em; overflow-wrap: anywhere; }
td.num, td.pm { white-space: nowrap; font-variant-numeric: lining-nums tabular-nums; }
td.num { text-align: right; }
td.num.tight { padding-right: 0.35em; }
td.pm, td.unit, thead th.unit { padding-left: 0; }
td.num.aside { padding-left: min(0.35em, var(--gap)); }
td.unit { white-space: var(--units); }
:is(.num, .words).aside ~ td.unit { white-space: nowrap; }
td.words { font-style: italic; color: var(--soft); }
td.words.aside { text-align: right; white-space: nowrap; }
td.other, .under { color: var(--soft); }
.under { display: block; }
.under:empty::after { content: "\\a0"; }
td.remark { color: var(--soft); font-size: 0.93em; min-width: 9em; max-width: 34em; }
td.remark code { color: var(--ink); overflow-wrap: anywhere; }
td.remark p { margin: 0; }
tr.below td { padding-top: 0; padding-left: 1.4em; }
tr.below td.remark { max-width: none; }
.key { font-family: var(--code); font-size: 0.86em; color: var(--soft); }
.heard { position: absolute; clip-path: inset(50%); width: 1px; height: 1px; overflow: hidden; white-space: nowrap; }
.pad { visibility: hidden; user-select: none; }
svg.strip { display: inline-block; vertical-align: middle; margin: 0.1em 0; color: var(--ink); }
`;

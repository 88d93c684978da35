import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { fixes } from '../../core/service/fixes.ts';
import { applyEdits } from '../../core/text/edits.ts';
import { caseOf } from './cursor.ts';

const values = `readings: G
as: g
values:
  vacuum: 16 inHg
  map: 13 inHg
  baro: 29 inHg
  ect: 80 °C
  stft_b1: 5 %
---
`;
const expecting = (expression: string): string => `${values}check: A\nexpect:\n  - ${expression}\n`;
const found = (words: string): string => `test: A\nfound: ${words}\n`;
const withValues = (words: string): string => `readings: A\nvalues:\n  ${words}\n`;
const known = (words: string): string => `reference: A\nvalues:\n  ${words}\n`;

/** What is wrong, the offer, the case before and after it. */
const rows: readonly (readonly [code: string, title: string, before: string, after: string])[] = [
  [
    'misspelt-state',
    'Write `warm idle`',
    'readings: A\nstate: warm idel\n',
    'readings: A\nstate: warm idle\n',
  ],
  ['bad-name', 'Write `a_b`', 'readings: A\nas: a b\n', 'readings: A\nas: a_b\n'],
  ['unknown-kind', 'Write `readings`', 'reedings: A\n', 'readings: A\n'],
  ['unknown-signal', 'Write `map`', withValues('mapp: 13 inHg'), withValues('map: 13 inHg')],
  ['unknown-value-word', 'Write `closed`', withValues('loop: close'), withValues('loop: closed')],
  ['unknown-member', 'Write `map`', expecting('g.mapp > 10 inHg'), expecting('g.map > 10 inHg')],
  ['unknown-name', 'Write `g`', expecting('gg.map > 10 inHg'), expecting('g.map > 10 inHg')],
  [
    'unknown-function',
    'Write `total_trim`',
    expecting('totl_trim(1 %, 2 %) > 1 %'),
    expecting('total_trim(1 %, 2 %) > 1 %'),
  ],
  [
    'unknown-parameter',
    'Write `ltft`',
    expecting('total_trim(1 %, lftt = 2 %) > 1 %'),
    expecting('total_trim(1 %, ltft = 2 %) > 1 %'),
  ],
  ['unknown-unit', 'Write inHg', expecting('g.map > 10 inHgg'), expecting('g.map > 10 inHg')],
  ['unknown-unit', 'Write °C', expecting('g.ect > 10 C'), expecting('g.ect > 10 °C')],
  [
    'unknown-qualifier',
    'Write absolute',
    withValues('fuel_pressure: 45 psi abs'),
    withValues('fuel_pressure: 45 psi absolute'),
  ],
  ['missing-unit', 'Write `80 °C`', withValues('ect: 80'), withValues('ect: 80 °C')],
  ['unit-slip', 'Write `kPa`', withValues('map: 101 inHg'), withValues('map: 101 kPa')],
  ['decimal-comma', 'Write 13.1', withValues('map: 13,1 inHg'), withValues('map: 13.1 inHg')],
  [
    'range-in-other-words',
    'Write 17 .. 21 inHg',
    known('vacuum: 17-21 inHg'),
    known('vacuum: 17 .. 21 inHg'),
  ],
  [
    'quantity-expected',
    'Write at most 21 inHg',
    known('vacuum: <= 21 inHg'),
    known('vacuum: at most 21 inHg'),
  ],
  ['percent-beside-number', 'Add %', expecting('g.stft_b1 > 10'), expecting('g.stft_b1 > 10 %')],
  [
    'temperature-point-product',
    'Wrap it as kelvin(…)',
    expecting('g.ect * 2 > 600 K'),
    expecting('kelvin(g.ect) * 2 > 600 K'),
  ],
  [
    'kinds-compared',
    'Wrap it as vacuum(…)',
    expecting('g.vacuum > g.map'),
    expecting('g.vacuum > vacuum(g.map)'),
  ],
  [
    'kinds-compared',
    'Wrap it as absolute(…)',
    expecting('g.vacuum > g.map'),
    expecting('absolute(g.vacuum) > g.map'),
  ],
  ['chained-comparison', 'Write `2 between 1 and 3`', expecting('1 < 2 < 3'), expecting('2 between 1 and 3')],
  ['foreign-mark', 'Write `and`', expecting('1 > 0 && 2 > 1'), expecting('1 > 0 and 2 > 1')],
  [
    'foreign-mark',
    'Write `within 1 inHg of`',
    expecting('g.map == 13 inHg'),
    expecting('g.map within 1 inHg of 13 inHg'),
  ],
  [
    'colon-in-text',
    'Put the text in quotes',
    found('Smoke: at the gasket.'),
    found('"Smoke: at the gasket."'),
  ],
  [
    'mark-starts-text',
    'Put the text in quotes',
    found('[Smoke] at the gasket.'),
    found('"[Smoke] at the gasket."'),
  ],
  ['mark-starts-text', 'Put the text in quotes', found('- at the gasket.'), found('"- at the gasket."')],
  ['text-cut-off', 'Put the text in quotes', found('Bolt #4 was loose.'), found('"Bolt #4 was loose."')],
  ['unclosed-quote', 'Close the quote at the end of the line', found('"Smoke.'), found('"Smoke."')],
  ['anchor', 'Put the text in quotes', found('&a smoke'), found('"&a smoke"')],
  [
    'first-line-deeper',
    'Start the first lines at the same column',
    'test: A\ndid: |\n    One.\n  Two.\n',
    'test: A\ndid: |\n  One.\n  Two.\n',
  ],
  [
    'tab-indentation',
    'Set the lines in with spaces',
    'readings: A\nvalues:\n\tmap: 13 inHg\n',
    withValues('map: 13 inHg'),
  ],
  [
    'comma-splits-number',
    'Write `13.1 inHg` with a point',
    'readings: A\nvalues: {map: 13,1 inHg}\n',
    'readings: A\nvalues: {map: 13.1 inHg}\n',
  ],
  [
    'comma-splits-expression',
    'Put the expression in quotes',
    'check: A\nexpect: [min(1, 2) > 0]\n',
    'check: A\nexpect: ["min(1, 2) > 0"]\n',
  ],
  [
    'unknown-state-column',
    'Write `idle`',
    'readings: A\nstates:\n  idle: warm idle\ntable: |\n  reading  idel  unit\n  rpm  700  rpm\n',
    'readings: A\nstates:\n  idle: warm idle\ntable: |\n  reading  idle  unit\n  rpm  700  rpm\n',
  ],
  ['wrong-shape', 'Write `map:` with a colon', withValues('map 13 inHg'), withValues('map: 13 inHg')],
  [
    'not-an-entry',
    'Write `map:` with a colon',
    withValues('ect: 80 °C\n  map 13 inHg'),
    withValues('ect: 80 °C\n  map: 13 inHg'),
  ],
  [
    'not-an-entry',
    'Write `state:` with a colon',
    'readings: A\nstate warm idle\nvalues:\n  ect: 80 °C\n',
    'readings: A\nstate: warm idle\nvalues:\n  ect: 80 °C\n',
  ],
];

describe('the offer of a finding', () => {
  it.each(rows)('%s: %s', (code, title, before, after) => {
    const study = caseOf(before);
    const header = study.text.length - before.length;
    const all = study.file.cells.flatMap(({ raw }, cell) =>
      fixes(study, cell, { start: 0, end: raw.text.length }).filter(
        (each) => each.title === title && each.diagnostics.some((one) => one.code === code),
      ),
    );
    const [fix] = all;
    const edits = (fix?.edits ?? []).flatMap(({ cell, edits: inCell }) => {
      const start = study.file.cells[cell]?.raw.start ?? 0;
      return inCell.map((each) => ({
        ...each,
        span: { start: each.span.start + start, end: each.span.end + start },
      }));
    });
    const result = applyEdits(study.text, edits);
    expect(result.slice(header)).toBe(after);
    const count = (text: string): number =>
      checkCase(text).findings.filter(({ diagnostic }) => diagnostic.code === code).length;
    expect(count(result)).toBe(count(study.text) - 1);
  });
});

import { describe, expect, it } from 'vitest';
import { allCodes } from '../../core/diagnostics/pages.ts';
import { catalogue } from '../../core/diagnostics/rows.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { fixes } from '../../core/service/fixes.ts';
import { applyEdits } from '../../core/text/edits.ts';
import { samples } from '../support/samples.ts';
import { caseOf } from './cursor.ts';
import { expecting, found, known, values, withValues } from './shortCells.ts';

/** What is wrong, the offer, the case before and after it. */
const rows: readonly (readonly [code: string, title: string, before: string, after: string])[] = [
  [
    'misspelt-state',
    'Write `warm idle`',
    'readings: A\nstate: warm idel\n',
    'readings: A\nstate: warm idle\n',
  ],
  [
    'curve-point-uncertain',
    'Write `2 g/s`',
    known('maf_curve: [[0.4 V, 2 ± 0.1 g/s], [1.1 V, 9 g/s]]'),
    known('maf_curve: [[0.4 V, 2 g/s], [1.1 V, 9 g/s]]'),
  ],
  [
    'dashes-missing',
    'Start each with a dash',
    'check: A\nexpect: 2 > 1\n  3 > 1\n',
    'check: A\nexpect:\n  - 2 > 1\n  - 3 > 1\n',
  ],
  [
    'separator-slip',
    'Write `---`',
    'test: A\nfound: B\n----\nnote: C\n',
    'test: A\nfound: B\n---\nnote: C\n',
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
  [
    'above-barometer',
    'Write `kPa`',
    'readings: A\nstate: warm idle\nvalues:\n  map: 35 inHg\n',
    'readings: A\nstate: warm idle\nvalues:\n  map: 35 kPa\n',
  ],
  ['wrong-kind', 'Write `-12 °BTDC`', withValues('spark: 12 °ATDC'), withValues('spark: -12 °BTDC')],
  ['crank-marks-differ', 'Write -5 °BTDC', expecting('g.spark > 5 °ATDC'), expecting('g.spark > -5 °BTDC')],
  [
    'cylinder-in-another-unit',
    'Write 168 psi',
    withValues('compression: {1: 172 psi, 2: 175 psi, 3: 170 psi, 4: 168 kPa}'),
    withValues('compression: {1: 172 psi, 2: 175 psi, 3: 170 psi, 4: 168 psi}'),
  ],
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
      const start = study.file.stream.starts[cell] ?? 0;
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

/** Whole files: what is wrong, the offer, the file before and after it. */
const files: readonly (readonly [code: string, title: string, before: string, after: string])[] = [
  [
    'no-header',
    'Put a header before it',
    'readings: Idle\nvalues:\n  map: 13.1 inHg',
    'diag: 1\ncase: \n---\nreadings: Idle\nvalues:\n  map: 13.1 inHg',
  ],
  ['content-on-separator', 'Move it to the next line', '--- note: Rain all day', '---\nnote: Rain all day'],
  [
    'directive',
    'Delete the line',
    '%YAML 1.2\n---\ndiag: 1\ncase: Hunts at idle',
    '\n---\ndiag: 1\ncase: Hunts at idle',
  ],
  ['alias', 'Put the text in quotes', 'found: *loud*', 'found: "*loud*"'],
  ['tag', 'Put the text in quotes', 'found: !important smoke', 'found: "!important smoke"'],
  [
    'bracket-left-open',
    'Close it with `}`',
    'tools:\n  gauge: {description: vacuum gauge',
    'tools:\n  gauge: {description: vacuum gauge}',
  ],
  [
    'unknown-escape',
    'Write a backslash as two',
    'file: "captures\\idle.csv"',
    'file: "captures\\\\idle.csv"',
  ],
  ['minus-apart', 'Write `-3 %`', 'stft_b1: - 3 %', 'stft_b1: -3 %'],
  [
    'remark-inside-text',
    'Write the text as a block after `>-`',
    'found: Smoke at injector # 3\n  and at the gasket',
    'found: >-\n  Smoke at injector # 3\n  and at the gasket',
  ],
  [
    'comma-makes-key',
    'Put the text in quotes',
    'diag: 1\n---\nreadings: A\nvehicle: {description: island fleet, van 14}',
    'diag: 1\n---\nreadings: A\nvehicle: {description: "island fleet, van 14"}',
  ],
  ['question-mark-alone', 'Put the text in quotes', 'found: ? maybe smoke', 'found: "? maybe smoke"'],
  [
    'note-lines-dropped',
    'Write the note as a block after `|`',
    'note:\n  # What we saw\n  Smoke at the gasket.',
    'note: |\n  # What we saw\n  Smoke at the gasket.',
  ],
  [
    'unknown-key',
    'Write `expect`',
    'check: Idle\nexpects:\n  - rpm > 600 rpm',
    'check: Idle\nexpect:\n  - rpm > 600 rpm',
  ],
  [
    'unknown-word',
    'Write `before`',
    'diag: 1\n---\nreadings: A\nwhen: befor',
    'diag: 1\n---\nreadings: A\nwhen: before',
  ],
  [
    'unit-of-count',
    'Leave the number alone',
    'diag: 1\n---\nreadings: A\nvalues:\n  iac: 11 steps',
    'diag: 1\n---\nreadings: A\nvalues:\n  iac: 11 ',
  ],
  [
    'digit-groups',
    'Write 2500',
    'diag: 1\n---\nreadings: A\nvalues:\n  rpm: 2 500 rpm',
    'diag: 1\n---\nreadings: A\nvalues:\n  rpm: 2500 rpm',
  ],
  [
    'number-form',
    'Write 2500',
    'diag: 1\n---\nreadings: A\nvalues:\n  rpm: 2.5e3 rpm',
    'diag: 1\n---\nreadings: A\nvalues:\n  rpm: 2500 rpm',
  ],
  [
    'number-signs',
    'Write 5 %',
    'diag: 1\n---\nreadings: A\nvalues:\n  stft_b1: --5 %',
    'diag: 1\n---\nreadings: A\nvalues:\n  stft_b1: 5 %',
  ],
  [
    'plus-minus-unit',
    'Write 13.1 ± 0.2 inHg',
    'diag: 1\n---\nreadings: A\nvalues:\n  map: 13.1 inHg ± 0.2',
    'diag: 1\n---\nreadings: A\nvalues:\n  map: 13.1 ± 0.2 inHg',
  ],
  [
    'range-in-reading',
    'Write 52.5 ± 2.5 psi',
    'diag: 1\n---\nreadings: A\nvalues:\n  fuel_pressure: 50-55 psi',
    'diag: 1\n---\nreadings: A\nvalues:\n  fuel_pressure: 52.5 ± 2.5 psi',
  ],
  [
    'kind-undecided',
    'Add absolute',
    'diag: 1\n---\ncheck: A\nexpect:\n  - 14.7 psi + fuel_pressure',
    'diag: 1\n---\ncheck: A\nexpect:\n  - 14.7 psi absolute + fuel_pressure',
  ],
  [
    'kinds-in-quotient',
    'Wrap it as absolute(…)',
    'diag: 1\n---\ncheck: A\nexpect:\n  - map / vacuum',
    'diag: 1\n---\ncheck: A\nexpect:\n  - map / absolute(vacuum)',
  ],
  [
    'needs-brackets',
    'Write `(3 inch)`',
    'diag: 1\n---\ncheck: A\nlet:\n  area: 3 inch ^ 2',
    'diag: 1\n---\ncheck: A\nlet:\n  area: (3 inch) ^ 2',
  ],
  [
    'never-said',
    'Write "charging"',
    'diag: 1\n---\ncheck: A\nexpect:\n  - charging_pattern(14.2 V) is "chargin"',
    'diag: 1\n---\ncheck: A\nexpect:\n  - charging_pattern(14.2 V) is "charging"',
  ],
  [
    'quote-word',
    'Write `"closed"`',
    'diag: 1\n---\ncheck: A\nexpect:\n  - loop is closed',
    'diag: 1\n---\ncheck: A\nexpect:\n  - loop is "closed"',
  ],
  [
    'wrong-argument',
    'Wrap it as absolute(…)',
    `${values}check: A\nlet:\n  air: air_density(g.vacuum, g.ect)\n`,
    `${values}check: A\nlet:\n  air: air_density(absolute(g.vacuum), g.ect)\n`,
  ],
];

/** A file after the first offer of that title for a finding of that code. */
function afterOffer(text: string, code: string, title: string): string {
  const { file, findings } = checkCase(text);
  for (const { cell, diagnostic } of findings) {
    const fix = diagnostic.fixes.find((each) => each.title === title);
    if (diagnostic.code !== code || fix === undefined) continue;
    const start = cell === undefined ? 0 : (file.stream.starts[cell] ?? 0);
    const placed = fix.edits.map(({ span, newText }) => ({
      span: { start: span.start + start, end: span.end + start },
      newText,
    }));
    return applyEdits(text, placed);
  }
  return `There is no offer “${title}” for ${code}.`;
}

describe('the offer of a finding, in a whole file', () => {
  it.each(files)('%s: %s', (code, title, before, after) => {
    expect(afterOffer(before, code, title)).toBe(after);
  });
});

/** Where the catalogue's examples may stand. */
const places = [
  '',
  'diag: 1\n---\n',
  'diag: 1\n---\nreadings: A\n',
  'diag: 1\n---\ncheck: A\n',
  'diag: 1\n---\ntest: A\n',
  'diag: 1\n---\nreadings: A\nvalues:\n  ',
  'diag: 1\n---\nreference: A\nvalues:\n  ',
  'diag: 1\n---\ncheck: A\nexpect:\n  - ',
];

describe('no offer goes untried', () => {
  it('every code that has one in an example or in a sample stands above, before and after', () => {
    const offered = new Set<string>();
    const look = (text: string): void => {
      for (const { diagnostic } of checkCase(text).findings)
        if (diagnostic.fixes.length > 0) offered.add(diagnostic.code);
    };
    for (const code of allCodes()) for (const place of places) look(place + catalogue[code].wrong);
    for (const text of samples.values()) look(text);
    for (const [, , before] of files) look(before);
    const tried = new Set([...rows, ...files].map(([code]) => code));
    expect([...offered].filter((code) => !tried.has(code))).toEqual([]);
    expect(offered.size).toBeGreaterThan(40);
  });
});

import { describe, expect, it } from 'vitest';
import { folds } from '../../core/service/folds.ts';
import { inlayHints } from '../../core/service/inlayHints.ts';
import { links } from '../../core/service/links.ts';
import { selections } from '../../core/service/selections.ts';
import { symbols } from '../../core/service/symbols.ts';
import { tokens } from '../../core/service/tokens.ts';
import type { CellSymbol, UnitPreference } from '../../core/service/types.ts';
import { atCursor, caseOf, words } from './cursor.ts';
import { loads } from './loads.ts';

const loadsCase = caseOf(loads);

describe('outline', () => {
  /** "kind name | detail", children set in. */
  function outlineOf(cell: number): string[] {
    const lines = (of: CellSymbol, indent: string): string[] => [
      `${indent}${of.kind} ${of.name} | ${of.detail}`,
      ...of.children.flatMap((each) => lines(each, `${indent}  `)),
    ];
    return symbols(loadsCase, cell).flatMap((each) => lines(each, ''));
  }

  it('shows a cell’s title, its names and their values, its expectations and their verdicts', () => {
    expect(outlineOf(4)).toEqual([
      'cell Sum | check, sum',
      '  computed seen | 29.5 ± 0.2 inHg absolute (99.90 ± 0.68 kPa)',
      '  computed twice | 59.0 ± 0.4 inHg absolute (199.8 ± 1.4 kPa)',
      '  expectation seen within 0.5 inHg of 29.5 inHg | ✓ holds',
      '  expectation sum.twice > 1 inHg | ✓ holds',
    ]);
  });

  it('shows a table’s rows once, with all their states', () => {
    expect(outlineOf(1)).toEqual([
      'cell Three loads | readings, before',
      '  reading map | 13.1 inHg absolute (44.4 kPa), 9.8 inHg absolute (33.2 kPa)',
      '  reading stft_b1 | 8 %, not taken',
    ]);
  });

  it('shows the header by the case’s title, with tools and own signals', () => {
    expect(outlineOf(0)).toEqual([
      'cell A case of its own | the case',
      '  tool gauge | ',
      '  signal sump | ',
    ]);
  });

  it('shows suspects with their standing', () => {
    expect(outlineOf(5)).toEqual(['cell Who | suspects', '  suspect a leak | ruled out']);
  });

  it('shows a note by its first line, with its headings, code left out', () => {
    const study = caseOf('note: |\n  # How to\n\n  Words.\n  ```\n  # no heading\n  ```\n  ## Then\n');
    const [note] = symbols(study, 1);
    expect(note?.name).toBe('How to');
    expect(note?.children.map((each) => each.name)).toEqual(['Then']);
    const [other] = symbols(caseOf('note: |\n  Words.\n\n  # How to\n'), 1);
    expect([other?.name, other?.children.map((each) => each.name)]).toEqual(['Words.', ['How to']]);
  });

  it('is empty for a cell without words', () => {
    expect(symbols(caseOf('---\n---\n'), 0)).toEqual([]);
  });
});

describe('folding', () => {
  /** What stays visible of each fold and how many lines it hides. */
  function foldsOf(source: string): string[] {
    const study = caseOf(source);
    const text = study.file.cells[1]?.raw.text ?? '';
    return folds(study, 1).map(({ span, kind }) => {
      const line = text.slice(text.lastIndexOf('\n', span.start - 1) + 1, span.start);
      return `${line.trim()} (${kind}, ${text.slice(span.start, span.end).split('\n').length - 1})`;
    });
  }

  it('folds entries, tables, items and runs of remarks', () => {
    expect(
      foldsOf(`# First
# second
check: Sum
let:
  a: 1
  b: |
    2
    + 3
expect:
  - expect: a > 0
    if fails: Look.
  - b > 0
`),
    ).toEqual([
      '# First (comment, 1)',
      'let: (region, 4)',
      'b: | (region, 2)',
      'expect: (region, 3)',
      '- expect: a > 0 (region, 1)',
    ]);
  });

  it('has nothing to fold on one line', () => {
    expect(foldsOf('caution: Hot.\n')).toEqual([]);
  });
});

describe('semantic tokens', () => {
  /** "word:type(modifiers)" in order. */
  function checkTokens(source: string, expected: string): void {
    const study = caseOf(source);
    const found = tokens(study, 1).map(({ span, type, modifiers }) => {
      const marks = modifiers.length === 0 ? '' : `(${modifiers.join(' ')})`;
      return `${words(study, 1, span)}:${type}${marks}`;
    });
    expect(found.join('  ')).toBe(expected);
  }

  it('tells signals, numbers, units and states', () => {
    checkTokens(
      'readings: Gauge\nas: g\nstate: warm idle\nvalues:\n  vacuum: 16.4 inHg # remark\n  sump: 80 °C\n  mapp: 1\n  loop: closed\n',
      'readings:kind  Gauge:title  as:key  g:name(defines own)  state:key  warm idle:state  values:key  vacuum:signal  16.4:number  inHg:unit  # remark:comment  sump:signal(own)  80:number  °C:unit  mapp:signal(missing)  1:number  loop:signal  closed:word',
    );
  });

  it('tells the parts of an expression', () => {
    checkTokens(
      'check: A\nlet:\n  a: total_trim(stft = 1 %, ltft = 2 %)\nexpect:\n  - not (a within 2 % of 1 %) or nothing > -1\n  - ect.result is "no"\n',
      'check:kind  A:title  let:key  a:name(defines own)  total_trim:function  stft:parameter  =:operator  1:number  %:unit  ltft:parameter  =:operator  2:number  %:unit  expect:key  not:keyword  a:name(own)  within:keyword  2:number  %:unit  of:keyword  1:number  %:unit  or:keyword  nothing:name(missing)  >:operator  -1:number  ect:signal(missing)  result:name(missing)  is:keyword  "no":text',
    );
  });

  it('tells the columns of a table', () => {
    checkTokens(
      'readings: A\nstates:\n  idle: warm idle\ntable: |\n  reading   idle   unit\n  map       -      inHg\n',
      'readings:kind  A:title  states:key  idle:name(defines own)  warm idle:state  table:key  reading:key  idle:name(own)  unit:key  map:signal  -:word  inHg:unit',
    );
  });

  it('gives a text of several lines a token a line', () => {
    checkTokens(
      'test: A\ndid: |\n  One.\n  Two.\nfound: It was\n  folded.\n',
      'test:kind  A:title  did:key  One.:text  Two.:text  found:key  It was:text  folded.:text',
    );
  });

  it('knows unknown keys and header values', () => {
    checkTokens(
      'check: A\nexpct: 1\nexpect:\n  - engine.displacement > 1 L\n',
      'check:kind  A:title  expct:key(missing)  expect:key  engine:name  displacement:name  >:operator  1:number  L:unit',
    );
  });
});

describe('inlay hints', () => {
  /** The line up to the hint, then the hint in « ». */
  function checkHints(source: string, expected: readonly string[], units?: UnitPreference): void {
    const study = caseOf(source);
    const text = study.file.cells[1]?.raw.text ?? '';
    const found = inlayHints(study, 1, undefined, units).map(({ offset, text: hint }) => {
      const line = text.slice(text.lastIndexOf('\n', offset - 1) + 1, offset);
      return `${line.trim()} «${hint}»`;
    });
    expect(found).toEqual(expected);
  }

  it('shows the other unit beside a reading', () => {
    const source = 'readings: A\nvalues:\n  map: 13.1 ± 0.2 inHg\n  ect: 80 °C # warm\n  rpm: 780 rpm\n';
    checkHints(source, ['map: 13.1 ± 0.2 inHg «44.36 ± 0.68 kPa»', 'ect: 80 °C «176 °F»']);
    checkHints(source, ['map: 13.1 ± 0.2 inHg «44.36 ± 0.68 kPa»'], 'metric');
    checkHints(source, ['ect: 80 °C «176 °F»'], 'US');
  });

  it('shows computed values and verdicts', () => {
    checkHints(
      'check: A\nlet:\n  a: 1 % + 2 %\n  b: ect\nexpect:\n  - a > 1 %\n  - a > 5 %\n  - ect > 5 °C\n',
      [
        'a: 1 % + 2 % «= 3 %»',
        'b: ect «= not measured»',
        '- a > 1 % «✓ holds»',
        '- a > 5 % «✗ fails»',
        '- ect > 5 °C «– not measured»',
      ],
    );
  });

  it('stay within the lines that are asked for', () => {
    const study = caseOf('check: A\nexpect:\n  - 1 > 0\n  - 2 > 0\n');
    expect(inlayHints(study, 1, { start: 0, end: 28 })).toHaveLength(1);
    expect(inlayHints(study, 1)).toHaveLength(2);
  });
});

describe('selection ranges', () => {
  it('grow from the word to the cell', () => {
    const { study, cell, offset } = atCursor('check: A\nlet:\n  a: total_trim(1 %, 2 % + 3$0 %)\n');
    expect(selections(study, cell, offset).map((each) => words(study, cell, each))).toEqual([
      '3',
      '3 %',
      '2 % + 3 %',
      'total_trim(1 %, 2 % + 3 %)',
      'a: total_trim(1 %, 2 % + 3 %)',
      'let:\n  a: total_trim(1 %, 2 % + 3 %)',
      'check: A\nlet:\n  a: total_trim(1 %, 2 % + 3 %)',
    ]);
  });
});

describe('document links', () => {
  function linksOf(source: string): string[] {
    const study = caseOf(source);
    return links(study, 1).map(({ span, file }) => `${words(study, 1, span)} → ${file}`);
  }

  it('are the files beside the case', () => {
    expect(linksOf('picture: A\nfile: pictures/gasket.jpg\n')).toEqual([
      'pictures/gasket.jpg → pictures/gasket.jpg',
    ]);
    expect(linksOf('capture: A\nfile: "captures/o2 1.csv"\n')).toEqual([
      'captures/o2 1.csv → captures/o2 1.csv',
    ]);
    expect(linksOf('test: A\npicture: a.jpg\n')).toEqual(['a.jpg → a.jpg']);
  });

  it('never leave the case’s folder', () => {
    for (const file of [
      '../a.csv',
      '/etc/a.csv',
      'a/../../b.csv',
      'https://x/a.csv',
      'C:/a.csv',
      '\\\\x\\a.csv',
      'a\\b.csv',
    ]) {
      expect(linksOf(`capture: A\nfile: '${file}'\n`)).toEqual([]);
    }
  });
});

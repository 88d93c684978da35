import { describe, expect, it } from 'vitest';
import { limits } from '../../core/casefile/limits.ts';
import { readRows } from '../../core/casefile/rows.ts';
import { readTable } from '../../core/casefile/table.ts';
import type { Node, TextNode } from '../../core/casefile/tree.ts';
import type { Diagnostic } from '../../core/diagnostics/diagnostic.ts';
import { message } from '../../core/diagnostics/words.ts';
import { cellOf } from './found.ts';

interface Written {
  readonly text: string;
  readonly node: TextNode;
}

function tableIn(lines: readonly string[], key = 'table', lineBreak = '\n'): Written {
  const text = ['readings: x', `${key}: |`, ...lines.map((line) => `  ${line}`)].join(lineBreak);
  const { tree } = cellOf(text);
  const node = tree?.kind === 'map' ? tree.entries[1]?.value : undefined;
  if (node?.kind !== 'text') throw new Error('no text');
  return { text, node };
}

/** Rows as words, each checked to stand where it is said to. */
function read({ text, node }: Written): string[][] {
  const { value } = readTable(node);
  const all =
    value === undefined ? [] : [value.headings, ...value.rows.map((row) => [row.name, ...row.values])];
  return all.map((row) => row.map((each) => placed(each, text)));
}

function placed(node: TextNode, text: string): string {
  const there = text.slice(node.span.start, node.span.end);
  expect(there === '' ? '-' : there).toBe(node.text);
  return node.text;
}

const told = (text: string, diagnostics: readonly Diagnostic[]) =>
  diagnostics.map((each) => ({
    code: each.code,
    covers: text.slice(each.span.start, each.span.end),
    says: message(each),
  }));

const wanted = [
  ['reading', 'idle', 'fast', 'unit'],
  ['rpm', '780', '2500', 'rpm'],
  ['iac', '3', '-', '%'],
];

describe('a table', () => {
  it('is read as it is typed, with any number of spaces', () => {
    expect(
      read(
        tableIn(['reading   idle   fast   unit', 'rpm       780    2500   rpm', 'iac       3      -      %']),
      ),
    ).toEqual(wanted);
    expect(read(tableIn(['reading idle fast unit', 'rpm 780 2500 rpm', '', 'iac 3 - %  ']))).toEqual(wanted);
  });

  it('is read as it is pasted from a spreadsheet, empty cells and all', () => {
    expect(read(tableIn(['reading\tidle\tfast\tunit', 'rpm\t780\t2500\trpm', 'iac\t3\t\t%']))).toEqual(
      wanted,
    );
    expect(read(tableIn(['reading\tidle\tfast', 'rpm\t780']))).toEqual([['reading', 'idle', 'fast']]);
    expect(read(tableIn(['reading\tidle\tfast', 'rpm\t\t\t']))).toEqual([['reading', 'idle', 'fast']]);
    expect(read(tableIn(['reading\tidle\tfast', 'rpm\t\t2500']))).toEqual([
      ['reading', 'idle', 'fast'],
      ['rpm', '-', '2500'],
    ]);
  });

  it('is read with tabs typed for looks', () => {
    expect(read(tableIn(['reading\t\tidle\tfast\tunit', 'rpm\t\t780\t2500\trpm', 'iac\t\t3\t-\t%']))).toEqual(
      wanted,
    );
  });

  it('has its places right with CRLF', () => {
    expect(
      read(tableIn(['reading idle fast unit', 'rpm 780 2500 rpm', 'iac 3 - %'], 'table', '\r\n')),
    ).toEqual(wanted);
  });

  it('takes a cell of several words between two spaces or tabs', () => {
    expect(
      read(
        tableIn([
          'reading  idle           unit',
          'egr_cmd  not supported  %',
          'map      13.1 ± 0.2     psi gauge',
        ]),
      ),
    ).toEqual([
      ['reading', 'idle', 'unit'],
      ['egr_cmd', 'not supported', '%'],
      ['map', '13.1 ± 0.2', 'psi gauge'],
    ]);
    expect(read(tableIn(['reading\tidle\tunit', 'egr_cmd\tnot taken\t%']))[1]).toEqual([
      'egr_cmd',
      'not taken',
      '%',
    ]);
  });

  it('without its heading is told so', () => {
    const table = tableIn(['rpm  780  rpm']);
    expect(told(table.text, readTable(table.node).diagnostics)).toEqual([
      {
        code: 'table-no-heading',
        covers: 'rpm  780  rpm',
        says: 'The first row is the heading and starts with `reading`; here it starts with `rpm`.',
      },
    ]);
  });

  it('with rows that do not fit keeps the others', () => {
    const table = tableIn([
      'reading  idle  fast  unit',
      'map  13.1  inHg',
      'rpm  780  2500  rpm',
      'iac  1 2 3 4 5',
    ]);
    expect(told(table.text, readTable(table.node).diagnostics)).toEqual([
      {
        code: 'table-ragged-row',
        covers: 'map  13.1  inHg',
        says: 'The row `map` has 3 columns; the heading has 4 (reading, idle, fast, unit). Put `-` where nothing was taken.',
      },
      {
        code: 'table-ragged-row',
        covers: 'iac  1 2 3 4 5',
        says: 'The row `iac` has 6 columns; the heading has 4 (reading, idle, fast, unit). Put `-` where nothing was taken.',
      },
    ]);
    expect(read(table)).toEqual([wanted[0], wanted[1]]);
  });

  it('with a row or a column twice is told so', () => {
    const table = tableIn(['reading  idle  idle  unit', 'rpm  780  2500  rpm', 'rpm  790  2510  rpm']);
    expect(told(table.text, readTable(table.node).diagnostics)).toEqual([
      {
        code: 'table-duplicate-column',
        covers: 'idle',
        says: 'The heading `idle` stands here a second time. Give each column its own name.',
      },
      {
        code: 'table-duplicate-row',
        covers: 'rpm',
        says: 'The row `rpm` stands here a second time; only the first is read. Delete one of them.',
      },
    ]);
  });

  it('without rows is told so', () => {
    const table = tableIn(['reading  idle  unit']);
    expect(told(table.text, readTable(table.node).diagnostics)).toEqual([
      {
        code: 'table-empty',
        covers: '|\n  reading  idle  unit',
        says: 'This table has no rows. It starts with a heading row, `reading  idle  unit`, and has a row for each value.',
      },
    ]);
  });

  it('is bounded', () => {
    const rows = Array.from({ length: limits.tableRows + 5 }, (_, i) => `r${i} 1`);
    const long = readTable(tableIn(['reading idle', ...rows]).node);
    expect(long.value?.rows).toHaveLength(limits.tableRows);
    expect(long.diagnostics.map(message)).toEqual([
      'There are 10005 rows; at most 10000 are read. Put long data into a capture file.',
    ]);
    const wide = Array.from({ length: limits.tableColumns + 1 }, (_, i) => `c${i}`).join(' ');
    expect(readTable(tableIn([`reading ${wide}`]).node).diagnostics.map((each) => each.code)).toEqual([
      'table-too-wide',
    ]);
  });
});

describe('samples written out', () => {
  function rowsOf(text: string) {
    const { tree } = cellOf(text);
    const node: Node | undefined = tree?.kind === 'map' ? tree.entries[1]?.value : undefined;
    if (node === undefined) throw new Error('no rows');
    const { value, diagnostics } = readRows(node);
    const row = (cells: readonly TextNode[] | undefined) => cells?.map((each) => placed(each, text));
    return {
      headings: row(value?.headings),
      units: row(value?.units),
      rows: value?.rows.map((each) => row(each)),
      told: told(text, diagnostics),
    };
  }

  it('are read from lines, with a row of units or without', () => {
    expect(rowsOf('capture: x\nrows: |\n  Time (s)  front\n  0         0.12\n  0.5       0.78')).toEqual({
      headings: ['Time (s)', 'front'],
      units: undefined,
      rows: [
        ['0', '0.12'],
        ['0.5', '0.78'],
      ],
      told: [],
    });
    expect(rowsOf('capture: x\nrows: |\n  time front rear\n  s V V\n  0 .12 -\n  0.5 -0.78 0.4')).toEqual({
      headings: ['time', 'front', 'rear'],
      units: ['s', 'V', 'V'],
      rows: [
        ['0', '.12', '-'],
        ['0.5', '-0.78', '0.4'],
      ],
      told: [],
    });
  });

  it.each(['-.5   -3', '−0.5  −3', '+.5   3'])(
    'a first row of signed numbers is no row of units: %s',
    (row) => {
      const { units, rows } = rowsOf(`capture: x\nrows: |\n  time  front\n  ${row}\n  1     2`);
      expect(units).toBeUndefined();
      expect(rows).toEqual([row.split(/ +/), ['1', '2']]);
    },
  );

  it('are read from lists', () => {
    expect(rowsOf('capture: x\nrows:\n  - [time, front]\n  - [0 s, 0.12 V]\n  - [0.5 s, 0.78 V]')).toEqual({
      headings: ['time', 'front'],
      units: undefined,
      rows: [
        ['0 s', '0.12 V'],
        ['0.5 s', '0.78 V'],
      ],
      told: [],
    });
  });

  it('that are no rows are told so', () => {
    expect(rowsOf('capture: x\nrows:\n  - [time, front]\n  - 0.5 s\n  - [1 s]').told).toEqual([
      {
        code: 'rows-not-a-row',
        covers: '0.5 s',
        says: 'A row of samples is a list of texts, such as `[0.5 s, 0.78 V]`; this is a text.',
      },
      {
        code: 'table-ragged-row',
        covers: '[1 s]',
        says: 'The row `1 s` has 1 columns; the heading has 2 (time, front). Put `-` where nothing was taken.',
      },
    ]);
    expect(rowsOf('capture: x\nrows: {a: b}').told.map((each) => each.code)).toEqual(['rows-not-a-row']);
    expect(rowsOf('capture: x\nrows: |\n  time front').told.map((each) => each.code)).toEqual([
      'table-empty',
    ]);
    expect(rowsOf('capture: x\nrows: []').told.map((each) => each.code)).toEqual(['table-empty']);
  });
});

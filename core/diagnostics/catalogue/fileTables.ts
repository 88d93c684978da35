import { oneOf, type Rows } from '../row.ts';

/** Findings about tables and samples written as rows. */
export interface FileTablesFacts {
  readonly 'table-empty': { readonly example: string };
  readonly 'table-no-heading': { readonly first: string; readonly expected: readonly string[] };
  readonly 'table-ragged-row': {
    readonly row: string;
    readonly has: number;
    readonly due: number;
    readonly headings: string;
  };
  readonly 'table-duplicate-row': { readonly row: string };
  readonly 'table-duplicate-column': { readonly column: string };
  readonly 'table-too-long': { readonly rows: number; readonly most: number };
  readonly 'table-too-wide': { readonly columns: number; readonly most: number };
  readonly 'rows-not-a-row': { readonly got: string };
}

export const fileTablesRows: Rows<FileTablesFacts> = {
  'table-empty': {
    severity: 'error',
    title: 'A table without rows',
    say: ({ example }) =>
      `This table has no rows. It starts with a heading row, \`${example}\`, and has a row for each value.`,
    why: 'A table without rows holds no values.',
    wrong: 'table: |\n  reading  idle  unit',
    right: 'table: |\n  reading  idle  unit\n  rpm      780   rpm',
  },
  'table-no-heading': {
    severity: 'error',
    title: 'A table without its heading row',
    say: ({ first, expected }) =>
      `The first row is the heading and starts with ${oneOf(expected.map((each) => `\`${each}\``))}; here it starts with \`${first}\`.`,
    why: 'The heading says which column is which state and which holds the unit.',
    wrong: 'table: |\n  rpm  780  rpm',
    right: 'table: |\n  reading  idle  unit\n  rpm      780   rpm',
  },
  'table-ragged-row': {
    severity: 'error',
    title: 'A row with too few or too many columns',
    say: ({ row, has, due, headings }) =>
      `The row \`${row}\` has ${has} columns; the heading has ${due} (${headings}). Put \`-\` where nothing was taken.`,
    why: 'A value in the wrong column would belong to the wrong state.',
    wrong: 'reading  idle  fast  unit\nmap      13.1  inHg',
    right: 'reading  idle  fast  unit\nmap      13.1  -     inHg',
  },
  'table-duplicate-row': {
    severity: 'error',
    title: 'A row that stands twice',
    say: ({ row }) =>
      `The row \`${row}\` stands here a second time; only the first is read. Delete one of them.`,
    why: 'One of the two values would be lost.',
    wrong: 'map  13.1  inHg\nmap  9.8   inHg',
    right: 'map  13.1  inHg',
  },
  'table-duplicate-column': {
    severity: 'error',
    title: 'A column that stands twice',
    say: ({ column }) =>
      `The heading \`${column}\` stands here a second time. Give each column its own name.`,
    why: 'One of the two columns would be lost.',
    wrong: 'reading  idle  idle  unit\nrpm      780   2500  rpm',
    right: 'reading  idle  fast  unit\nrpm      780   2500  rpm',
  },
  'table-too-long': {
    severity: 'error',
    title: 'Too many rows',
    say: ({ rows, most }) =>
      `There are ${rows} rows; at most ${most} are read. Put long data into a capture file.`,
    why: 'The bound keeps a wrong or damaged file from stopping the editor.',
    wrong: 'an hour of samples under `rows`',
    right: 'file: captures/hour.csv',
  },
  'table-too-wide': {
    severity: 'error',
    title: 'Too many columns',
    say: ({ columns, most }) => `There are ${columns} columns; at most ${most} are read.`,
    why: 'The bound keeps a wrong or damaged file from stopping the editor.',
    wrong: 'a table of 1,000 columns',
    right: 'several tables',
  },
  'rows-not-a-row': {
    severity: 'error',
    title: 'Samples that are no row',
    say: ({ got }) => `A row of samples is a list of texts, such as \`[0.5 s, 0.78 V]\`; this is ${got}.`,
    why: 'Each row is one moment.',
    wrong: 'rows:\n  - [time, front]\n  - 0.5 s',
    right: 'rows:\n  - [time, front]\n  - [0.5 s, 0.78 V]',
  },
};

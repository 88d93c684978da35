import { didYouMean, oneOf, type Rows } from '../row.ts';

/** Findings about kinds, keys and what they hold. */
export interface FileShapeFacts {
  readonly 'empty-file': Record<never, never>;
  readonly 'no-header': Record<never, never>;
  readonly 'second-header': Record<never, never>;
  readonly 'unknown-version': { readonly version: string };
  readonly 'empty-cell': Record<never, never>;
  readonly 'not-a-cell': { readonly text: string };
  readonly 'unknown-kind': {
    readonly kind: string;
    readonly kinds: readonly string[];
    readonly nearest: readonly string[];
  };
  readonly 'kind-not-first': { readonly kind: string };
  readonly 'unknown-key': {
    readonly key: string;
    readonly of: string;
    readonly allowed: readonly string[];
    readonly nearest: readonly string[];
  };
  readonly 'duplicate-key': { readonly key: string };
  readonly 'either-key': { readonly key: string; readonly other: string };
  readonly 'missing-key': { readonly key: string; readonly of: string; readonly meaning: string };
  readonly 'missing-value': {
    readonly key: string;
    readonly takes: string;
    readonly example: string;
    /** Keys right below that are none of the cell's, and may belong to it. */
    readonly below?: readonly string[];
  };
  readonly 'wrong-shape': {
    readonly key: string;
    readonly takes: string;
    readonly got: string;
    readonly example: string;
  };
  readonly 'bad-name': { readonly name: string };
  readonly 'unknown-word': {
    readonly key: string;
    readonly word: string;
    readonly allowed: readonly string[];
    readonly nearest: readonly string[];
  };
}

const code = (words: readonly string[]): string[] => words.map((word) => `\`${word}\``);

/** What each of two keys is for. */
function inOneCell(key: string, other: string): string {
  const both = [key, other];
  if (both.includes('state'))
    return '`state` is the one engine state of all values, `states` are several side by side';
  if (both.includes('states')) return 'values at several states stand in a `table`, with a column for each';
  if (both.includes('table')) return 'the values are listed under `values` or as rows of a `table`';
  return 'the samples are in a `file` or are written out as `rows`';
}

export const fileShapeRows: Rows<FileShapeFacts> = {
  'empty-file': {
    severity: 'error',
    title: 'The file is empty',
    say: () =>
      'The file holds no cell. A case starts with the header `diag: 1` and a line `case: …` with its title.',
    why: 'The header says that the file is a case and in which version of the format.',
    wrong: '',
    right: 'diag: 1\ncase: Hunts at idle',
  },
  'no-header': {
    severity: 'error',
    title: 'The header is missing',
    say: () =>
      'The first cell must be the header: `diag: 1`, then `case: …` with the title. Put it before this cell, with a line `---` between.',
    why: 'The header says that the file is a case, in which version of the format, and what engine the sums are about.',
    wrong: 'readings: Idle\nvalues:\n  map: 13.1 inHg',
    right: 'diag: 1\ncase: Hunts at idle\n---\nreadings: Idle\nvalues:\n  map: 13.1 inHg',
  },
  'second-header': {
    severity: 'error',
    title: 'A second header',
    say: () =>
      'This is a second header. A file is one case: move its keys into the first cell, or this and what follows into a file of its own.',
    why: 'Two headers would say two things about one engine.',
    wrong: 'diag: 1\ncase: One\n---\ndiag: 1\ncase: Two',
    right: 'diag: 1\ncase: One',
  },
  'unknown-version': {
    severity: 'error',
    title: 'A format that this program does not know',
    say: ({ version }) =>
      version === ''
        ? 'The header does not say its format. Write `diag: 1`.'
        : `This case says format \`${version}\`; this program knows format 1. Use a newer program, or write \`diag: 1\` if that is what it is.`,
    why: 'A newer format may mean something else by the same words.',
    wrong: 'diag: 2\ncase: Hunts at idle',
    right: 'diag: 1\ncase: Hunts at idle',
  },
  'empty-cell': {
    severity: 'warning',
    title: 'An empty cell',
    say: () => 'This cell is empty. Delete its `---` line, or write what belongs there.',
    why: 'Two `---` lines with nothing between them are usually left over.',
    wrong: '---\n---\nnote: Rain',
    right: '---\nnote: Rain',
  },
  'not-a-cell': {
    severity: 'error',
    title: 'A cell without its kind',
    say: ({ text }) =>
      `\`${text}\` is no cell: a cell starts with its kind and a title, such as \`note: …\` or \`readings: …\`.`,
    why: 'The first key says what a cell is.',
    wrong: '---\nRain all day.',
    right: '---\nnote: Rain all day.',
  },
  'unknown-kind': {
    severity: 'error',
    title: 'An unknown kind of cell',
    say: ({ kind, kinds, nearest }) =>
      `\`${kind}\` is no kind of cell.${didYouMean(nearest)} A cell starts with ${oneOf(code(kinds))}.`,
    why: 'The first key of a cell says what it is and which keys it may have.',
    wrong: 'reading: Idle',
    right: 'readings: Idle',
  },
  'kind-not-first': {
    severity: 'error',
    title: 'The kind does not stand first',
    say: ({ kind }) => `\`${kind}\` says what this cell is and must stand on its first line.`,
    why: 'A reader sees at once what a cell is.',
    wrong: 'as: koeo\nreadings: Key on',
    right: 'readings: Key on\nas: koeo',
  },
  'unknown-key': {
    severity: 'error',
    title: 'An unknown key',
    say: ({ key, of, allowed, nearest }) =>
      `\`${key}\` is no key of \`${of}\`.${didYouMean(nearest)}${nearest.length > 0 ? '' : ` It may have ${oneOf(code(allowed))}.`}`,
    why: 'A key with a slip in it would be passed over in silence.',
    wrong: 'check: Idle\nexpects:\n  - rpm > 600 rpm',
    right: 'check: Idle\nexpect:\n  - rpm > 600 rpm',
  },
  'duplicate-key': {
    severity: 'error',
    title: 'A key that stands twice',
    say: ({ key }) => `\`${key}\` stands here a second time; only the first is read. Delete one of them.`,
    why: 'One of the two values would be lost.',
    wrong: 'values:\n  map: 13.1 inHg\n  map: 9.8 inHg',
    right: 'values:\n  map: 13.1 inHg',
  },
  'either-key': {
    severity: 'error',
    title: 'Two keys of which one is due',
    say: ({ key, other }) =>
      `\`${key}\` and \`${other}\` cannot stand in one cell: ${inOneCell(key, other)}. Keep one of them, or make two cells.`,
    why: 'With both, nobody could tell which of the two a value belongs to.',
    wrong:
      'readings: Idle and cruise\nstate: warm idle\nstates:\n  fast: 2500 rpm no load\ntable: |\n  reading  fast  unit\n  map      9.8   inHg',
    right:
      'readings: Idle and cruise\nstates:\n  idle: warm idle\n  fast: 2500 rpm no load\ntable: |\n  reading  idle  fast  unit\n  map      13.1  9.8   inHg',
  },
  'missing-key': {
    severity: 'error',
    title: 'A key is missing',
    say: ({ key, of, meaning }) => `\`${of}\` needs \`${key}\`: ${meaning}.`,
    why: 'Without it the rest says nothing.',
    wrong: 'picture: The gasket\nalt: A folded gasket.',
    right: 'picture: The gasket\nfile: pictures/gasket.jpg\nalt: A folded gasket.',
  },
  'missing-value': {
    severity: 'error',
    title: 'Nothing stands after the key',
    say: ({ key, takes, example, below = [] }) =>
      below.length > 0
        ? `Nothing stands after \`${key}\`, and \`${below[0]}\` below it is no key of the cell. Set what belongs to \`${key}\` in by two spaces.`
        : `Nothing stands after \`${key}\`. It takes ${takes}${example === '' ? '' : `, such as \`${example}\``}.`,
    why: 'An empty value is neither a value nor the statement that there is none. A reading that was not taken says `not taken`.',
    wrong: 'state:',
    right: 'state: warm idle',
  },
  'wrong-shape': {
    severity: 'error',
    title: 'A value of the wrong shape',
    say: ({ key, takes, got, example }) =>
      `\`${key}\` takes ${takes}, not ${got}.${example === '' ? '' : ` For example \`${example}\`.`}`,
    why: 'A list where a text is due, or a text where entries are due, cannot be read.',
    wrong: 'values: 29.6 inHg',
    right: 'values:\n  map: 29.6 inHg',
  },
  'bad-name': {
    severity: 'error',
    title: 'A name that expressions cannot use',
    say: ({ name }) =>
      `\`${name}\` cannot be a name. A name has letters, digits and \`_\` only and does not start with a digit.`,
    why: 'In a sum, a space or a minus would end the name.',
    wrong: 'as: key-on',
    right: 'as: key_on',
  },
  'unknown-word': {
    severity: 'error',
    title: 'A word that is not on the list',
    say: ({ key, word, allowed, nearest }) =>
      `\`${key}\` cannot be \`${word}\`.${didYouMean(nearest)} It is ${oneOf(code(allowed))}.`,
    why: 'These words decide what is compared with what.',
    wrong: 'when: befor',
    right: 'when: before',
  },
};

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Notebook,
  type NotebookCell,
  readNotebook,
  writeNotebook,
} from '../../extension/shared/notebookText.ts';
import { samples } from '../support/samples.ts';

/** What the editor does to a cell's text by itself: one kind of line break, no byte-order mark. */
const inEditor = (notebook: Notebook): Notebook => ({
  ...notebook,
  cells: notebook.cells.map((cell) => ({
    ...cell,
    value: cell.value.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n'),
  })),
});

const edited = (
  notebook: Notebook,
  index: number,
  change: (cell: NotebookCell) => NotebookCell,
): Notebook => ({
  ...notebook,
  cells: notebook.cells.map((cell, at) => (at === index ? change(cell) : cell)),
});

const typed = (notebook: Notebook, index: number, from: string, to: string) =>
  edited(notebook, index, (cell) => ({ ...cell, value: cell.value.replace(from, to) }));

const made = (value: string, kind: 'code' | 'note' = 'code'): NotebookCell => ({ kind, value, metadata: {} });

const moved = ({ metadata, cells }: Notebook, from: number, to: number): Notebook => {
  const rest = cells.filter((_, index) => index !== from);
  return { metadata, cells: [...rest.slice(0, to), ...cells.slice(from, from + 1), ...rest.slice(to)] };
};

const stream = fc
  .array(
    fc.constantFrom(
      '---',
      '---\n',
      '--- # why\r\n',
      '---\tx\n',
      '\n',
      '\r\n',
      '\r',
      '\ufeff',
      '# remark\n',
      '...\n',
      '%YAML 1.2\n',
      'note: a\n',
      'note: |\n  # Head\n\n  text\n',
      'note: |2\n   x\r\nfor: teacher # why\n',
      'note: "a\\nb"',
      ' ',
      'readings: a\n',
      'values:\n',
      '  map: 1 kPa # see\n',
      'é😀',
      '\u2028',
      'note',
      ': ',
      '|',
      'a: b\r\n',
    ),
    { maxLength: 30 },
  )
  .map((parts) => parts.join(''));

describe('a file that was not edited', () => {
  it.each([...samples])('%s is written back byte for byte', (_, text) => {
    expect(writeNotebook(inEditor(readNotebook(text)))).toBe(text);
  });

  it('whatever it holds, and whatever the editor does to its line breaks', () => {
    fc.assert(
      fc.property(stream, (text) => {
        expect(writeNotebook(readNotebook(text))).toBe(text);
        expect(writeNotebook(inEditor(readNotebook(text)))).toBe(text);
      }),
      { numRuns: 5000 },
    );
  });
});

describe('cells that were moved, deleted or put in', () => {
  it('are the same cells when the file is read again', () => {
    const values = ({ cells }: Notebook) => cells.map(({ kind, value }) => ({ kind, value }));
    // Line breaks of several kinds, and a byte-order mark that is none, depend on their neighbours.
    const plain = stream.map((text) => text.replace(/\r\n?/g, '\n').replace(/(?!^)\ufeff/g, ''));
    fc.assert(
      fc.property(plain, fc.nat(), fc.nat(), (text, a, b) => {
        const before = readNotebook(text);
        const { length } = before.cells;
        if (length === 0) return;
        const after = moved(before, a % length, b % length);
        const again = readNotebook(writeNotebook(after));
        expect(values(inEditor(again))).toEqual(values(inEditor(after)));
        const back = moved(after, b % length, a % length);
        expect(writeNotebook(inEditor(back))).toBe(text);
      }),
      { numRuns: 5000 },
    );
  });

  const three = readNotebook('diag: 1\n--- # first look\nreadings: A\n---\nreadings: B');

  it('a cell carries its remark along, and the file still ends without a line break', () => {
    expect(writeNotebook(moved(three, 1, 2))).toBe(
      'diag: 1\n---\nreadings: B\n--- # first look\nreadings: A',
    );
  });

  it('a header that is no longer first gets its line', () => {
    expect(writeNotebook(moved(three, 0, 1))).toBe(
      '--- # first look\nreadings: A\n---\ndiag: 1\n---\nreadings: B',
    );
  });

  it('a new cell gets the line and the line break of the file', () => {
    const text = 'diag: 1\r\n---\r\nreadings: A\r\n';
    const { metadata, cells } = readNotebook(text);
    const more = { metadata, cells: [...cells, made('check: C\nexpect:\n  - yes'), made('Look.\n', 'note')] };
    expect(writeNotebook(more)).toBe(
      `${text}---\r\ncheck: C\r\nexpect:\r\n  - yes\r\n---\r\nnote: |\r\n  Look.\r\n`,
    );
  });

  it('a notebook that was made in the editor becomes a plain file', () => {
    const notebook = { metadata: {}, cells: [made('diag: 1\ncase: A'), made('Words', 'note')] };
    expect(writeNotebook(notebook)).toBe('diag: 1\ncase: A\n---\nnote: |\n  Words\n');
  });

  it('an empty first cell is not lost', () => {
    expect(writeNotebook({ metadata: {}, cells: [made(''), made('diag: 1')] })).toBe('---\n\n---\ndiag: 1\n');
  });
});

describe('cells that were edited', () => {
  it('change nothing but what was typed', () => {
    const text = '# ours\n---\ndiag: 1   # one\n---\nreadings:  A\nvalues: {map:  29.6 inHg}   # dear\n';
    const change = typed(readNotebook(text), 1, '29.6', '29.7');
    expect(writeNotebook(change)).toBe(text.replace('29.6', '29.7'));
  });

  it('keep the line breaks of the lines around', () => {
    const text = 'diag: 1\ncase: A\r\nsite:\r\n  altitude: 3 ft\ntags:\n  - b\r\n';
    const change = typed(inEditor(readNotebook(text)), 0, 'altitude: 3 ft', 'altitude: 4 ft');
    expect(writeNotebook(change)).toBe(text.replace('3 ft\n', '4 ft\n'));
    const longer = typed(inEditor(readNotebook(text)), 0, '3 ft', '3 ft\n  # remark');
    expect(writeNotebook(longer)).toBe(text.replace('3 ft\n', '3 ft\n  # remark\n'));
  });

  it('a note keeps its other keys and remarks', () => {
    const text = 'diag: 1\n---\n# to read\nnote: | # why\n  One\nfor: teacher   # not for all\n';
    const notebook = readNotebook(text);
    expect(notebook.cells[1]).toMatchObject({ kind: 'note', value: 'One' });
    expect(writeNotebook(typed(notebook, 1, 'One', 'One\n\nTwo'))).toBe(
      text.replace('  One', '  One\n\n  Two'),
    );
  });

  it('a note that is put in place of another uses nothing of it but its keys', () => {
    const notebook = readNotebook('note: One\nfor: teacher\n');
    const pasted = edited(notebook, 0, (cell) => ({ ...cell, value: '# Two\n\ntext' }));
    expect(writeNotebook(pasted)).toBe('note: |\n  # Two\n\n  text\nfor: teacher\n');
  });

  it('a note that cannot be shown whole stays as it is written', () => {
    const kinds = (text: string) => readNotebook(text).cells.map(({ kind }) => kind);
    expect(kinds('note: One\nfro: teacher\n')).toEqual(['code']);
    expect(kinds('note: One\nfor: teacher\n')).toEqual(['note']);
    expect(kinds('# a note: with a remark\n\nnote: One\n')).toEqual(['note']);
    expect(kinds('notebook: One\n')).toEqual(['code']);
  });
});

describe('Markdown', () => {
  it('comes back as it was written', () => {
    const markdown = fc
      .array(
        fc.constantFrom(
          '# H',
          ' ',
          '\n',
          '- a',
          '---',
          'x: y',
          '"',
          "'",
          '|',
          '\t',
          '#',
          '```',
          '\\',
          '&a *a',
          'é',
        ),
        {
          maxLength: 20,
        },
      )
      .map((parts) => parts.join(''));
    const tidy = (text: string) => text.replace(/(?:^|\n)[ \t\n]*$/, '');
    fc.assert(
      fc.property(markdown, markdown, (before, after) => {
        const first = writeNotebook({ metadata: {}, cells: [made('diag: 1'), made(before, 'note')] });
        const notebook = readNotebook(first);
        if (notebook.cells[1]?.kind !== 'note') return;
        expect(notebook.cells[1].value).toBe(tidy(before));
        const second = writeNotebook(edited(notebook, 1, (cell) => ({ ...cell, value: after })));
        const again = readNotebook(second).cells[1];
        expect(again?.kind === 'note' ? again.value : undefined).toBe(tidy(after));
      }),
      { numRuns: 3000 },
    );
  });
});

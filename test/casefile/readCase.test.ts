import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCase } from '../../core/casefile/readCase.ts';
import { joinStream } from '../../core/casefile/stream.ts';
import { exampleCase } from './exampleCase.ts';
import { codes, findings, header } from './found.ts';

describe('reading a case', () => {
  it('finds nothing wrong with a usual one, whatever its line ends', () => {
    for (const text of [
      exampleCase,
      exampleCase.replaceAll('\n', '\r\n'),
      exampleCase.replaceAll('\n', '\r'),
      `\uFEFF${exampleCase}`,
    ]) {
      const file = readCase(text);
      expect(codes(text)).toEqual([]);
      expect(file.cells.map((cell) => cell.cell?.kind)).toEqual([
        ...['diag', 'readings', 'readings', 'readings', 'readings', 'reference', 'check', 'check', 'capture'],
        ...['test', 'picture', 'suspects', 'question', 'readings', 'repair'],
      ]);
      expect(joinStream(file.stream)).toBe(text);
    }
  });

  it('tells an empty file', () => {
    for (const text of ['', '\n', '# nothing yet\n', '\uFEFF']) {
      expect(findings(text)).toEqual([
        {
          code: 'empty-file',
          at: '1:1',
          covers: text.slice(0, 1),
          says: 'The file holds no cell. A case starts with the header `diag: 1` and a line `case: …` with its title.',
        },
      ]);
    }
  });

  it.each([
    ['Diag: 1\ncase: A', ['unknown-kind']],
    ['diag:1\ncase: A', ['not-an-entry']],
    ['diag 1\ncase: A', ['not-an-entry']],
    ['case: A\ndiag: 1', ['kind-not-first']],
  ])('is told as misspelt, and no second header is offered: %j', (text, found) => {
    expect(codes(text)).toEqual(found);
  });

  it('tells a missing header at the first cell', () => {
    expect(findings('readings: Idle\nvalues:\n  map: 13.1 inHg\n')).toEqual([
      {
        code: 'no-header',
        at: '1:1',
        covers: 'readings: Idle',
        says: 'The first cell must be the header: `diag: 1`, then `case: …` with the title. Put it before this cell, with a line `---` between.',
      },
    ]);
  });

  it('tells a second header', () => {
    expect(findings('diag: 1\ncase: One\n---\ndiag: 1\ncase: Two\n')).toEqual([
      {
        code: 'second-header',
        at: '4:1',
        covers: 'diag',
        says: 'This is a second header. A file is one case: move its keys into the first cell, or this and what follows into a file of its own.',
      },
    ]);
  });

  it('tells another version of the format and nothing else', () => {
    expect(findings('diag: 2\ncase: One\nmood: good\n---\nhunch: air\n')).toEqual([
      {
        code: 'unknown-version',
        at: '1:7',
        covers: '2',
        says: 'This case says format `2`; this program knows format 1. Use a newer program, or write `diag: 1` if that is what it is.',
      },
    ]);
    const foreign = readCase('diag: 2\ncase: One\n---\nnote: x');
    expect(readCase('diag: 1\ncase: One\n---\nnote: x', foreign).cells[1]?.cell?.kind).toBe('note');
  });

  it('tells a header that says no version, and knows the header of a cell that it cannot read', () => {
    expect(codes('diag:\ncase: x')).toEqual(['unknown-version']);
    expect(codes('# mine\ndiag: 1\ncase: x: y\n---\nnote: z')).toEqual(['colon-in-text']);
  });

  it('tells an empty cell and content after the end mark', () => {
    expect(findings(`${header}---\nnote: x\n...\n# remark\nnote: y`)).toEqual([
      {
        code: 'empty-cell',
        at: '3:1',
        covers: '---\n',
        says: 'This cell is empty. Delete its `---` line, or write what belongs there.',
      },
      {
        code: 'content-after-end',
        at: '8:1',
        covers: 'note: y',
        says: '`note: y` stands after a line `...`, which ends the cell, and is not read. Delete the `...` line, or start a new cell with `---`.',
      },
    ]);
  });

  it('reads every other cell when one is broken', () => {
    const file = readCase(`${header}test: a\nfound: x: y\n---\nnote: z\n`);
    expect(file.cells.map((cell) => cell.cell?.kind)).toEqual(['diag', undefined, 'note']);
  });
});

describe('reading a case again', () => {
  it('keeps the cells whose text is unchanged, in their place or moved', () => {
    const text = 'diag: 1\ncase: x\n---\nnote: one\n---\nnote: two\n---\ntest: a\nfound: x: y\n';
    const before = readCase(text);
    expect(readCase(text, before).cells).toEqual(before.cells);
    for (const [index, cell] of readCase(text, before).cells.entries())
      expect(cell).toBe(before.cells[index]);
    const moved = readCase(
      'diag: 1\ncase: x\n---\nnote: two\n---\nnote: one\n---\ntest: a\nfound: x: y\n',
      before,
    );
    expect(moved.cells[1]?.tree).toBe(before.cells[2]?.tree);
    expect(moved.cells[2]?.cell).toBe(before.cells[1]?.cell);
    expect(moved.cells.slice(1)).toEqual([before.cells[2], before.cells[1], before.cells[3]]);
    expect(moved.cells[1]).toBe(before.cells[2]);
    const longer = readCase(text.replace('one', 'one and a half'), before);
    expect(longer.cells[0]).toBe(before.cells[0]);
    expect(longer.cells[2]).toBe(before.cells[2]);
    expect(longer.stream.starts[2]).toBe((before.stream.starts[2] ?? 0) + 11);
    expect(longer.cells[1]?.cell).not.toBe(before.cells[1]?.cell);
  });

  it('gives what reading it for the first time gives, after any edit', () => {
    const piece = fc.constantFrom(
      '\n---\n',
      'note: x',
      ': ',
      '"',
      '\t',
      '#',
      '- ',
      'diag: 2',
      '\n',
      '...\n',
      '<<<<<<< a\n',
    );
    fc.assert(
      fc.property(
        fc.nat(),
        fc.nat(40),
        piece,
        fc.nat(),
        fc.nat(9),
        piece,
        (at, cut, put, at2, cut2, put2) => {
          const edit = (text: string, from: number, remove: number, add: string) => {
            const place = from % (text.length + 1);
            return text.slice(0, place) + add + text.slice(place + remove);
          };
          const once = edit(exampleCase, at, cut, put);
          const twice = edit(once, at2, cut2, put2);
          const chain = readCase(twice, readCase(once, readCase(exampleCase)));
          expect(chain).toEqual(readCase(twice));
        },
      ),
      { numRuns: 300 },
    );
  });
});

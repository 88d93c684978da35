import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseAllDocuments } from 'yaml';
import {
  joinStream,
  lengthOf,
  lineBreakOf,
  type Stream,
  separatorStart,
  splitStream,
  streamOf,
} from '../../core/casefile/stream.ts';
import { suiteStreams } from './yamlSuite.ts';

const texts = (stream: Stream) => stream.cells.map((cell) => cell.text);

describe('splitting', () => {
  it('cuts at every --- line and keeps the separator and the last line break beside the text', () => {
    const stream = splitStream('# a case\n---\ndiag: 1\ncase: x\n--- # next\nnote: y\n');
    expect(stream).toEqual({
      prologue: '# a case\n',
      cells: [
        { separator: '---\n', text: 'diag: 1\ncase: x', ending: '\n' },
        { separator: '--- # next\n', text: 'note: y', ending: '\n' },
      ],
      starts: [13, 40],
    });
  });

  it('takes content before the first --- as the first cell, its comments included', () => {
    const stream = splitStream('# mine\ndiag: 1\n---\nnote: x');
    expect(stream.prologue).toBe('');
    expect(texts(stream)).toEqual(['# mine\ndiag: 1', 'note: x']);
    expect(stream.cells[0]?.separator).toBe('');
  });

  it('keeps a byte-order mark in the prologue, with or without ---', () => {
    expect(splitStream('\uFEFFdiag: 1\n').prologue).toBe('\uFEFF');
    expect(texts(splitStream('\uFEFFdiag: 1\n'))).toEqual(['diag: 1']);
    expect(splitStream('\uFEFF---\ndiag: 1\n').prologue).toBe('\uFEFF');
    expect(texts(splitStream('\uFEFF---\ndiag: 1\n'))).toEqual(['diag: 1']);
  });

  it('ends lines at LF, CRLF and CR', () => {
    expect(texts(splitStream('diag: 1\r\n---\r\nnote: x\r\n'))).toEqual(['diag: 1', 'note: x']);
    expect(texts(splitStream('diag: 1\r---\rnote: x\r'))).toEqual(['diag: 1', 'note: x']);
    expect(splitStream('a: 1\r\n---\n').cells.map((cell) => cell.ending)).toEqual(['\r\n', '']);
  });

  it('does not cut at dashes that are no separator', () => {
    for (const line of ['----', ' ---', '---x', 'a ---', '--', '- --']) {
      expect(splitStream(`a: 1\n${line}\nb: 2`).cells).toHaveLength(1);
    }
    expect(splitStream('a: |\n  ---\n  x\n---').cells).toHaveLength(2);
    expect(splitStream('a: 1\n---\tx\n').cells[1]?.separator).toBe('---\tx\n');
  });

  it('keeps what follows ... in its cell', () => {
    expect(texts(splitStream('a: 1\n...\nb: 2\n---\nc: 3'))).toEqual(['a: 1\n...\nb: 2', 'c: 3']);
  });

  it('knows empty cells and texts without any', () => {
    expect(splitStream('')).toEqual({ prologue: '', cells: [], starts: [] });
    expect(splitStream('# only\n\n...\n')).toEqual({ prologue: '# only\n\n...\n', cells: [], starts: [] });
    expect(texts(splitStream('---\n---\n\n---'))).toEqual(['', '', '']);
    expect(splitStream('%YAML 1.2\n---\na: 1').prologue).toBe('%YAML 1.2\n');
  });

  it('finds the line break that a file uses', () => {
    expect(['a', 'a\nb\r\n', 'a\r\nb\n', 'a\rb'].map(lineBreakOf)).toEqual(['\n', '\n', '\r\n', '\r']);
  });
});

describe('joining gives back every text', () => {
  it('of the YAML test suite', () => {
    for (const { id, yaml } of suiteStreams) expect(joinStream(splitStream(yaml)), id).toBe(yaml);
  });

  it('of random lines and line breaks', () => {
    const line = fc.constantFrom(
      '---',
      '--- ',
      '---\t|',
      '...',
      '# c',
      '',
      ' ',
      '\t',
      'a: b',
      '- x',
      '\uFEFF',
      '%A',
    );
    const piece = fc.oneof(line, fc.string({ unit: 'binary' }));
    const ending = fc.constantFrom('\n', '\r\n', '\r', '');
    fc.assert(
      fc.property(fc.array(fc.tuple(piece, ending)), (pieces) => {
        const text = pieces.map(([a, b]) => a + b).join('');
        const stream = splitStream(text);
        expect(joinStream(stream)).toBe(text);
        expect(lengthOf(stream)).toBe(text.length);
        for (const [index, cell] of stream.cells.entries()) {
          expect(text.startsWith(cell.text, stream.starts[index])).toBe(true);
          expect(text.startsWith(cell.separator, separatorStart(stream, index))).toBe(true);
        }
        expect(streamOf(stream.prologue, stream.cells)).toEqual(stream);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('a stream of cells of which some are others now', () => {
  const piece = fc.record({
    separator: fc.constantFrom('---\n', '--- # x\n', '---\r\n', '---'),
    text: fc.string({ maxLength: 3 }),
    ending: fc.constantFrom('\n', '\r\n', ''),
  });

  it('says the same as one that is put together from nothing', () => {
    fc.assert(
      fc.property(
        fc.array(piece, { minLength: 1, maxLength: 6 }),
        fc.array(fc.tuple(fc.nat(5), piece), { maxLength: 3 }),
        fc.constantFrom('', '# c\n'),
        fc.constantFrom('', '# c\n'),
        (cells, changes, prologue, later) => {
          const now = [...cells];
          for (const [at, each] of changes) if (at < now.length) now[at] = each;
          expect(streamOf(later, now, streamOf(prologue, cells))).toEqual(streamOf(later, now));
        },
      ),
    );
  });
});

/**
 * Streams of the suite that are cut on purpose at other places than YAML does:
 * a case's cells are marked by `---` alone, so `...` neither starts a cell nor makes one.
 */
const otherwise: Record<string, string> = {
  '7Z25': 'content after ... without ---',
  M7A3: 'content after ... without ---',
  HWV9: 'a lone ... holds nothing',
  QT73: 'a comment and a lone ... hold nothing',
};

describe('boundaries', () => {
  it('are those that the yaml package finds in the valid streams of the YAML test suite', () => {
    const differing: string[] = [];
    let compared = 0;
    for (const { id, yaml, invalid } of suiteStreams) {
      if (invalid) continue;
      compared++;
      const documents = parseAllDocuments(yaml, { logLevel: 'silent' });
      const theirs = 'empty' in documents ? [] : documents.map((document) => document.range[0]);
      // A document without --- starts for the yaml package after the comments above it.
      const stream = splitStream(yaml);
      const ours = stream.cells.map(({ separator }, index) => {
        const start = separatorStart(stream, index);
        return separator === '' ? (theirs[index] ?? start) : start;
      });
      if (ours.join() !== theirs.join()) differing.push(id);
    }
    expect(compared).toBeGreaterThan(200);
    expect(differing.sort()).toEqual(Object.keys(otherwise).sort());
  });
});

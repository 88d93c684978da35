import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newCell, newNote, noteMarkdown, writeNote } from '../../core/casefile/writeNote.ts';
import { cellOf } from './found.ts';

function shown(text: string): string {
  const { cell, diagnostics } = cellOf(text);
  expect(diagnostics, text).toEqual([]);
  if (cell?.kind !== 'note') throw new Error('no note');
  return noteMarkdown(cell);
}

const rewritten = (text: string, markdown: string, lineBreak = '\n') =>
  writeNote(cellOf(text), markdown, lineBreak);

describe('a note', () => {
  it('is shown decoded', () => {
    expect(shown('note: |\n  # Heading\n\n  - one\n  - two\n\n')).toBe('# Heading\n\n- one\n- two');
    expect(shown('note: "a: b # c"')).toBe('a: b # c');
    expect(shown('note: >\n  one\n  two\nfor: teacher')).toBe('one two');
    expect(shown('note: |\r\n  one\r\n  two')).toBe('one\ntwo');
    expect(shown('note:')).toBe('');
  });

  it('whose words did not change is written as it stood', () => {
    for (const text of [
      'note: >-\n    one\n    two  # kept\n\n# end',
      'note: "one"   # remark',
      'note: |2\n   one\nfor: teacher',
      "note: 'one'",
    ]) {
      expect(rewritten(text, shown(text))).toBe(text);
      expect(rewritten(text, `${shown(text)}\r\n\r\n`)).toBe(text);
    }
  });

  it('whose words changed keeps everything else', () => {
    expect(rewritten('# top\nnote: |  # remark\n  one\n\n# end\nfor: teacher', 'two\n\n- three')).toBe(
      '# top\nnote: |  # remark\n  two\n\n  - three\n\n# end\nfor: teacher',
    );
    expect(rewritten('note: one   # remark\nfor: teacher', 'two')).toBe(
      'note: |   # remark\n  two\nfor: teacher',
    );
    expect(rewritten('note: "one"', 'two\nthree', '\r\n')).toBe('note: |\r\n  two\r\n  three');
    expect(rewritten('note: one\nfor: teacher', '')).toBe('note:\nfor: teacher');
    expect(rewritten('{note: one, for: teacher}', 'a "b"')).toBe('{note: "a \\"b\\"", for: teacher}');
  });

  it('can be written new', () => {
    expect(newNote('# Heading\n\nWords.\n', '\n')).toBe('note: |\n  # Heading\n\n  Words.');
    expect(newNote('    code', '\r\n')).toBe('note: |2\r\n      code');
    expect(newNote('', '\n')).toBe('note:');
    expect(newCell('note: x', '\r\n')).toEqual({ separator: '---\r\n', text: 'note: x', ending: '\r\n' });
  });

  it('reads back as it was written', () => {
    const piece = fc.constantFrom(
      'a',
      ' ',
      '\n',
      '\n\n',
      '# ',
      '- ',
      ': ',
      '"',
      '\t',
      '---',
      '...',
      '|',
      '>',
      "'",
      '\\',
      '{',
      '%',
      '&',
      '<<<<<<<',
      '=======',
    );
    const before = fc.constantFrom(
      'note: x',
      'note: |\n  x\nfor: teacher',
      'note: "x"  # y',
      'note:\nfor: student',
      '{note: x}',
      'note: >-\n  a\n  b\n\n# z',
    );
    fc.assert(
      fc.property(
        before,
        fc.array(piece, { maxLength: 12 }),
        fc.constantFrom('\n', '\r\n', '\r'),
        (text, pieces, lineBreak) => {
          const markdown = pieces.join('');
          const written = rewritten(text.replaceAll('\n', lineBreak), markdown, lineBreak);
          const { cell } = cellOf(written);
          expect(cell?.kind === 'note' ? noteMarkdown(cell) : written).toBe(
            markdown.replace(/(?:^|\n)[ \t\n]*$/, ''),
          );
        },
      ),
      { numRuns: 3000 },
    );
  });
});

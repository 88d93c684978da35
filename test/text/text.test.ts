import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../core/text/edits.ts';
import { lineIndex, offsetAt, positionAt } from '../../core/text/lines.ts';
import { nearest } from '../../core/text/nearest.ts';
import { contains, cover, shift, span } from '../../core/text/span.ts';

const texts = fc.string({ unit: fc.constantFrom('a', '\n', '\r', '\r\n', 'é', '😀', ' ') });

describe('lines', () => {
  it('end at LF, CR and CRLF, and count from 1', () => {
    const index = lineIndex('a\r\nb\rc\nd');
    expect(index.starts).toEqual([0, 3, 5, 7]);
    expect(positionAt(index, 3)).toEqual({ line: 2, column: 1 });
    expect(positionAt(index, 8)).toEqual({ line: 4, column: 2 });
    expect(positionAt(index, 99)).toEqual({ line: 4, column: 2 });
  });

  it('count as many as there are breaks, with and without CR', () => {
    fc.assert(
      fc.property(texts, (text) => {
        expect(lineIndex(text).starts.length).toBe(text.split(/\r\n|\r|\n/).length);
      }),
    );
  });

  it('lead from an offset to its position and back', () => {
    fc.assert(
      fc.property(texts, fc.nat(40), (text, at) => {
        const offset = Math.min(at, text.length);
        const index = lineIndex(text);
        expect(offsetAt(index, positionAt(index, offset))).toBe(offset);
      }),
    );
  });

  it('hold places outside the text at its ends', () => {
    const index = lineIndex('one\ntwo');
    expect(offsetAt(index, { line: 0, column: 1 })).toBe(0);
    expect(offsetAt(index, { line: 9, column: 1 })).toBe(7);
    expect(offsetAt(index, { line: 1, column: 99 })).toBe(4);
  });
});

describe('edits', () => {
  it('are applied together, in whatever order they come', () => {
    const edits = [
      { span: span(4, 7), newText: 'kPa' },
      { span: span(0, 3), newText: '101' },
    ];
    expect(applyEdits('101 inHg'.replace('inHg', 'psi'), edits)).toBe('101 kPa');
    expect(applyEdits('ab', [{ span: span(1, 1), newText: '-' }])).toBe('a-b');
  });
});

describe('spans', () => {
  it('shift, cover and contain', () => {
    expect(shift(span(1, 3), 10)).toEqual({ start: 11, end: 13 });
    expect(cover(span(5, 6), span(1, 3))).toEqual({ start: 1, end: 6 });
    expect(contains(span(1, 3), 3)).toBe(true);
    expect(contains(span(1, 3), 4)).toBe(false);
  });
});

describe('the nearest word', () => {
  it.each([
    ['inhg', ['inHg', 'kPa', 'psi'], ['inHg']],
    ['mpa', ['map', 'maf', 'rpm'], ['map']],
    ['ruled out', ['ruled out if', 'predicts'], ['ruled out if']],
    ['zzz', ['map', 'maf'], []],
    ['toString', ['map'], []],
  ])('of %s', (word, candidates, expected) => {
    expect(nearest(word, candidates)).toEqual(expected);
  });

  it('does not take long over a long word', () => {
    expect(nearest('x'.repeat(100_000), ['y'.repeat(100_000)])).toEqual([]);
  });
});

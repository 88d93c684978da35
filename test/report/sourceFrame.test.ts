import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sourceFrame } from '../../core/report/sourceFrame.ts';
import { lineIndex } from '../../core/text/lines.ts';
import { span } from '../../core/text/span.ts';

const frameOf = (text: string, start: number, end: number) =>
  sourceFrame(text, lineIndex(text), span(start, end));

describe('the line of a finding', () => {
  it('is cut in three at the span', () => {
    expect(frameOf('a: 1\r\nmap: 101 inHg\r\n', 11, 19)).toEqual({
      line: 2,
      column: 6,
      before: 'map: ',
      marked: '101 inHg',
      after: '',
    });
  });

  it('is marked to its end when the span goes on', () => {
    expect(frameOf('a: |\n  b\n  c\n', 3, 12)).toEqual({
      line: 1,
      column: 4,
      before: 'a: ',
      marked: '|',
      after: '',
    });
  });

  it('can stand at the end of the file, and in an empty one', () => {
    expect(frameOf('a', 1, 1)).toEqual({ line: 1, column: 2, before: 'a', marked: '', after: '' });
    expect(frameOf('', 0, 5)).toEqual({ line: 1, column: 1, before: '', marked: '', after: '' });
  });

  it('shows a long line around the place only', () => {
    const text = `${'x'.repeat(5000)}HERE${'y'.repeat(5000)}`;
    const { before, marked, after, column } = frameOf(text, 5000, 5004);
    expect(column).toBe(5001);
    expect([before.length, marked, after.length]).toEqual([61, 'HERE', 61]);
  });

  it('joins to the line again, whatever the text and the span', () => {
    const text = fc.string({
      unit: fc.constantFrom('a', ' ', '\n', '\r\n', '\t', '漢', '😀'),
      maxLength: 60,
    });
    fc.assert(
      fc.property(text, fc.nat(80), fc.nat(80), (source, a, b) => {
        const { line, before, marked, after } = frameOf(source, Math.min(a, b), Math.max(a, b));
        expect(before + marked + after).toBe(source.split(/\r\n|\n/)[line - 1]);
      }),
    );
  });
});

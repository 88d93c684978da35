import { describe, expect, it } from 'vitest';
import type { FindingLine } from '../../core/report/blocks.ts';
import { paintFor } from '../../extension/cli/color.ts';
import { displayWidth, withoutTabs } from '../../extension/cli/displayWidth.ts';
import { writeFinding } from '../../extension/cli/frame.ts';

const plain = await paintFor(false);

const finding = (
  before: string,
  marked: string,
  after = '',
  change: Partial<FindingLine> = {},
): FindingLine => ({
  kind: 'finding',
  severity: 'error',
  code: 'unit-slip',
  message: '`map` cannot be 101 inHg.',
  line: 21,
  column: before.length + 1,
  frame: { before, marked, after },
  offers: [],
  ...change,
});

describe('a finding in the terminal', () => {
  it('shows the line, carets under the place, what is offered, and where it is', () => {
    const text = writeFinding(finding('  map: ', '101 inHg', ' # odd', { offers: ['Write 101 kPa'] }), plain);
    expect(text).toBe(
      [
        '  ✗ Error. `map` cannot be 101 inHg.',
        '   21 |   map: 101 inHg # odd',
        '      |        ^^^^^^^^',
        '    Offered: Write 101 kPa.',
        '    line 21, column 8, unit-slip',
        '',
      ].join('\n'),
    );
  });

  it('puts the carets right behind tabs and wide characters', () => {
    const lines = writeFinding(finding('\t漢字: é', 'がx'), plain).split('\n');
    // A tab to column 8, two wide characters, ": é" with a combining accent: 8 + 4 + 3 columns.
    expect(lines[2]).toBe(`      | ${' '.repeat(15)}^^^`);
  });

  it('points at an empty place with one caret', () => {
    expect(writeFinding(finding('map:', ''), plain)).toContain('      |     ^\n');
  });

  it('takes one line when it is only for information', () => {
    expect(writeFinding(finding('', 'x', '', { severity: 'info', code: 'unusual-value' }), plain)).toBe(
      '  · Note. `map` cannot be 101 inHg. line 21, column 1, unusual-value\n',
    );
  });

  it('lets nothing in a file command the terminal', () => {
    const text = writeFinding(
      finding('\u001b[2J', '\u009b31m', '\u202e', { message: 'a\u001b]0;x\u0007' }),
      plain,
    );
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be there
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/);
  });
});

describe('colours', () => {
  it('stand on a terminal beside the sign and the word', async () => {
    const painted = await paintFor(true);
    const text = writeFinding(finding('', 'x'), painted);
    expect(text).toContain('\u001b[');
    expect(text).toContain('✗ Error.');
  });

  it.each([
    ['NO_COLOR', '1'],
    ['TERM', 'dumb'],
  ])('are off where %s=%s', async (name, value) => {
    const before = process.env[name];
    process.env[name] = value;
    try {
      expect(writeFinding(finding('', 'x'), await paintFor(true))).not.toContain('\u001b[');
    } finally {
      if (before === undefined) delete process.env[name];
      else process.env[name] = before;
    }
  });

  it('are off where nobody sees them', async () => {
    expect(writeFinding(finding('', 'x'), await paintFor(false))).not.toContain('\u001b[');
  });
});

describe('the columns of a text', () => {
  // Unicode Standard Annex 11: W and F take two, combining marks none.
  it.each([
    ['map', 3],
    ['°CΩ±', 4],
    ['漢字', 4],
    ['かな', 4],
    ['한글', 4],
    ['ｆｕｌｌ', 8],
    ['e\u0301', 1],
    ['😀', 2],
    ['a\u200bb', 2],
    ['', 0],
  ])('%j takes %d', (text, columns) => {
    expect(displayWidth(text)).toBe(columns);
  });

  it('sees tabs to the next eighth column', () => {
    expect(withoutTabs('\ta\tb', 0)).toBe(`${' '.repeat(8)}a${' '.repeat(7)}b`);
    expect(withoutTabs('\ta', 3)).toBe(`${' '.repeat(5)}a`);
  });
});

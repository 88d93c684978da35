import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FindingLine } from '../../core/report/blocks.ts';
import { paintFor } from '../../extension/cli/color.ts';
import { displayWidth, withoutTabs } from '../../extension/cli/displayWidth.ts';
import { writeFinding, writeNotes } from '../../extension/cli/frame.ts';
import { wrap } from '../../extension/cli/wrap.ts';

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
    const text = writeFinding(
      finding('  map: ', '101 inHg', ' # odd', { offers: ['Write 101 kPa'] }),
      plain,
      100,
    );
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
    const lines = writeFinding(finding('\t漢字: é', 'がx'), plain, 100).split('\n');
    // A tab to column 8, two wide characters, ": é" with a combining accent: 8 + 4 + 3 columns.
    expect(lines[2]).toBe(`      | ${' '.repeat(15)}^^^`);
  });

  it('points at an empty place with one caret', () => {
    expect(writeFinding(finding('map:', ''), plain, 100)).toContain('      |     ^\n');
  });

  it('goes on below its first words where the page ends, and keeps a number with its unit', () => {
    const message =
      'The trim of bank 1 is +25 % at warm idle and +4 % at cruise; here it is 172 ± 3 psi, no less.';
    const text = writeFinding(
      finding('', 'x', '', { message, offers: ['Write 101 kPa', 'Write 101 psi'] }),
      plain,
      40,
    );
    expect(text).toBe(
      [
        '  ✗ Error. The trim of bank 1 is +25 %',
        '    at warm idle and +4 % at cruise;',
        '    here it is 172 ± 3 psi, no less.',
        '   21 | x',
        '      | ^',
        '    Offered: Write 101 kPa; Write',
        '      101 psi.',
        '    line 21, column 1, unit-slip',
        '',
      ].join('\n'),
    );
  });

  it('is counted, and told in a line with its place, when it is only for information', () => {
    const note = (line: number): FindingLine =>
      finding('', 'x', '', { severity: 'info', code: 'unusual-value', line });
    expect(writeNotes([], plain, 100)).toBe('');
    expect(writeNotes([note(8), note(112)], plain, 100)).toBe(
      [
        '  2 notes',
        '    line 8    `map` cannot be 101 inHg. (unusual-value)',
        '    line 112  `map` cannot be 101 inHg. (unusual-value)',
        '',
      ].join('\n'),
    );
    expect(writeNotes([note(8)], plain, 40)).toBe(
      ['  1 note', '    line 8  `map` cannot be 101 inHg.', '            (unusual-value)', ''].join('\n'),
    );
  });

  it('lets nothing in a file command the terminal', () => {
    const text = writeFinding(
      finding('\u001b[2J', '\u009b31m', '\u202e', { message: 'a\u001b]0;x\u0007' }),
      plain,
      100,
    );
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be there
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/);
  });
});

describe('colours', () => {
  it('stand on a terminal beside the sign and the word', async () => {
    const painted = await paintFor(true);
    const text = writeFinding(finding('', 'x'), painted, 100);
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
      expect(writeFinding(finding('', 'x'), await paintFor(true), 100)).not.toContain('\u001b[');
    } finally {
      if (before === undefined) delete process.env[name];
      else process.env[name] = before;
    }
  });

  it('are off where nobody sees them', async () => {
    expect(writeFinding(finding('', 'x'), await paintFor(false), 100)).not.toContain('\u001b[');
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

  it('takes the shorter way only where the long one says one column', () => {
    const other =
      /[\p{Mn}\p{Me}\p{Cf}\p{Emoji_Presentation}\p{Script=Han}\p{Script=Hangul}\p{Script=Hiragana}\p{Script=Katakana}]/u;
    const wide: string[] = [];
    for (let code = 0x300; code < 0x10000; code++) {
      const character = String.fromCodePoint(code);
      if (other.test(character) && displayWidth(character) === 1) wide.push(code.toString(16));
    }
    expect(wide).toEqual([]);
    expect([...'✓✗≈–…→−×°'].map(displayWidth)).toEqual([1, 1, 1, 1, 1, 1, 1, 1, 1]);
  });

  it('sees tabs to the next eighth column', () => {
    expect(withoutTabs('\ta\tb', 0)).toBe(`${' '.repeat(8)}a${' '.repeat(7)}b`);
    expect(withoutTabs('\ta', 3)).toBe(`${' '.repeat(5)}a`);
  });
});

describe('a paragraph in the terminal', () => {
  it('never has a line wider than the page, but for a word that is', () => {
    const words = fc.string({
      unit: fc.constantFrom('a', '漢', 'e\u0301', '7', '.', '%'),
      minLength: 1,
      maxLength: 9,
    });
    fc.assert(
      fc.property(
        fc.array(words, { minLength: 1, maxLength: 40 }),
        fc.integer({ min: 30, max: 60 }),
        (list, width) => {
          const text = list.map((word) => `x${word}x`).join(' ');
          const lines = wrap(text, width, '  first: ', 4).split('\n');
          expect(lines.pop()).toBe('');
          for (const line of lines) expect(displayWidth(line)).toBeLessThanOrEqual(width);
          expect(lines.join(' ').replace(/ +/g, ' ')).toBe(` first: ${text}`);
        },
      ),
    );
  });

  it('gives no room to what paints', async () => {
    const painted = await paintFor(true);
    const text = `${painted.good('holds')} and so on and on`;
    // biome-ignore lint/suspicious/noControlCharactersInRegex: it is what paints
    const bare = wrap(text, 20, '', 2).replace(/\u001b\[\d+m/g, '');
    expect(bare).toBe(wrap('holds and so on and on', 20, '', 2));
  });
});

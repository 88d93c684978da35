import { describe, expect, it } from 'vitest';
import { writeNote } from '../../core/report/html/note.ts';
import { blockAsMarkdown } from '../../core/report/markdown/blocks.ts';
import { codeSpan, escapeMarkdown } from '../../core/report/markdown/escape.ts';
import { proseAsMarkdown } from '../../core/report/markdown/prose.ts';
import { outlineDepths } from '../../core/report/outline.ts';
import { samplePage } from './samplePage.ts';

const blocks = samplePage.sections.flatMap((section) => section.blocks);
const written = blocks.map((block) => blockAsMarkdown(block, 2));

describe('text in Markdown', () => {
  it.each([
    '*soft* _too_ `code` [a](b) <b>x</b> # | ~ & !',
    '- not a list',
    '1. not a list',
    '+ not a list',
    '= not a heading',
    'a\\b',
  ])('reads as it stands: %s', (text) => {
    const html = writeNote(escapeMarkdown(text), 1);
    const seen = html
      .replace(/<\/?p>|\n$/g, '')
      .replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&amp;', '&')
      .trim();
    expect(seen).toBe(text);
  });

  it.each(['a ` b', '`', '``x``', 'trims.idle > trims.fast'])('code reads as it stands: %s', (text) => {
    expect(writeNote(codeSpan(text), 1)).toBe(`<p><code>${text.replace('>', '&gt;')}</code></p>\n`);
  });
});

describe('a table in Markdown', () => {
  it('has units in their own column and the other system below each figure', () => {
    expect(written.find((text) => text.includes('Engine speed'))).toBe(
      [
        '| reading | idle | fast | drive | unit | remarks |',
        '| --- | ---: | ---: | ---: | --- | --- |',
        '| Engine speed `rpm` | 780 | 2500 | 2240 | rpm |  |',
        '| Intake manifold pressure `map` | 13.1 | 9.8 | 17.0 | inHg absolute |  |',
        '|  | 44.4 | 33.2 | 57.6 | kPa |  |',
        '| Long-term fuel trim, bank 1 `ltft_b1` | 17 | 6 | -3 | % | usual at warm idle: -10 .. 10 % (common practice) |',
        '| Idle air control `iac` | 3 | 11 | not taken | % |  |',
      ].join('\n'),
    );
  });

  it('has the other system beside a single column', () => {
    const lines = written.find((text) => text.includes('Manifold vacuum'))?.split('\n');
    expect(lines?.[2]).toBe(
      '| Manifold vacuum `vacuum` | 14.4 ± 0.2 | inHg vacuum | 48.76 ± 0.68 | kPa | at brake booster port; steady; with gauge; usual at warm idle: 17 .. 22 inHg (common practice) |',
    );
  });
});

describe('verdicts, suspects and findings in Markdown', () => {
  it('are the same sentences', () => {
    expect(written).toContain(
      '✗ `idle between -10 % and 10 %`  \n25 %, 15 % outside -10 .. 10 %: **fails**, and shows the fault as the author means it to.  \n*If it fails:* Look for unmetered air before fuel.  \nfrom `before.idle.stft_b1`, `before.idle.ltft_b1`',
    );
    expect(written).toContain(
      '✗ **weak fuel supply**: ruled out.  \n*Against it:* it predicts `trims.fast > trims.idle`, which fails (8 %, 17 % below the limit of 25 %).  \n*Missing:* it predicts `fuel_pressure < 45 psi`, not measured.',
    );
    expect(written.find((text) => text.startsWith('**✗ Error.'))).toContain('```text\n  map: 101 inHg\n```');
  });
});

describe('an author’s Markdown inside another text', () => {
  it('keeps its words, sets its headings lower, and fetches nothing', () => {
    expect(
      proseAsMarkdown(
        '## How\n\n<img src=x> ![a](https://example.org/x.png) `<b>`\n\n```\n# code <b>\n```\n\n# More',
        1,
      ),
    ).toBe(
      '## How\n\n&lt;img src=x> \\![a](https://example.org/x.png) `<b>`\n\n```\n# code <b>\n```\n\n## More',
    );
  });
});

describe('an outline', () => {
  it.each([
    [
      [1, 2, 3, 1],
      [1, 2, 3, 1],
    ],
    [
      [2, 4, 4, 2],
      [1, 2, 2, 1],
    ],
    [
      [6, 3, 6, 1],
      [1, 1, 2, 1],
    ],
    [[], []],
  ])('%j lies %j deep', (levels, depths) => {
    expect(outlineDepths(levels)).toEqual(depths);
  });
});

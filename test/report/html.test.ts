import { describe, expect, it } from 'vitest';
import type { Block, CasePage, Strip, Table } from '../../core/report/blocks.ts';
import { writeCase } from '../../core/report/html/caseSection.ts';
import { escapeHtml } from '../../core/report/html/escape.ts';
import { writeMarkup } from '../../core/report/html/markup.ts';
import { writeNote } from '../../core/report/html/note.ts';
import { writePage } from '../../core/report/html/page.ts';
import { style } from '../../core/report/html/style.ts';
import { stripMarkup } from '../../core/report/markup/strip.ts';
import { tableMarkup } from '../../core/report/markup/table.ts';
import { samplePage } from './samplePage.ts';

const writeTable = (table: Table): string => writeMarkup(tableMarkup(table));
const writeStrip = (strip: Strip): string => writeMarkup(stripMarkup(strip));

const page = writePage(samplePage.title, `<main>${writeCase(samplePage, 'case-1', 1)}</main>`);

/** Text as a reader sees it: no tags, nothing hidden, entities read. */
function seen(html: string): string {
  return html
    .replace(/<style>.*<\/style>/s, '')
    .replace(/<span class="pad"[^>]*>[^<]*<\/span>/g, '')
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&')
    .replace(/\s+/g, ' ');
}

describe('a page asks nothing of the net and runs nothing', () => {
  it('has no script, no link to a style, no address but within itself', () => {
    expect(page).not.toMatch(/<script|<link|<iframe|<object|<embed|@import|\son\w+=/i);
    const addresses = [...page.matchAll(/(?:href|src|srcset|action)="([^"]*)"/g)].map(
      (match) => match[1] ?? '',
    );
    expect(addresses.length).toBeGreaterThan(0);
    expect(
      addresses.filter((address) => !/^(#|data:image\/(png|jpeg|gif|webp);base64,)/.test(address)),
    ).toEqual([]);
    expect(style).not.toMatch(/url\(/);
  });

  it('tells the browser so', () => {
    expect(page).toContain("default-src 'none'; style-src 'unsafe-inline'; img-src data:");
  });
});

describe('long code in a table', () => {
  it('may go on in the next line behind a point, a comma or an opening bracket, never inside a number', () => {
    const code = 'mean(before.map,1.25 kPa) / f(g(), "E10")';
    const row = {
      name: 'fuel_in_tank',
      key: undefined,
      figures: [{ number: '1', plusMinus: undefined, words: undefined }],
      unit: '',
      other: undefined,
      remarks: [[{ code }]],
      strips: [],
    };
    const html = writeTable({ kind: 'table', caption: '', rowsAre: 'computed', columns: [], rows: [row] });
    expect(html).toContain('<code>mean(<wbr>before.<wbr>map,1.25 kPa) / f(<wbr>g(), &quot;E10&quot;)</code>');
    expect(html).toContain('fuel_<wbr>in_<wbr>tank');
    expect(html.replaceAll('<wbr>', '')).toContain(`<code>${escapeHtml(code)}</code>`);
  });
});

describe('a page reads in order', () => {
  it('has one first heading and skips no level', () => {
    const levels = [...page.matchAll(/<h([1-6])/g)].map((match) => Number(match[1]));
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    levels.reduce((before, level) => {
      expect(level - before).toBeLessThanOrEqual(1);
      return level;
    }, 0);
  });

  it('closes every element that it opens', () => {
    const open: string[] = [];
    for (const [tag, closing, name = ''] of page
      .replace(/<!doctype html>/, '')
      .matchAll(/<(\/?)([a-z][a-z0-9]*)[^>]*>/g)) {
      if (/^(meta|img|br|hr|wbr)$/.test(name) || tag.endsWith('/>')) continue;
      if (closing === '') open.push(name);
      else expect(open.pop()).toBe(name);
    }
    expect(open).toEqual([]);
  });

  it('gives no id twice, and every link within the page leads somewhere', () => {
    const ids = [...page.matchAll(/ id="([^"]*)"/g)].map((match) => match[1]);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, target] of page.matchAll(/(?:href="#|aria-labelledby=")([^"]*)"/g))
      expect(ids).toContain(target);
  });

  it('names its language, and every picture and drawing in words', () => {
    expect(page).toContain('<html lang="en">');
    for (const [tag] of page.matchAll(/<img[^>]*>/g)) expect(tag).toMatch(/ alt="[^"]+"/);
    for (const [tag] of page.matchAll(/<svg[^>]*>/g)) expect(tag).toMatch(/role="img" aria-label="[^"]+"/);
  });

  it('says for each table cell what it belongs to', () => {
    for (const [row] of page.matchAll(/<thead>.*?<\/thead>/gs)) {
      expect(row.match(/<th /g)?.length).toBe(row.match(/scope="col"/g)?.length);
    }
    for (const [body] of page.matchAll(/<tbody>.*?<\/tbody>/gs)) expect(body).toContain('scope="row"');
  });
});

describe('verdicts are sentences with a word and a sign', () => {
  it('says what was measured, how far from the limit, and whether it holds', () => {
    expect(seen(page)).toContain(
      '✓ baro_seen within 0.5 inHg of koeo.map 29.5 ± 0.2 inHg, 0.4 inHg inside 0.5 inHg of 29.6 inHg: holds .',
    );
  });

  it('says what to do when it fails, and that the author means it to', () => {
    expect(seen(page)).toContain(
      '✗ idle between -10 % and 10 % 25 %, 15 % outside -10 .. 10 %: fails , and shows the fault as the author means it to. If it fails Look for unmetered air before fuel.',
    );
  });

  it('says for and against a suspect', () => {
    expect(seen(page)).toContain(
      'weak fuel supply : ruled out. Against it it predicts trims.fast > trims.idle , which fails (8 %, 17 % below the limit of 25 %). Missing it predicts fuel_pressure < 45 psi , not measured.',
    );
  });

  it('shows a finding with its line, its place marked', () => {
    expect(page).toContain('<span class="ln">21  </span>  map: <mark>101 inHg</mark>');
    expect(seen(page)).toContain('✗ Error. map cannot be 101 inHg');
  });
});

describe('a table', () => {
  const row = (name: string, number: string, plusMinus?: string): Table['rows'][number] => ({
    name,
    key: undefined,
    figures: [{ number, plusMinus, words: undefined }],
    unit: 'V',
    other: undefined,
    remarks: [],
    strips: [],
  });
  const table = (rows: Table['rows']): Table => ({
    kind: 'table',
    caption: '',
    rowsAre: 'reading',
    columns: [],
    rows,
  });

  it('aligns numbers at the point by unseen digits', () => {
    const html = writeTable(table([row('a', '13.85'), row('b', '0.1'), row('c', '12'), row('d', '-3')]));
    const cells = [...html.matchAll(/<td class="num">(.*?)<\/td>/g)].map((match) => match[1] ?? '');
    expect(cells).toEqual([
      '13.85',
      '0.1<span class="pad" aria-hidden="true">0</span>',
      '12<span class="pad" aria-hidden="true">.00</span>',
      '−3<span class="pad" aria-hidden="true">.00</span>',
    ]);
  });

  it('gives the half-width a column when one of its numbers has one', () => {
    const html = writeTable(table([row('a', '13.8', '0.2'), row('b', '0.1')]));
    expect(html).toContain('<td class="pm">± 0.2</td>');
    const widths = [...html.matchAll(/<tr>(.*?)<\/tr>/g)].map(([, inner = '']) =>
      [...inner.matchAll(/<t[hd]([^>]*)>/g)].reduce((sum, [, attributes = '']) => {
        return sum + Number(/colspan="(\d)"/.exec(attributes)?.[1] ?? 1);
      }, 0),
    );
    expect(new Set(widths).size).toBe(1);
  });

  it('does not align a range at its points', () => {
    const html = writeTable(table([row('a', '17 .. 22'), row('b', '0.15')]));
    expect(html).toContain('<td class="num">17 .. 22</td>');
  });

  it('sets the other system beside one column, and below each of several', () => {
    expect(seen(page)).toContain('Manifold vacuum vacuum 14.4 ± 0.2 inHg vacuum 48.76 ± 0.68 kPa');
    expect(seen(page)).toContain(
      'Intake manifold pressure map 13.1 44.4 kPa 9.8 33.2 kPa 17.0 57.6 kPa inHg absolute kPa',
    );
  });
});

describe('the strip', () => {
  const strip = { low: 17, high: 22, value: 14, plusMinus: 0.5, says: 'usual: 17 .. 22 inHg' };
  const xs = (svg: string): number[][] =>
    [...svg.matchAll(/M([\d.]+) [\d.]+[HV]([\d.]+)/g)].map((match) => [Number(match[1]), Number(match[2])]);

  it('shades the usual range and ticks the reading, to one scale', () => {
    const [, band = [], whisker = [], tick = []] = xs(writeStrip(strip));
    const [bandStart = 0, bandEnd = 0] = band;
    const scale = (bandEnd - bandStart) / (22 - 17);
    expect(bandStart - (tick[0] ?? 0)).toBeCloseTo(3 * scale, 0);
    expect((whisker[1] ?? 0) - (whisker[0] ?? 0)).toBeCloseTo(1 * scale, 0);
  });

  it('says on which side the reading lies', () => {
    expect(writeStrip(strip)).toContain('aria-label="The reading lies below the usual range."');
    expect(writeStrip({ ...strip, value: 30 })).toContain(
      'aria-label="The reading lies above the usual range."',
    );
  });

  it('runs an open end to the edge, and stays a drawing for a single number', () => {
    const [, band = []] = xs(writeStrip({ ...strip, high: undefined }));
    expect(band[1]).toBe(144);
    expect(writeStrip({ low: undefined, high: 3, value: 3, plusMinus: 0, says: '' })).not.toMatch(
      /NaN|Infinity/,
    );
  });
});

describe('what an author wrote stays text', () => {
  const hostile = `<script>alert(1)</script>"><img src=x onerror=alert(1)>'&`;

  it('in every place that takes a text', () => {
    const blocks: readonly Block[] = [
      { kind: 'paragraph', lead: hostile, runs: [hostile, { code: hostile }, { strong: hostile }] },
      { kind: 'prose', markdown: hostile },
      { kind: 'facts', rows: [{ name: hostile, runs: [hostile] }] },
      { kind: 'bullets', style: 'bullet', items: [[hostile]] },
      {
        kind: 'table',
        caption: hostile,
        rowsAre: hostile,
        columns: [hostile],
        rows: [
          {
            name: hostile,
            key: hostile,
            figures: [{ number: undefined, plusMinus: undefined, words: hostile }],
            unit: hostile,
            other: { figures: [{ number: hostile, plusMinus: hostile, words: undefined }], unit: hostile },
            remarks: [[hostile]],
            strips: [{ low: 1, high: 2, value: 3, plusMinus: 0, says: hostile }],
          },
        ],
      },
      {
        kind: 'verdict',
        text: hostile,
        sign: '✗',
        measured: hostile,
        word: hostile,
        remark: hostile,
        why: hostile,
        ifFails: hostile,
        from: [hostile],
      },
      { kind: 'picture', file: hostile, alt: hostile, dataUri: undefined, missing: hostile },
      { kind: 'caution', title: hostile, text: hostile },
      {
        kind: 'suspect',
        name: hostile,
        standing: hostile,
        sign: '–',
        for: [[hostile]],
        against: [],
        missing: [],
      },
      {
        kind: 'finding',
        severity: 'error',
        code: hostile,
        message: `${hostile} \`${hostile}\``,
        line: 1,
        column: 1,
        frame: { before: hostile, marked: hostile, after: hostile },
        offers: [hostile],
      },
      { kind: 'source', text: hostile },
    ];
    const whole: CasePage = {
      title: hostile,
      summary: [hostile],
      sections: [
        {
          number: 1,
          title: hostile,
          margin: [hostile],
          as: hostile,
          audience: hostile,
          keptBack: false,
          blocks,
        },
      ],
      answers: [{ number: 1, title: hostile, blocks: [] }],
      after: [],
    };
    const html = writePage(hostile, writeCase(whole, 'case-1', 1));
    expect(html).not.toContain('<script');
    expect(html).not.toContain('<img');
    expect(html.match(/&lt;script&gt;/g)?.length).toBeGreaterThan(30);
  });

  it('shows what would command a reader or turn a line around', () => {
    expect(escapeHtml('a\u001b[31mb\u202ec\u0000d\ud800')).toBe('a\uFFFD[31mb\uFFFDc\uFFFDd\uFFFD');
    expect(escapeHtml('13.1 ± 0.2 °C Ω 漢 😀\t\n')).toBe('13.1 ± 0.2 °C Ω 漢 😀\t\n');
  });
});

describe('a note', () => {
  it('is Markdown, its headings below those of the page', () => {
    expect(writeNote('## One\n\n###### Two\n\n# Three\n\n*soft* **loud**\n\n- item', 2)).toBe(
      '<h3>One</h3>\n<h4>Two</h4>\n<h3>Three</h3>\n<p><em>soft</em> <strong>loud</strong></p>\n<ul>\n<li>item</li>\n</ul>\n',
    );
  });

  it('keeps raw HTML as text', () => {
    expect(writeNote('<b>x</b> <script>1</script>', 1)).toBe(
      '<p>&lt;b&gt;x&lt;/b&gt; &lt;script&gt;1&lt;/script&gt;</p>\n',
    );
  });

  it.each([
    ['[a](javascript:alert%281%29)'],
    ['[a](vbscript:x)'],
    ['[a](data:text/html;base64,PHNjcmlwdD4=)'],
    ['[a](file:///etc/passwd)'],
    ['[a](//elsewhere.example/x)'],
    ['<javascript:alert(1)>'],
  ])('does not link %s', (markdown) => {
    expect(writeNote(markdown, 1)).not.toContain('<a');
  });

  it('links the web and mail', () => {
    expect(writeNote('[a](https://example.org/x)', 1)).toBe('<p><a href="https://example.org/x">a</a></p>\n');
  });

  it.each([
    ['![the gasket](https://example.org/x.png)'],
    ['![the gasket](data:image/png;base64,AAAA)'],
    ['![the gasket](x.png)'],
  ])('names a picture and does not fetch it: %s', (markdown) => {
    const html = writeNote(markdown, 1);
    expect(html).not.toContain('<img');
    expect(html).toContain('the gasket');
  });
});

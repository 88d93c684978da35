import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { blockMarkup } from '../../core/report/markup/blocks.ts';
import type { Markup } from '../../core/report/markup/markup.ts';
import type { CellResult, ResultBlock } from '../../core/service/cellResult.ts';
import { style } from '../../extension/renderer/style.ts';
import { openBrowser } from '../editor/harness/openBrowser.ts';
import { samples } from '../support/samples.ts';
import { builtRenderer, openRenderer, type PageOptions, policy, type RendererPage } from './rendererPage.ts';
import { resultsOf } from './sampleResults.ts';
import { themes } from './themes.ts';

let browser: Browser;
const opened: RendererPage[] = [];

beforeAll(async () => {
  browser = await openBrowser();
}, 120_000);

afterEach(async () => {
  for (const { page } of opened.splice(0)) await page.context().close();
});

afterAll(async () => {
  await browser?.close();
});

async function open(options?: PageOptions): Promise<RendererPage> {
  const found = await openRenderer(browser, options);
  opened.push(found);
  return found;
}

const { light } = themes;

const result = (blocks: readonly unknown[], title = 'A check'): unknown => ({
  version: 1,
  kind: 'check',
  title,
  blocks,
  markdown: '',
});
const show = (page: RendererPage['page'], id: string, content: unknown, aborted = false) =>
  page.evaluate(({ id, text, aborted }) => globalThis.host.show(id, text, aborted), {
    id,
    text: typeof content === 'string' ? content : JSON.stringify(content),
    aborted,
  });
const text = (page: RendererPage['page'], id: string) => page.evaluate((id) => globalThis.host.text(id), id);
const count = (page: RendererPage['page'], id: string, selector: string) =>
  page.evaluate(([id = '', selector = '']) => globalThis.host.count(id, selector), [id, selector]);

const sampleResults: readonly CellResult[] = [...samples.values()]
  .flatMap((each) => resultsOf(each))
  .filter((each) => each.blocks.length > 0);

const verdict = {
  kind: 'verdict',
  text: 'gauged.vacuum in spec.vacuum',
  sign: '✗',
  measured: '16.7 ± 0.2 inHg, 1.3 inHg outside 18 .. 21 inHg',
  word: 'fails',
  ifFails: 'Look for air behind the meter.',
  from: ['spec.vacuum'],
};

describe('under a policy that allows nothing', () => {
  it('shows every result of every sample without a request, an error or a violation', async () => {
    const { page, requests, errors } = await open();
    await page.evaluate((theme) => globalThis.host.theme(theme), light);
    for (const [at, each] of sampleResults.entries()) await show(page, `r${at}`, each);
    expect(sampleResults.length).toBeGreaterThan(100);
    for (const [at, each] of sampleResults.entries()) {
      expect(plain(await text(page, `r${at}`)), each.title).toBe(plain(wordsOf(each.blocks)));
    }
    expect(errors).toEqual([]);
    expect(await page.evaluate(() => globalThis.host.violations)).toEqual([]);
    expect(requests.map((each) => each.slice('http://renderer.test'.length))).toEqual([
      '/',
      '/host.js',
      '/renderer.js',
    ]);
  });

  it('which does stop eval, requests, styles and HTML', async () => {
    const { page, errors } = await open();
    const tried = await page.evaluate(() => globalThis.host.tryForbidden());
    expect(tried).toEqual(['eval', 'Function', 'fetch', 'image', 'style', 'innerHTML']);
    expect(errors.length).toBeGreaterThan(0);
    expect(policy(true)).not.toMatch(/unsafe|\*/);
  });

  it('lets nothing of a case become an element or a script', async () => {
    const { page, requests, errors } = await open();
    const before = requests.length;
    const hostile =
      '<img src=http://renderer.test/x onerror="alert(1)"><script>alert(1)</script>`<b>`</code>';
    const runs = [hostile, { code: hostile }, { strong: hostile }];
    await show(
      page,
      'h',
      result(
        [
          { kind: 'paragraph', lead: hostile, runs },
          { kind: 'caution', title: hostile, text: hostile },
          {
            ...verdict,
            text: hostile,
            measured: hostile,
            sign: hostile,
            remark: hostile,
            why: hostile,
            ifFails: hostile,
            from: [hostile],
          },
          {
            kind: 'suspect',
            name: hostile,
            standing: hostile,
            sign: hostile,
            for: [runs],
            against: [runs],
            missing: [runs],
          },
          {
            kind: 'finding',
            severity: 'error',
            code: hostile,
            message: hostile,
            line: 1,
            column: 1,
            frame: { before: hostile, marked: hostile, after: hostile },
            offers: [hostile],
          },
          {
            kind: 'table',
            caption: hostile,
            rowsAre: hostile,
            columns: [hostile],
            rows: [
              {
                name: hostile,
                key: hostile,
                unit: hostile,
                figures: [{ number: hostile, plusMinus: hostile }],
                other: { unit: hostile, figures: [{ words: hostile }] },
                remarks: [runs],
                strips: [{ low: 1, high: 2, value: 3, plusMinus: 0, says: hostile }],
              },
            ],
          },
        ],
        hostile,
      ),
    );
    expect(await count(page, 'h', 'img, script, b, a, iframe, [onerror]')).toBe(0);
    expect((await text(page, 'h')).split('<script>alert(1)</script>').length).toBeGreaterThan(20);
    expect(requests.length).toBe(before);
    expect(errors).toEqual([]);
  });

  it('shows no characters that turn a line round', async () => {
    const { page } = await open();
    await show(page, 'h', result([{ kind: 'paragraph', runs: ['12 \u202e51\u0000'] }]));
    expect(plain(await text(page, 'h'))).toBe('12 \ufffd51\ufffd');
  });
});

describe('what it is given', () => {
  it.each([
    ['no JSON', '{', 'This result cannot be read. Run the cell to compute it again.'],
    ['nothing', 'null', 'This result was made by another version. Run the cell to compute it again.'],
    [
      'a later version',
      '{"version":2,"title":"","blocks":[]}',
      'This result was made by another version. Run the cell to compute it again.',
    ],
  ])('may be %s', async (_, content, says) => {
    const { page, errors } = await open();
    await show(page, 'a', content);
    expect(await text(page, 'a')).toBe(says);
    expect(errors).toEqual([]);
  });

  it('may hold blocks that are new or broken: the others still stand', async () => {
    const { page, errors } = await open();
    await show(
      page,
      'a',
      result([{ kind: 'hologram' }, null, 5, { kind: 'table' }, { kind: 'constructor' }, verdict]),
    );
    expect(plain(await text(page, 'a'))).toBe(
      'A part of this result (table) cannot be shown. ✗ gauged.vacuum in spec.vacuum 16.7 ± 0.2 inHg, 1.3 inHg outside 18 .. 21 inHg: fails. If it fails Look for air behind the meter. from spec.vacuum',
    );
    expect(errors).toEqual([]);
  });

  it('replaces what stood there, goes when disposed of, and does not come when called off', async () => {
    const { page, errors } = await open();
    await show(page, 'a', result([verdict]));
    await show(page, 'a', result([{ ...verdict, word: 'holds' }]));
    expect(await count(page, 'a', '.verdict')).toBe(1);
    expect(await text(page, 'a')).toContain('holds');
    await show(page, 'a', result([verdict, verdict]), true);
    expect(await count(page, 'a', '.verdict')).toBe(1);
    await show(page, 'b', result([verdict]));
    await page.evaluate(() => globalThis.host.dispose('a'));
    expect([await text(page, 'a'), await count(page, 'b', '.verdict')]).toEqual(['', 1]);
    await show(page, 'c', result([verdict]));
    await page.evaluate(() => globalThis.host.dispose());
    expect([await count(page, 'b', '*'), await count(page, 'c', '*')]).toEqual([0, 0]);
    await page.evaluate(() => globalThis.host.dispose('never shown'));
    await show(page, 'b', result([verdict]));
    expect(await count(page, 'b', '.verdict')).toBe(1);
    expect(errors).toEqual([]);
  });
});

describe('for everyone', () => {
  it.each(Object.entries(themes))('axe-core finds nothing in %s', async (_, theme) => {
    const { page, errors } = await open({ trustedTypes: false, width: 700 });
    await page.evaluate((theme) => globalThis.host.theme(theme), theme);
    for (const [at, each] of mostDifferent().entries()) await show(page, `r${at}`, each);
    expect(await page.evaluate(() => globalThis.host.barriers())).toEqual([]);
    expect(errors).toEqual([]);
  });

  it('axe-core does look inside: it finds a text that is too faint', async () => {
    const { page } = await open({ trustedTypes: false });
    const faint = {
      ...light.variables,
      '--vscode-editor-foreground': '#cccccc',
      '--vscode-descriptionForeground': '#dddddd',
    };
    await page.evaluate((theme) => globalThis.host.theme(theme), {
      kind: 'vscode-light' as const,
      variables: faint,
    });
    await show(page, 'a', result([verdict]));
    expect((await page.evaluate(() => globalThis.host.barriers())).join()).toContain('color-contrast');
  });

  it('follows a change of the theme by itself', async () => {
    const { page } = await open();
    await show(page, 'a', result([verdict]));
    const seen = [];
    for (const theme of Object.values(themes)) {
      await page.evaluate((theme) => globalThis.host.theme(theme), theme);
      seen.push(await page.evaluate(() => globalThis.host.colour('a', '.page')));
    }
    expect(seen).toEqual([
      'rgb(32, 32, 32)',
      'rgb(187, 190, 191)',
      'rgb(204, 204, 204)',
      'rgb(51, 51, 51)',
      'rgb(255, 255, 255)',
      'rgb(41, 41, 41)',
    ]);
  });

  it('has no colour or font of its own, and its variables are the theme’s', () => {
    expect(style).not.toMatch(
      /#[0-9a-f]{3,8}\b|\brgb|\bhsl|\b(black|white(?!-space)|red|green|grey|gray|blue)\b/i,
    );
    const own = new Set([...style.matchAll(/(--[a-z]+):/g)].map((found) => found[1]));
    for (const [, name = ''] of style.matchAll(/var\((--[\w-]+)/g)) {
      expect(name.startsWith('--vscode-') || own.has(name), name).toBe(true);
    }
  });

  it('stops at a table that is wider than the page, by name, and at nothing else', async () => {
    const wide = await open({ width: 300 });
    const roomy = await open({ width: 1200 });
    const [table] = sampleResults.filter((each) =>
      each.blocks.some((block) => block.kind === 'table' && block.columns.length > 2),
    );
    const only = result(table?.blocks.filter((block) => block.kind === 'table') ?? []);
    for (const { page } of [wide, roomy]) {
      await show(page, 'a', only);
      await page.waitForTimeout(100);
      await page.keyboard.press('Tab');
    }
    expect(await wide.page.evaluate(() => globalThis.host.focused())).toBe('Table, wider than the page');
    expect(await roomy.page.evaluate(() => globalThis.host.focused())).toBe('BODY');
    await wide.page.keyboard.press('ArrowRight');
    await wide.page.waitForFunction(() => globalThis.host.scrolled('a', '.wide') > 0);
  });

  it('names each result after its cell', async () => {
    const { page } = await open();
    await show(page, 'a', result([verdict], 'Is the valve shut?'));
    await show(page, 'b', result([verdict], ''));
    const name = (id: string) =>
      page.evaluate((id) => globalThis.host.attribute(id, '.page', 'aria-label'), id);
    expect([await name('a'), await name('b')]).toEqual(['Result: Is the valve shut?', 'Result']);
  });
});

describe('the look', () => {
  it('aligns the numbers of a column at the point', async () => {
    const { page } = await open();
    const row = (name: string, number: string) => ({
      name,
      unit: 'V',
      figures: [{ number }],
      remarks: [],
      strips: [],
    });
    await show(
      page,
      'a',
      result([
        {
          kind: 'table',
          caption: '',
          rowsAre: 'reading',
          columns: [],
          rows: [row('a', '13.85'), row('b', '0.1'), row('c', '120'), row('d', '-3.5')],
        },
      ]),
    );
    const points = await page.evaluate(() => globalThis.host.points('a'));
    expect(points).toHaveLength(4);
    expect(Math.max(...points) - Math.min(...points)).toBeLessThan(0.6);
  });

  it('keeps a number and its unit on one line, and code as it is', async () => {
    const { page } = await open();
    await show(page, 'a', result([{ ...verdict, text: 'a > 18 inHg' }]));
    const seen = await text(page, 'a');
    expect(seen).toContain('16.7\u00a0±\u00a00.2\u00a0inHg, 1.3');
    expect(seen).toContain('outside 18\u00a0..\u00a021\u00a0inHg');
    expect(seen).toContain('a > 18 inHg');
  });

  it('is small', async () => {
    const bytes = Buffer.from(await builtRenderer());
    expect(bytes.length).toBeLessThan(20_000);
    expect(gzipSync(bytes).length).toBeLessThan(7_000);
  });
});

/** Results that show every kind of part between them, the longest first. */
function mostDifferent(): CellResult[] {
  const seen = new Set<string>();
  const partsOf = (each: CellResult) =>
    each.blocks.map((block) => JSON.stringify([block.kind, ...shapeOf(block)]));
  return [...sampleResults]
    .sort((a, b) => b.blocks.length - a.blocks.length)
    .filter((each) => {
      const fresh = partsOf(each).filter((part) => !seen.has(part));
      for (const part of fresh) seen.add(part);
      return fresh.length > 0;
    });
}

function shapeOf(block: ResultBlock): unknown[] {
  switch (block.kind) {
    case 'table':
      return [block.columns.length > 0, block.rows.some((row) => row.strips.length > 0), block.rowsAre];
    case 'verdict':
      return [block.word, block.remark !== undefined];
    case 'suspect':
      return [block.standing, block.missing.length > 0];
    case 'finding':
      return [block.severity, block.offers.length > 0];
    default:
      return [];
  }
}

/** The report's own words, in its order. */
function wordsOf(blocks: readonly ResultBlock[]): string {
  const words = (markup: Markup): string => {
    if (typeof markup === 'string') return markup;
    const { tag, attributes, children } = markup;
    // Where a line may end inside a word, the word goes on.
    if (tag === 'wbr') return '';
    if (attributes.class === 'pad') return '';
    const inner = children.map(words).join('');
    const stands =
      ['span', 'strong', 'code', 'mark'].includes(tag) &&
      attributes.class !== 'under' &&
      attributes.class !== 'sign';
    return stands ? inner : ` ${inner} `;
  };
  return blocks.flatMap(blockMarkup).map(words).join(' ');
}

const plain = (words: string): string => words.replace(/[\s\u00a0\u200b]+/g, ' ').trim();

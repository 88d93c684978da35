import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { closerOf } from '../../core/chart/closerOf.ts';
import type { ChartBlock } from '../../core/report/blocks.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { service } from '../../core/service/service.ts';
import { charts } from '../../extension/server/charts.ts';
import { compiledSpec } from '../../extension/server/compiledResults.ts';
import { caseWith, exampleCharts, rows } from '../chart/exampleCharts.ts';
import { openBrowser } from '../editor/harness/openBrowser.ts';
import { builtChart, openRenderer, type PageOptions, type RendererPage } from './rendererPage.ts';
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

/** A result as the server sends it. */
function resultOf(text: string, cell: number): object {
  const result = service.result(checkCase(text), cell);
  const blocks = result.blocks.map((block) =>
    block.kind === 'chart' ? { ...block, cell: 'cell:1', spec: compiledSpec(block.spec, charts) } : block,
  );
  return { ...result, blocks };
}

const chartIn = (result: object): ChartBlock => {
  const { blocks } = result as { readonly blocks: readonly { readonly kind: string }[] };
  return blocks.find(({ kind }) => kind === 'chart') as ChartBlock;
};

/** A sensor over 20 s, 2,000 samples: more than are drawn at once. */
const long = caseWith(`capture: Sensor
as: o2
state: warm idle
chart: trace
rows: |
${rows(['time', 'front'], ['s', 'V'], 4000, 0.005, (t) => 0.45 + 0.4 * Math.sin(40 * t))}
channels:
  front: {column: front, signal: o2_b1s1}
`);

async function shown(result: object, options?: PageOptions): Promise<RendererPage> {
  const found = await openRenderer(browser, options);
  opened.push(found);
  await found.page.evaluate((theme) => globalThis.host.theme(theme), themes.light);
  await add(found, 'a', result);
  return found;
}

async function add({ page }: RendererPage, id: string, result: object): Promise<void> {
  await page.evaluate(({ id, text }) => globalThis.host.show(id, text), { id, text: JSON.stringify(result) });
  await page.waitForFunction((id) => globalThis.host.count(id, '.plot[aria-valuetext] svg') > 0, id);
}

const attribute = ({ page }: RendererPage, selector: string, name: string) =>
  page.evaluate(
    ([selector = '', name = '']) => globalThis.host.attribute('a', selector, name),
    [selector, name],
  );
const window = async (of: RendererPage): Promise<number[]> => [
  Number(await attribute(of, '.plot', 'aria-valuemin')),
  Number(await attribute(of, '.plot', 'aria-valuemax')),
];
const spoken = (of: RendererPage) => attribute(of, '.plot', 'aria-valuetext');

describe('a chart in an output', () => {
  it.each(exampleCharts())('$name is drawn under a policy that allows nothing', async ({ text, cell }) => {
    const of = await shown(resultOf(text, cell));
    const { page, errors, requests } = of;
    expect(errors).toEqual([]);
    expect(await page.evaluate(() => globalThis.host.violations)).toEqual([]);
    expect(requests.map((each) => each.slice('http://renderer.test/'.length))).toEqual([
      '',
      'host.js',
      'renderer.js',
      'chart.js',
    ]);
    expect(
      await page.evaluate(() => globalThis.host.count('a', '.plot svg path, .plot svg line')),
    ).toBeGreaterThan(5);
    expect(await spoken(of)).not.toBe('');
  });

  it.each(Object.entries(themes))('axe-core finds nothing in %s', async (_, theme) => {
    const examples = exampleCharts();
    const first = examples[0];
    if (first === undefined) throw new Error('There are no examples.');
    const of = await shown(resultOf(first.text, first.cell), { trustedTypes: false, width: 900 });
    await of.page.evaluate((theme) => globalThis.host.theme(theme), theme);
    for (const [at, { text, cell }] of examples.slice(1).entries())
      await add(of, `more${at}`, resultOf(text, cell));
    expect(await of.page.evaluate(() => globalThis.host.barriers())).toEqual([]);
    expect(of.errors).toEqual([]);
  });

  it('reads nothing of the large file before the first chart', async () => {
    const found = await openRenderer(browser);
    opened.push(found);
    const plain = { ...resultOf(long, 1), blocks: [{ kind: 'paragraph', runs: ['words'] }] };
    await found.page.evaluate((text) => globalThis.host.show('a', text), JSON.stringify(plain));
    expect(found.requests.some((each) => each.endsWith('chart.js'))).toBe(false);
  });

  it('costs a notebook that has one no more than it must', async () => {
    expect(Buffer.from(await builtChart()).length).toBeLessThan(600_000);
  });

  it('stands there in words where it was not compiled', async () => {
    const found = await openRenderer(browser);
    opened.push(found);
    const plain = service.result(checkCase(long), 1);
    await found.page.evaluate((text) => globalThis.host.show('a', text), JSON.stringify(plain));
    expect((await found.page.evaluate(() => globalThis.host.text('a'))).replaceAll('\u00a0', ' ')).toContain(
      'Oxygen sensor 1 of bank 1: from 0.05',
    );
    expect(found.requests.some((each) => each.endsWith('chart.js'))).toBe(false);
  });

  it('goes when it is disposed of', async () => {
    const { page, errors } = await shown(resultOf(long, 1));
    await page.evaluate(() => globalThis.host.dispose('a'));
    expect(await page.evaluate(() => globalThis.host.count('a', 'svg'))).toBe(0);
    expect(errors).toEqual([]);
  });
});

describe('by keyboard', () => {
  it('is reached, is named, and its cursor goes from place to place', async () => {
    const of = await shown(resultOf(long, 1));
    const lines = () => of.page.evaluate(() => globalThis.host.count('a', '.plot svg .cursor'));
    expect(await lines()).toBe(0);
    await of.page.keyboard.press('Tab');
    expect(await lines()).toBe(1);
    expect(await of.page.evaluate(() => globalThis.host.focused())).toBe(
      'Oxygen sensor 1 of bank 1 over time: warm idle: cursor',
    );
    expect(await spoken(of)).toBe('Oxygen sensor 1 of bank 1 0.45 V, time 0 s');
    await of.page.keyboard.press('ArrowRight');
    const right = Number(await attribute(of, '.plot', 'aria-valuenow'));
    expect(right).toBeGreaterThan(0.15);
    expect(right).toBeLessThan(0.3);
    await of.page.keyboard.press('ArrowLeft');
    expect(Number(await attribute(of, '.plot', 'aria-valuenow'))).toBeLessThan(right);
    await of.page.keyboard.press('End');
    expect(await attribute(of, '.plot', 'aria-valuenow')).toBe('19.995');
  });

  it('reads the very samples of the record', async () => {
    const of = await shown(resultOf(long, 1));
    await of.page.keyboard.press('Tab');
    for (let k = 0; k < 7; k++) await of.page.keyboard.press('ArrowRight');
    const at = Number(await attribute(of, '.plot', 'aria-valuenow'));
    const value = Number((0.45 + 0.4 * Math.sin(40 * at)).toFixed(4));
    expect(await spoken(of)).toBe(
      `Oxygen sensor 1 of bank 1 ${Number(value.toPrecision(6))} V, time ${at} s`,
    );
    expect(await of.page.evaluate(() => globalThis.host.text('a'))).toContain(String(at));
  });

  it('looks closer with +, wider with −, at all with Home, and asks for the detail', async () => {
    const of = await shown(resultOf(long, 1));
    await of.page.keyboard.press('Tab');
    for (let k = 0; k < 3; k++) await of.page.keyboard.press('Shift+ArrowRight');
    await of.page.keyboard.press('+');
    const [from = 0, to = 0] = await window(of);
    expect(to - from).toBeCloseTo(19.995 / 2, 6);
    await of.page.keyboard.press('+');
    expect((await window(of)).reduce((a, b) => b - a)).toBeCloseTo(19.995 / 4, 6);
    const asked = await of.page.evaluate(() => globalThis.host.asked);
    expect(asked.map(({ type, cell }) => [type, cell])).toEqual([
      ['look closer', 'cell:1'],
      ['look closer', 'cell:1'],
    ]);
    await of.page.keyboard.press('-');
    expect((await window(of)).reduce((a, b) => b - a)).toBeCloseTo(19.995 / 2, 6);
    await of.page.keyboard.press('Home');
    expect(await window(of)).toEqual([0, 19.995]);
  });

  it('steps from dot to dot where there is no line to follow', async () => {
    const found = exampleCharts().find(({ name }) => name === 'cylinders');
    const of = await shown(resultOf(found?.text ?? '', found?.cell ?? 0));
    await of.page.keyboard.press('Tab');
    const seen = [await spoken(of)];
    for (let k = 0; k < 3; k++) {
      await of.page.keyboard.press('ArrowRight');
      seen.push(await spoken(of));
    }
    expect(seen).toEqual([
      '181 ± 3 psi gauge, cylinder 1',
      '129 ± 3 psi gauge, cylinder 3',
      '179 ± 3 psi gauge, cylinder 4',
      '178 ± 3 psi gauge, cylinder 2',
    ]);
  });

  it('does the same by buttons', async () => {
    const of = await shown(resultOf(long, 1));
    const press = (words: string) => of.page.getByRole('button', { name: words }).click();
    await press('Closer');
    expect((await window(of)).reduce((a, b) => b - a)).toBeCloseTo(19.995 / 2, 6);
    await press('All');
    expect(await window(of)).toEqual([0, 19.995]);
    expect(await of.page.getByRole('button', { name: 'Wider' }).isDisabled()).toBe(true);
  });
});

describe('a closer look', () => {
  it('shows the detail that the extension sends, with samples that were left out before', async () => {
    const of = await shown(resultOf(long, 1));
    const few =
      chartIn(resultOf(long, 1)).spec.data['line-0-0']?.x.filter((x) => x > 9 && x < 11).length ?? 0;
    await of.page.keyboard.press('Tab');
    for (let k = 0; k < 5; k++) await of.page.keyboard.press('Shift+ArrowRight');
    for (let k = 0; k < 4; k++) await of.page.keyboard.press('+');
    const asked = (await of.page.evaluate(() => globalThis.host.asked)).at(-1);
    if (asked === undefined) throw new Error('Nothing was asked.');
    const spec = closerOf(checkCase(long), 1, asked);
    if (spec === undefined) throw new Error('There is no closer look.');
    const many = spec.data['line-0-0']?.x.length ?? 0;
    expect(many).toBeGreaterThan(few / 2);
    const before = await of.page.evaluate(() =>
      globalThis.host.attribute('a', '.plot svg path[stroke*=ink]', 'd'),
    );
    const answer = { type: 'seen closer', id: asked.id, chart: compiledSpec(spec, charts) };
    await of.page.evaluate((text) => globalThis.host.tell(JSON.parse(text)), JSON.stringify(answer));
    await of.page.waitForFunction(
      (before) => globalThis.host.attribute('a', '.plot svg path[stroke*=ink]', 'd') !== before,
      before,
    );
    const now = await of.page.evaluate(() =>
      globalThis.host.attribute('a', '.plot svg path[stroke*=ink]', 'd'),
    );
    expect((now ?? '').split('L').length).toBe(many);
    expect(of.errors).toEqual([]);
  });

  it('is chosen by dragging over the stretch', async () => {
    const of = await shown(resultOf(long, 1));
    const box = await of.page.locator('.plot').boundingBox();
    if (box === null) throw new Error('There is no plot.');
    const y = box.y + box.height / 2;
    await of.page.mouse.move(box.x + box.width * 0.4, y);
    await of.page.mouse.down();
    await of.page.mouse.move(box.x + box.width * 0.6, y, { steps: 4 });
    expect(await of.page.evaluate(() => globalThis.host.count('a', '.chosen'))).toBe(1);
    await of.page.mouse.up();
    const [from = 0, to = 0] = await window(of);
    expect(from).toBeGreaterThan(6);
    expect(to).toBeLessThan(13);
    expect(to - from).toBeGreaterThan(3);
    expect(await of.page.evaluate(() => globalThis.host.count('a', '.chosen'))).toBe(0);
  });

  it('that comes late is dropped', async () => {
    const of = await shown(resultOf(long, 1));
    await of.page.keyboard.press('Tab');
    await of.page.keyboard.press('+');
    const first = (await of.page.evaluate(() => globalThis.host.asked))[0];
    await of.page.keyboard.press('Home');
    const before = await of.page.evaluate(() =>
      globalThis.host.attribute('a', '.plot svg path[stroke*=ink]', 'd'),
    );
    const spec = closerOf(checkCase(long), 1, { from: 1, to: 2 });
    if (spec === undefined) throw new Error('There is no closer look.');
    const answer = { type: 'seen closer', id: first?.id, chart: compiledSpec(spec, charts) };
    await of.page.evaluate((text) => globalThis.host.tell(JSON.parse(text)), JSON.stringify(answer));
    await of.page.waitForTimeout(50);
    expect(
      await of.page.evaluate(() => globalThis.host.attribute('a', '.plot svg path[stroke*=ink]', 'd')),
    ).toBe(before);
  });

  it('cuts what lies outside at the frame', async () => {
    const of = await shown(resultOf(long, 1));
    await of.page.keyboard.press('Tab');
    await of.page.keyboard.press('+');
    const cut = await attribute(of, '.plot svg [clip-path]', 'clip-path');
    const id = /^url\(#(.+)\)$/.exec(cut ?? '')?.[1];
    expect(await of.page.evaluate((id) => globalThis.host.count('a', `clipPath[id="${id}"] rect`), id)).toBe(
      1,
    );
  });
});

describe('its colours', () => {
  it('are the theme’s own ink, and tones that follow the theme', async () => {
    const of = await shown(resultOf(long, 1));
    const inks: string[] = [];
    for (const theme of Object.values(themes)) {
      await of.page.evaluate((theme) => globalThis.host.theme(theme), theme);
      inks.push(await of.page.evaluate(() => globalThis.host.painted('a', '.plot svg path[stroke*=ink]')));
    }
    expect(inks).toEqual([
      'rgb(32, 32, 32)',
      'rgb(187, 190, 191)',
      'rgb(204, 204, 204)',
      'rgb(51, 51, 51)',
      'rgb(255, 255, 255)',
      'rgb(17, 17, 17)',
    ]);
  });
});

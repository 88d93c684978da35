import { describe, expect, it } from 'vitest';
import type { Hover } from 'vscode-languageserver';
import type { ChartSpec } from '../../core/chart/spec.ts';
import type { ChartBlock } from '../../core/report/blocks.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { service } from '../../core/service/service.ts';
import { inOrder } from '../../extension/server/compiledResults.ts';
import { chartWindowRequest } from '../../extension/shared/chartMessages.ts';
import type { ResultsParams } from '../../extension/shared/protocol.ts';
import { caseWith, exampleCharts, rows } from '../chart/exampleCharts.ts';
import { Editor, type EditorNotebook } from './editor.ts';

const uri = 'file:///cases/van-14.diag';

async function opened(source: string) {
  const editor = await Editor.start({ service });
  const notebook = await editor.openNotebook(uri, source);
  await editor.settled();
  return { editor, notebook };
}

async function hoverOn(
  editor: Editor,
  notebook: EditorNotebook,
  cell: number,
  words: string,
  by = 1,
): Promise<string> {
  const lines = (notebook.cells[cell]?.cell.value ?? '').split('\n');
  const line = lines.findIndex((each) => each.includes(words));
  const position = { line, character: (lines[line] ?? '').indexOf(words) + by };
  const hover = await editor.ask<Hover | null>('textDocument/hover', {
    textDocument: { uri: notebook.uriOf(cell) },
    position,
  });
  return (hover?.contents as { value: string } | undefined)?.value ?? '';
}

/** The image of a hover, as SVG. */
function imageIn(markdown: string): string {
  const [, base64 = ''] =
    /^!\[[^\]]*\]\(data:image\/svg\+xml;base64,([A-Za-z0-9+/=]+)\)/.exec(markdown) ?? [];
  return Buffer.from(base64, 'base64').toString('utf8');
}

const sensors = `capture: Sensors
as: o2
state: warm idle
chart: trace
rows: |
${rows(['time', 'front'], ['s', 'V'], 4000, 0.01, (t) => 0.45 + 0.4 * Math.sin(9 * t))}
channels:
  front: {column: front, signal: o2_b1s1}
`;

const check = `check: Rich for how long?
let:
  held: o2.front from 1 s to 3 s
expect:
  - time_rich(o2.front) > 40 %
  - max(held) > 0.6 V
`;

describe('a hover', () => {
  it.each([
    ['the key that asks for a chart', 1, 'chart: trace', 1],
    ['the kind of the chart', 1, 'chart: trace', 9],
    ['a channel', 1, '  front:', 3],
    ['a series in an expression', 2, 'o2.front)', 5],
    ['a computed series', 2, 'max(held)', 5],
  ])('shows a drawing on %s', async (_, cell, words, by) => {
    const { editor, notebook } = await opened(caseWith(sensors, check));
    const markdown = await hoverOn(editor, notebook, cell, words, by);
    expect(imageIn(markdown)).toMatch(/^<svg .*<path .*<\/svg>$/s);
    expect(markdown.length).toBeLessThanOrEqual(100_000);
  });

  it('is named, and draws only what is in the case, in colours of its own', async () => {
    const { editor, notebook } = await opened(caseWith(sensors, check));
    const markdown = await hoverOn(editor, notebook, 1, 'chart: trace');
    expect(markdown).toMatch(/^!\[Oxygen sensor 1 of bank 1 over time: warm idle\]/);
    const image = imageIn(markdown);
    expect(image).toContain('prefers-color-scheme: dark');
    expect(image).not.toMatch(/<script|href|<image|<foreignObject|url\(/);
    const used = new Set([...image.matchAll(/var\((--chart-[a-z]+)\)/g)].map(([, name]) => name));
    for (const name of used) expect(image).toContain(`${name}: #`);
  });

  it('has none on a value that is no series, nor where there is no chart', async () => {
    const { editor, notebook } = await opened(caseWith(sensors, check));
    expect(await hoverOn(editor, notebook, 2, 'time_rich')).not.toContain('data:image');
    expect(await hoverOn(editor, notebook, 1, 'state: warm')).not.toContain('data:image');
  });

  it.each(exampleCharts().filter(({ text, cell }) => /^chart:/m.test(text.split('---\n')[cell] ?? '')))(
    'shows the chart “$name” within what an editor takes',
    async ({ text, cell }) => {
      const { editor, notebook } = await opened(text);
      const markdown = await hoverOn(editor, notebook, cell, 'chart:');
      expect(imageIn(markdown).length).toBeGreaterThan(1000);
      expect(markdown.length).toBeLessThanOrEqual(100_000);
    },
  );
});

describe('a chart in a notebook', () => {
  it('is sent compiled, with the document that can be asked for a closer look', async () => {
    const { editor, notebook } = await opened(caseWith(sensors, check));
    const chart = await chartSent(editor, notebook);
    expect(chart.spec.spec.$schema).toMatch(/schema\/vega\/v\d/);
    expect(chart.cell).toBe(notebook.uriOf(1));
    expect(chart.spec.data['line-0-0']?.x.length).toBeLessThanOrEqual(4 * 500);
  });

  it('is looked at more closely: all samples of the window come', async () => {
    const { editor, notebook } = await opened(caseWith(sensors, check));
    await chartSent(editor, notebook);
    const params = { cell: notebook.uriOf(1), from: 10, to: 10.5 };
    const closer = await editor.ask<ChartSpec | null>(chartWindowRequest, params);
    expect(closer?.data['line-0-0']?.x).toHaveLength(51);
    expect(closer?.x).toMatchObject({ from: 10, to: 10.5, unit: 's' });
    expect(closer?.plot).toEqual((await chartSent(editor, notebook)).spec.plot);
  });

  it.each([
    ['a cell without a chart', 2, 0, 1],
    ['a window that is none', 1, 1, 1],
  ])('has no closer look: %s', async (_, cell, from, to) => {
    const { editor, notebook } = await opened(caseWith(sensors, check));
    expect(await editor.ask(chartWindowRequest, { cell: notebook.uriOf(cell), from, to })).toBeNull();
  });

  it('has no closer look where the document is not open', async () => {
    const { editor } = await opened(caseWith(sensors, check));
    expect(await editor.ask(chartWindowRequest, { cell: 'file:///no/such/cell', from: 0, to: 1 })).toBeNull();
  });

  it('tells what is wrong with it as a finding of its cell', async () => {
    const { editor, notebook } = await opened(
      caseWith(sensors.replace('chart: trace', 'chart: trims'), check),
    );
    const found = editor.findings.get(notebook.uriOf(1)) ?? [];
    expect(found.map(({ code }) => code)).toEqual(['nothing-to-plot']);
  });
});

describe('results', () => {
  it('keep their order while what compiles charts is read', async () => {
    const sent: ResultsParams[] = [];
    const send = inOrder((results) => void sent.push(results));
    const study = checkCase(caseWith(sensors, check));
    const of = (version: number, ...cells: readonly number[]): ResultsParams => ({
      uri,
      version,
      cells: cells.map((cell) => ({ cell: `cell:${cell}`, version, result: service.result(study, cell) })),
    });
    send(of(1, 2));
    send(of(2, 1));
    send(of(3, 2));
    while (sent.length < 3) await new Promise(setImmediate);
    send(of(4, 1, 2));
    expect(sent.map(({ version }) => version)).toEqual([1, 2, 3, 4]);
    const schemas = sent.flatMap(({ cells }) =>
      cells.flatMap(({ result }) =>
        (result?.blocks ?? []).flatMap((block) => (block.kind === 'chart' ? [block.spec.spec.$schema] : [])),
      ),
    );
    expect(schemas).toEqual([expect.stringContaining('/vega/'), expect.stringContaining('/vega/')]);
  });
});

async function chartSent(editor: Editor, notebook: EditorNotebook): Promise<ChartBlock> {
  await editor.settled();
  const cells = editor.results.at(-1)?.cells ?? [];
  const result = cells.find(({ cell }) => cell === notebook.uriOf(1))?.result;
  const chart = result?.blocks.find(({ kind }) => kind === 'chart');
  if (chart?.kind !== 'chart') throw new Error('No chart was sent.');
  return chart;
}

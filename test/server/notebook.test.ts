import { describe, expect, it } from 'vitest';
import { service } from '../../core/service/service.ts';
import { Editor } from './editor.ts';

const uri = 'file:///cases/van-14.diag';

const twoCells = `diag: 1
case: Two readings
---
readings: Idle
as: idle
state: warm idle
values:
  map: 13.1 inHg
  vacuum: 17.4 inHg
---
check: The two sides
expect:
  - idle.map + idle.vacuum within 0.5 inHg of 30.5 inHg
`;

const withNote = `${twoCells}---
note: |
  # Rain

  All day.
`;

const codesOf = (editor: Editor, of: string): unknown[] =>
  (editor.findings.get(of) ?? []).map(({ code, range }) => [code, range.start.line, range.start.character]);

async function opened(text: string, settings: object = {}) {
  const editor = await Editor.start({ service, settings });
  const notebook = await editor.openNotebook(uri, text);
  await editor.settled();
  return { editor, notebook };
}

describe('a notebook', () => {
  it('asks for all its cells, notes too', async () => {
    const { editor } = await opened(twoCells);
    expect(editor.abilities.notebookDocumentSync).toEqual({
      notebookSelector: [{ notebook: 'diag' }],
      save: false,
    });
  });

  it('gets findings at places in its cells, and a result for each', async () => {
    const { editor, notebook } = await opened(withNote.replace('13.1 inHg', '13,1 inHg'));
    expect([...editor.findings.keys()]).toEqual([notebook.uriOf(1)]);
    expect(codesOf(editor, notebook.uriOf(1))).toEqual([['decimal-comma', 4, 7]]);
    expect(editor.results).toHaveLength(1);
    expect(editor.results[0]?.version).toBe(0);
    expect(editor.results[0]?.cells.map(({ cell, version }) => [cell, version])).toEqual(
      notebook.cells.map((each) => [each.uri, each.version]),
    );
  });

  it('is studied again after an edit: findings come and go, results carry the versions that were studied', async () => {
    const { editor, notebook } = await opened(twoCells);
    await notebook.edit(1, '13.1', '13,1');
    await editor.settled();
    expect(codesOf(editor, notebook.uriOf(1))).toEqual([['decimal-comma', 4, 7]]);
    await notebook.edit(1, '13,1', '13.1');
    await editor.settled();
    expect(editor.findings.size).toBe(0);
    const last = editor.results.at(-1);
    expect(last?.version).toBe(2);
    expect(last?.cells.map((each) => each.version)).toEqual([1, 3, 1]);
  });

  it('shows a finding in the cell that an edit of another one brings about', async () => {
    const { editor, notebook } = await opened(twoCells);
    await notebook.edit(1, 'as: idle', 'as: idling');
    await editor.settled();
    expect(codesOf(editor, notebook.uriOf(2))).toEqual([
      ['unknown-name', 2, 4],
      ['unknown-name', 2, 15],
    ]);
  });

  it('takes a new cell with its text, and lets a deleted one go', async () => {
    const { editor, notebook } = await opened(twoCells);
    await notebook.insert(2, 'readings: Odd\nvalues:\n  map: 13,1 inHg');
    await editor.settled();
    const inserted = notebook.uriOf(2);
    expect(codesOf(editor, inserted)).toContainEqual(['decimal-comma', 2, 7]);
    await notebook.delete(2);
    await editor.settled();
    expect(editor.findings.has(inserted)).toBe(false);
    expect(editor.published.at(-1)).toMatchObject({ uri: inserted, diagnostics: [] });
  });

  it('follows a move, in which no text changes', async () => {
    const { editor, notebook } = await opened(twoCells);
    await notebook.move(0, 2);
    await editor.settled();
    expect(codesOf(editor, notebook.uriOf(0))).toContainEqual(['no-header', 0, 0]);
    await notebook.move(2, 0);
    await editor.settled();
    expect(editor.findings.size).toBe(0);
    expect(editor.results.at(-1)?.cells.map((each) => each.cell)).toEqual(
      notebook.cells.map((each) => each.uri),
    );
  });

  it('tells two cells of one text apart', async () => {
    const { editor, notebook } = await opened(twoCells);
    await notebook.copy(1, 3);
    await editor.settled();
    expect(codesOf(editor, notebook.uriOf(3))).toEqual([['duplicate-name', 1, 4]]);
    expect(codesOf(editor, notebook.uriOf(1))).toEqual([]);
  });

  it('keeps a cell whose language was changed: it stands in the file all the same', async () => {
    const { editor, notebook } = await opened(twoCells);
    await notebook.changeLanguage(1, 'yaml');
    await editor.settled();
    expect(editor.findings.size).toBe(0);
    expect(editor.results.at(-1)?.cells).toHaveLength(3);
  });

  it('is cleared of every finding when it is closed', async () => {
    const { editor, notebook } = await opened(
      twoCells.replace('13.1 inHg', '13,1 inHg').replace('30.5 inHg', '30.5 inhg'),
    );
    expect(editor.findings.size).toBe(2);
    await notebook.close();
    await editor.settled();
    expect(editor.findings.size).toBe(0);
    const sent = editor.results.length;
    await notebook.edit(1, '13,1', '13.1');
    await editor.settled();
    expect(editor.results).toHaveLength(sent);
  });

  it('has no findings while no tab shows it, and the ones of its text when it is shown again', async () => {
    const { editor, notebook } = await opened(twoCells.replace('13.1 inHg', '13,1 inHg'));
    const tell = async (shown: boolean) => {
      await editor.connection.sendNotification('diag/shown', { uri: notebook.uri, shown });
      await editor.settled();
    };
    expect(editor.findings.size).toBe(1);
    await tell(false);
    expect(editor.findings.size).toBe(0);
    await notebook.edit(1, '13,1 inHg', '13,1 inhg');
    await editor.settled();
    expect(editor.findings.size).toBe(0);
    await tell(true);
    expect(codesOf(editor, notebook.uriOf(1))).toEqual([
      ['decimal-comma', 4, 7],
      ['unknown-unit', 4, 12],
    ]);
  });

  it('sends the findings of all cells before any result', async () => {
    const { editor, notebook } = await opened(twoCells);
    const order: string[] = [];
    editor.connection.onNotification('textDocument/publishDiagnostics', () => void order.push('findings'));
    editor.connection.onNotification('diag/results', () => void order.push('results'));
    await notebook.edit(1, 'as: idle', 'as: 1dle');
    await editor.settled();
    expect(order).toEqual(['findings', 'findings', 'results']);
  });

  it('sends the results that changed, and all of them when it is asked to recompute', async () => {
    const { editor, notebook } = await opened(twoCells);
    const sent = () => editor.sent.at(-1)?.cells.map((each) => each.result !== undefined);
    expect(sent()).toEqual([true, true, true]);
    await notebook.edit(1, '13.1', '14.1');
    await editor.settled();
    expect(sent()).toEqual([false, true, true]);
    await notebook.edit(0, 'diag: 1', 'diag: 1 # one');
    await editor.settled();
    expect(editor.sent.at(-1)?.cells).toHaveLength(3);
    expect(sent()?.slice(1)).toEqual([false, false]);
    await editor.ask('diag/recompute', { uri: notebook.uri });
    await editor.settled();
    expect(sent()).toEqual([true, true, true]);
  });

  it('studies a burst of edits together and sends results once they rest', async () => {
    const { editor, notebook } = await opened(twoCells);
    const before = editor.results.length;
    const all = [];
    for (let n = 0; n < 9; n++) all.push(notebook.edit(1, `13.${n + 1}`, `13.${n + 2}`));
    await Promise.all(all);
    await editor.settled();
    expect(editor.results.length).toBeLessThanOrEqual(before + 9);
    expect(editor.results.at(-1)?.version).toBe(9);
    const versions = editor.results.map((each) => each.version);
    expect(versions).toEqual([...versions].sort((a, b) => a - b));
  });
});

describe('a `---` line inside a cell', () => {
  const text = twoCells;

  it('is a warning at its place with the offer to split, and what stands below it is a cell of its own', async () => {
    const { editor, notebook } = await opened(text);
    await notebook.edit(
      1,
      '  vacuum: 17.4 inHg',
      '---\nreadings: Gauge\nas: gauge\nvalues:\n  vacuum: 17,4 inHg',
    );
    await editor.settled();
    const uri = notebook.uriOf(1);
    expect(codesOf(editor, uri)).toContainEqual(['separator-in-cell', 5, 0]);
    expect(codesOf(editor, uri)).toContainEqual(['decimal-comma', 9, 10]);
    const line = { start: { line: 5, character: 1 }, end: { line: 5, character: 1 } };
    const actions = await editor.ask<readonly { readonly title: string; readonly command?: object }[]>(
      'textDocument/codeAction',
      { textDocument: { uri }, range: line, context: { diagnostics: [] } },
    );
    expect(actions).toHaveLength(1);
    expect(actions[0]).toMatchObject({
      title: 'Split the cell here',
      kind: 'quickfix',
      command: { command: 'diag.splitCellAtSeparators', arguments: [uri] },
    });
  });

  it('is none in a note, whose lines are set in', async () => {
    const { editor, notebook } = await opened(withNote);
    await notebook.edit(3, 'All day.', 'All day.\n\n---\n\nAll night.');
    await editor.settled();
    expect(editor.findings.size).toBe(0);
  });
});

describe('settings', () => {
  const text = twoCells.replace('13.1 inHg', '13,1 inHg');

  it('give a finding another severity, or turn it off', async () => {
    const { editor, notebook } = await opened(text, { severity: { 'decimal-comma': 'warning' } });
    expect(editor.findings.get(notebook.uriOf(1))?.map((each) => each.severity)).toEqual([2]);
    await editor.setSettings({ severity: { 'decimal-comma': 'off' } });
    expect(editor.findings.size).toBe(0);
    await editor.setSettings({ severity: {} });
    expect(editor.findings.get(notebook.uriOf(1))?.map((each) => each.severity)).toEqual([1]);
  });

  it('that are no settings are as if they were not there', async () => {
    const { editor, notebook } = await opened(text, { severity: { 'decimal-comma': 7 }, units: 'furlongs' });
    expect(editor.findings.get(notebook.uriOf(1))?.map((each) => each.severity)).toEqual([1]);
  });
});

import { describe, expect, it } from 'vitest';
import type {
  CodeAction,
  CompletionItem,
  CompletionList,
  DocumentLink,
  DocumentSymbol,
  FoldingRange,
  Hover,
  InlayHint,
  Location,
  LocationLink,
  SelectionRange,
  SemanticTokens,
  SignatureHelp,
  TextEdit,
  WorkspaceEdit,
} from 'vscode-languageserver';
import { service } from '../../core/service/service.ts';
import { tokenTypes } from '../../core/service/types.ts';
import { Editor, type EditorNotebook } from './editor.ts';

const uri = 'file:///cases/van-14.diag';

const text = `diag: 1
case: Van 14
---
readings: Idle
as: idle
state: warm idle
values:
  map: 13.1 inHg
  vacuum: 17.4 inHg
---
check: The two sides
as: sides
let:
  baro_seen: idle.map + idle.vacuum
expect:
  - baro_seen within 0.5 inHg of 30.5 inHg
  - round(baro_seen / 1 inHg) > 1
---
picture: The gasket
file: pictures/the gasket.jpg
alt: A paper gasket folded over.
`;

async function opened(source = text, options: { settings?: object; linkSupport?: boolean } = {}) {
  const editor = await Editor.start({ service, ...options });
  const notebook = await editor.openNotebook(uri, source);
  await editor.settled();
  return { editor, notebook };
}

/** The place of a word in a cell, a few characters in. */
function placeIn(notebook: EditorNotebook, cell: number, words: string, by = 1) {
  const lines = (notebook.cells[cell]?.cell.value ?? '').split('\n');
  const line = lines.findIndex((each) => each.includes(words));
  if (line < 0) throw new Error(`\`${words}\` does not stand in cell ${cell}.`);
  const position = { line, character: (lines[line] ?? '').indexOf(words) + by };
  return { textDocument: { uri: notebook.uriOf(cell) }, position };
}

const document = (notebook: EditorNotebook, cell: number) => ({
  textDocument: { uri: notebook.uriOf(cell) },
});

/** A file's text after the edits of one document. */
function textAfter(source: string, edits: readonly TextEdit[]): string {
  const lines = source.split('\n');
  const offset = ({ line, character }: { line: number; character: number }) =>
    lines.slice(0, line).reduce((sum, each) => sum + each.length + 1, 0) + character;
  return [...edits]
    .sort((a, b) => offset(b.range.start) - offset(a.range.start))
    .reduce(
      (now, { range, newText }) => now.slice(0, offset(range.start)) + newText + now.slice(offset(range.end)),
      source,
    );
}

describe('in a notebook', () => {
  it('hover tells of the word under the pointer, with its range', async () => {
    const { editor, notebook } = await opened();
    const hover = await editor.ask<Hover>('textDocument/hover', placeIn(notebook, 1, '13.1 inHg'));
    expect(hover.contents).toMatchObject({ kind: 'markdown', value: expect.stringContaining('44.4 kPa') });
    expect(hover.range?.start.line).toBe(4);
  });

  it('hover shows the units that the settings ask for', async () => {
    const { editor, notebook } = await opened(text, { settings: { units: 'metric' } });
    const metric = await editor.ask<Hover>('textDocument/hover', placeIn(notebook, 1, '13.1 inHg'));
    expect(metric.contents).toMatchObject({ value: expect.stringContaining('kPa') });
  });

  it('completion replaces the word that was begun', async () => {
    const { editor, notebook } = await opened();
    await notebook.edit(2, 'idle.map + idle.vacuum', 'idle.map + idle.va');
    const place = placeIn(notebook, 2, 'idle.va', 'idle.va'.length);
    const { items } = await editor.ask<CompletionList>('textDocument/completion', place);
    const vacuum = items.find((each) => each.label === 'vacuum');
    expect(vacuum?.textEdit).toEqual({
      newText: 'vacuum',
      range: {
        start: { line: place.position.line, character: place.position.character - 2 },
        end: place.position,
      },
    });
    const sorted = items.toSorted((a, b) => ((a.sortText ?? '') < (b.sortText ?? '') ? -1 : 1));
    expect(sorted.slice(0, 2).map((each) => each.label)).toEqual(['map', 'vacuum']);
  });

  it('the page of an offer comes when it is asked for', async () => {
    const { editor, notebook } = await opened();
    await notebook.edit(1, 'vacuum: 17.4 inHg', 'vac');
    const place = placeIn(notebook, 1, 'vac', 3);
    const { items } = await editor.ask<CompletionList>('textDocument/completion', place);
    expect(items.length).toBeGreaterThan(100);
    expect(items.filter((each) => each.documentation !== undefined)).toEqual([]);
    const vacuum = items.find((each) => each.label === 'vacuum') ?? expect.fail('There is no vacuum.');
    const whole = await editor.ask<CompletionItem>('completionItem/resolve', vacuum);
    expect(whole).toEqual({
      ...vacuum,
      documentation: {
        kind: 'markdown',
        value: expect.stringContaining('**`vacuum`** Intake manifold vacuum'),
      },
    });
  });

  it('an offer of an earlier list has no page of a later one', async () => {
    const { editor, notebook } = await opened();
    const ask = () =>
      editor.ask<CompletionList>('textDocument/completion', placeIn(notebook, 2, 'round(', 2));
    const earlier = (await ask()).items.find((each) => each.label === 'round') ?? expect.fail('No function.');
    await ask();
    expect(await editor.ask('completionItem/resolve', earlier)).toEqual(earlier);
  });

  it('signature help marks the parameter', async () => {
    const { editor, notebook } = await opened();
    const help = await editor.ask<SignatureHelp>(
      'textDocument/signatureHelp',
      placeIn(notebook, 2, 'round(', 'round('.length),
    );
    expect(help.signatures[0]?.label).toMatch(/^round\(/);
    expect(help.activeParameter).toBe(0);
  });

  it('definition leads into another cell', async () => {
    const { editor, notebook } = await opened();
    const place = placeIn(notebook, 2, 'idle.map', 'idle.m'.length);
    const found = await editor.ask<Location[]>('textDocument/definition', place);
    expect(found).toEqual([
      {
        uri: notebook.uriOf(1),
        range: { start: { line: 4, character: 2 }, end: { line: 4, character: 5 } },
      },
    ]);
    const other = await opened(text, { linkSupport: true });
    const [link] = await other.editor.ask<LocationLink[]>(
      'textDocument/definition',
      placeIn(other.notebook, 2, 'idle.map', 'idle.m'.length),
    );
    expect(link).toMatchObject({ targetUri: other.notebook.uriOf(1), targetSelectionRange: found[0]?.range });
    expect(link?.originSelectionRange).toBeDefined();
  });

  it('references are found across cells, with or without the definition', async () => {
    const { editor, notebook } = await opened();
    const place = placeIn(notebook, 1, 'as: idle', 'as: i'.length);
    const ask = (includeDeclaration: boolean) =>
      editor.ask<Location[]>('textDocument/references', { ...place, context: { includeDeclaration } });
    expect((await ask(true)).map((each) => each.uri)).toEqual([
      notebook.uriOf(1),
      notebook.uriOf(2),
      notebook.uriOf(2),
    ]);
    expect(await ask(false)).toHaveLength(2);
    expect(await editor.ask('textDocument/documentHighlight', place)).toHaveLength(1);
  });

  it('rename changes all cells, each for the version that was looked at', async () => {
    const { editor, notebook } = await opened();
    await notebook.edit(2, 'The two sides', 'Both sides');
    const place = placeIn(notebook, 2, 'idle.map', 2);
    expect(await editor.ask('textDocument/prepareRename', place)).toMatchObject({ placeholder: 'idle' });
    const { documentChanges = [] } = await editor.ask<WorkspaceEdit>('textDocument/rename', {
      ...place,
      newName: 'first',
    });
    const changes = documentChanges.flatMap((each) => ('edits' in each ? [each] : []));
    expect(changes.map((each) => each.textDocument)).toEqual([
      { uri: notebook.uriOf(1), version: 1 },
      { uri: notebook.uriOf(2), version: 2 },
    ]);
    const texts = changes.map(({ edits }, index) =>
      textAfter(notebook.cells[index + 1]?.cell.value ?? '', edits as TextEdit[]),
    );
    expect(texts[0]).toContain('as: first');
    expect(texts[1]).toContain('first.map + first.vacuum');
  });

  it('a rename that cannot be says why', async () => {
    const { editor, notebook } = await opened();
    const place = placeIn(notebook, 2, 'idle.map', 2);
    await expect(editor.ask('textDocument/rename', { ...place, newName: 'not a name!' })).rejects.toThrow(
      /not a name!/,
    );
  });

  it('symbols name the cell and what it defines', async () => {
    const { editor, notebook } = await opened();
    const [cell] = await editor.ask<DocumentSymbol[]>('textDocument/documentSymbol', document(notebook, 1));
    expect(cell?.name).toContain('Idle');
    expect(cell?.children?.map((each) => each.name)).toEqual(['map', 'vacuum']);
  });

  it('folds hide lines', async () => {
    const { editor, notebook } = await opened();
    const folds = await editor.ask<FoldingRange[]>('textDocument/foldingRange', document(notebook, 1));
    expect(folds).toContainEqual(expect.objectContaining({ startLine: 3, endLine: 5 }));
  });

  it('tokens follow one another', async () => {
    const { editor, notebook } = await opened();
    const { data } = await editor.ask<SemanticTokens>(
      'textDocument/semanticTokens/full',
      document(notebook, 1),
    );
    expect(data.length % 5).toBe(0);
    const lines = (notebook.cells[1]?.cell.value ?? '').split('\n');
    let line = 0;
    let character = 0;
    const words: string[] = [];
    for (let at = 0; at < data.length; at += 5) {
      const [down = 0, right = 0, length = 0, type = 0] = data.slice(at, at + 5);
      character = down === 0 ? character + right : right;
      line += down;
      words.push(`${tokenTypes[type]} ${lines[line]?.slice(character, character + length)}`);
    }
    expect(words).toContain('kind readings');
    expect(words).toContain('signal map');
    expect(words).toContain('unit inHg');
  });

  it('inlay hints stand behind what they are about, within the range that was asked for', async () => {
    const { editor, notebook } = await opened();
    const whole = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
    const ask = (range: object) =>
      editor.ask<InlayHint[]>('textDocument/inlayHint', { ...document(notebook, 2), range });
    const hints = await ask(whole);
    expect(hints.map((each) => each.label)).toContainEqual(expect.stringContaining('30.5'));
    // A space of its own keeps it off the text, whatever an editor makes of the padding.
    for (const { label, paddingLeft } of hints)
      expect({ label, paddingLeft }).toEqual({
        label: expect.stringMatching(/^\u00a0\S/),
        paddingLeft: true,
      });
    const title = { start: { line: 0, character: 0 }, end: { line: 0, character: 5 } };
    expect(await ask(title)).toEqual([]);
  });

  it('selections grow', async () => {
    const { editor, notebook } = await opened();
    const { textDocument, position } = placeIn(notebook, 2, 'idle.map', 2);
    const [first] = await editor.ask<SelectionRange[]>('textDocument/selectionRange', {
      textDocument,
      positions: [position],
    });
    let steps = 0;
    for (let range = first; range?.parent !== undefined; range = range.parent) {
      const { start, end } = range.range;
      const { start: outerStart, end: outerEnd } = range.parent.range;
      expect([outerStart.line, outerEnd.line]).toEqual([
        Math.min(outerStart.line, start.line),
        Math.max(outerEnd.line, end.line),
      ]);
      steps++;
    }
    expect(steps).toBeGreaterThan(1);
  });

  it('links lead to files beside the case; an unsaved case has none', async () => {
    const { editor, notebook } = await opened();
    const links = await editor.ask<DocumentLink[]>('textDocument/documentLink', document(notebook, 3));
    expect(links.map((each) => each.target)).toEqual(['file:///cases/pictures/the%20gasket.jpg']);
    await editor.openText('untitled:Untitled-1', text);
    expect(
      await editor.ask('textDocument/documentLink', { textDocument: { uri: 'untitled:Untitled-1' } }),
    ).toEqual([]);
  });

  it('formatting aligns one cell', async () => {
    const { editor, notebook } = await opened();
    const edits = await editor.ask<TextEdit[]>('textDocument/formatting', {
      ...document(notebook, 1),
      options: { tabSize: 2, insertSpaces: true },
    });
    expect(textAfter(notebook.cells[1]?.cell.value ?? '', edits)).toContain(
      '  map:    13.1 inHg\n  vacuum: 17.4 inHg',
    );
  });

  it('quick fixes carry their finding and change its text', async () => {
    const { editor, notebook } = await opened(text.replace('13.1 inHg', '13,1 inHg'));
    const { textDocument, position } = placeIn(notebook, 1, '13,1');
    const actions = await editor.ask<CodeAction[]>('textDocument/codeAction', {
      textDocument,
      range: { start: position, end: position },
      context: { diagnostics: [], only: ['quickfix'] },
    });
    const fix = actions.find((each) => each.diagnostics?.some(({ code }) => code === 'decimal-comma'));
    expect(fix?.kind).toBe('quickfix');
    const [change] = fix?.edit?.documentChanges ?? [];
    expect(change).toMatchObject({ textDocument: { uri: notebook.uriOf(1), version: 1 } });
    const edits = change !== undefined && 'edits' in change ? (change.edits as TextEdit[]) : [];
    expect(textAfter(notebook.cells[1]?.cell.value ?? '', edits)).toContain('map: 13.1 inHg');
  });

  it('rewrites are offered only to those who ask for them', async () => {
    const { editor, notebook } = await opened();
    const { textDocument, position } = placeIn(notebook, 1, '13.1 inHg');
    const ask = (only: readonly string[]) =>
      editor.ask<CodeAction[]>('textDocument/codeAction', {
        textDocument,
        range: { start: position, end: position },
        context: { diagnostics: [], only },
      });
    const rewrites = await ask(['refactor']);
    expect(rewrites.length).toBeGreaterThan(0);
    expect(rewrites.every((each) => each.kind?.startsWith('refactor.'))).toBe(true);
    expect(await ask(['quickfix'])).toEqual([]);
  });
});

describe('in a file that is open as text', () => {
  it('places count in the file, and names reach across `---`', async () => {
    const editor = await Editor.start({ service });
    await editor.openText(uri, text);
    const found = await editor.ask<Location[]>('textDocument/definition', {
      textDocument: { uri },
      position: { line: 13, character: 20 },
    });
    expect(found).toEqual([
      { uri, range: { start: { line: 7, character: 2 }, end: { line: 7, character: 5 } } },
    ]);
    const symbols = await editor.ask<DocumentSymbol[]>('textDocument/documentSymbol', {
      textDocument: { uri },
    });
    expect(symbols).toHaveLength(4);
  });

  it('a question on a `---` line has no answer', async () => {
    const editor = await Editor.start({ service });
    await editor.openText(uri, text);
    const place = { textDocument: { uri }, position: { line: 2, character: 1 } };
    expect(await editor.ask('textDocument/hover', place)).toBeNull();
    expect(await editor.ask('textDocument/completion', place)).toBeNull();
  });

  it('edits are answered at once, without a pause', async () => {
    const editor = await Editor.start({ service });
    await editor.openText(uri, text);
    await editor.editText(uri, 'as: idle', 'as: first');
    const found = await editor.ask<Location[] | null>('textDocument/definition', {
      textDocument: { uri },
      position: { line: 13, character: 20 },
    });
    expect(found ?? []).toEqual([]);
  });

  it('a stray word behind `---` can be moved to a line of its own', async () => {
    const editor = await Editor.start({ service });
    await editor.openText(uri, text.replace('---\nreadings', '--- readings'));
    const at = { line: 2, character: 6 };
    const actions = await editor.ask<CodeAction[]>('textDocument/codeAction', {
      textDocument: { uri },
      range: { start: at, end: at },
      context: { diagnostics: [] },
    });
    const [change] = actions[0]?.edit?.documentChanges ?? [];
    const edits = change !== undefined && 'edits' in change ? (change.edits as TextEdit[]) : [];
    expect(textAfter(text.replace('---\nreadings', '--- readings'), edits)).toBe(text);
  });
});

describe('a question that is taken back', () => {
  it('is answered as cancelled', async () => {
    const { editor, notebook } = await opened();
    const { CancellationTokenSource } = await import('vscode-languageserver');
    const source = new CancellationTokenSource();
    const asked = editor.connection.sendRequest(
      'textDocument/hover',
      placeIn(notebook, 1, 'map'),
      source.token,
    );
    source.cancel();
    await expect(asked).rejects.toMatchObject({ code: -32800 });
  });
});

describe('a document that is not open', () => {
  it('has no answers', async () => {
    const { editor } = await opened();
    const place = { textDocument: { uri: 'file:///cases/other.diag' }, position: { line: 0, character: 0 } };
    expect(await editor.ask('textDocument/hover', place)).toBeNull();
    expect(await editor.ask('textDocument/documentSymbol', place)).toBeNull();
    expect(await editor.ask('textDocument/semanticTokens/full', place)).toEqual({ data: [] });
  });
});

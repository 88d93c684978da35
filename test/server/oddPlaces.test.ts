import { describe, expect, it } from 'vitest';
import type { WorkspaceEdit } from 'vscode-languageserver';
import { service } from '../../core/service/service.ts';
import { damagedCases } from '../support/damagedCases.ts';
import { Editor } from './editor.ts';

const positions = [
  { line: 0, character: 0 },
  { line: 0, character: 1_000_000_000 },
  { line: 3, character: 7 },
  { line: 7, character: 12 },
  { line: 1_000_000, character: 0 },
  { line: 2_147_483_647, character: 2_147_483_647 },
];

/** All that an editor asks about a place or a document, each with what else it tells. */
function questions(uri: string, position: { line: number; character: number }) {
  const textDocument = { uri };
  const range = { start: position, end: { line: position.line + 3, character: 2 } };
  return [
    ['textDocument/hover', { textDocument, position }],
    ['textDocument/completion', { textDocument, position }],
    ['textDocument/signatureHelp', { textDocument, position }],
    ['textDocument/definition', { textDocument, position }],
    ['textDocument/references', { textDocument, position, context: { includeDeclaration: true } }],
    ['textDocument/selectionRange', { textDocument, positions: [position] }],
    ['textDocument/inlayHint', { textDocument, range }],
    ['textDocument/codeAction', { textDocument, range, context: { diagnostics: [] } }],
    ['textDocument/documentSymbol', { textDocument }],
    ['textDocument/foldingRange', { textDocument }],
    ['textDocument/semanticTokens/full', { textDocument }],
    ['textDocument/documentLink', { textDocument }],
    ['textDocument/formatting', { textDocument, options: { tabSize: 2, insertSpaces: true } }],
  ] as const;
}

describe('a question about a place that is not there, or in a damaged text', () => {
  it('has an answer or none, in cells, in files and where nothing is open', {
    timeout: 120_000,
  }, async () => {
    const editor = await Editor.start({ service });
    let answered = 0;
    const askAll = async (uri: string, of: readonly (typeof positions)[number][]): Promise<void> => {
      for (const position of of) {
        const asked = questions(uri, position).map(([method, params]) => editor.ask<unknown>(method, params));
        for (const answer of await Promise.all(asked)) if (answer !== null) answered++;
      }
    };
    await askAll('file:///nowhere.diag', positions.slice(0, 2));
    let at = 0;
    for (const text of damagedCases(77, 6)) {
      const notebook = await editor.openNotebook(`file:///cases/${at}.diag`, text);
      await askAll(notebook.uriOf(Math.min(1, notebook.cells.length - 1)), positions);
      const file = `file:///texts/${at++}.diag`;
      await editor.openText(file, text);
      await askAll(file, positions);
      await editor.closeText(file);
    }
    expect(answered).toBeGreaterThan(300);
  });

  it('a rename there changes nothing', async () => {
    const editor = await Editor.start({ service });
    await editor.openText('file:///a.diag', 'diag: 1\ncase: A\n');
    for (const position of positions) {
      const place = { textDocument: { uri: 'file:///a.diag' }, position };
      const ask = (method: string, more: object = {}): Promise<unknown> =>
        editor.ask<WorkspaceEdit | null>(method, { ...place, ...more }).catch(String);
      expect([null, 'Error: There is no name here.']).toContain(
        await ask('textDocument/rename', { newName: 'x' }),
      );
      expect([null, 'Error: There is no name here.']).toContain(await ask('textDocument/prepareRename'));
    }
  });
});

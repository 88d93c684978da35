import * as vscode from 'vscode';
import { cellTemplates } from '../../../extension/client/cellTemplates.ts';
import { command, folder, openCase, writeFile } from './caseInEditor.ts';
import { holds, same, test, until } from './testing.ts';

test('a cell of each kind is put in behind the selected one', async () => {
  const opened = await openCase('diag: 1\n---\nrepair: Hose\n');
  for (const kind of Object.keys(cellTemplates)) {
    await opened.select(0);
    const before = opened.notebook.cellCount;
    await command(`diag.insertCell.${kind}`);
    await until(kind, () => opened.notebook.cellCount === before + 1);
    const cell = opened.cell(1);
    if (kind === 'note') same(cell.kind, vscode.NotebookCellKind.Markup, 'the kind of a note');
    else holds(cell.document.getText().startsWith(`${kind}:`), `${kind} starts with its key`);
  }
});

test('a cell is split at the lines `---` that were typed into it', async () => {
  const opened = await openCase('diag: 1\n---\nreadings: A\n');
  await opened.edit(1, 'readings: A', 'readings: A\n---\ncheck: B\n--- # why\nrepair: C');
  await command('diag.splitCellAtSeparators', opened.cell(1).document.uri.toString());
  await until('the split', () => opened.notebook.cellCount === 4);
  same(opened.values(), ['diag: 1', 'readings: A', 'check: B', 'repair: C']);
  same(await opened.saved(), 'diag: 1\n---\nreadings: A\n---\ncheck: B\n--- # why\nrepair: C\n');
});

test('a case opens as text and as a notebook again, and changes go along', async () => {
  const opened = await openCase('diag: 1\n---\nreadings: A\n');
  await opened.edit(1, 'A', 'B');
  await command('diag.openAsText');
  const asText = await until('the text', () => vscode.window.activeTextEditor);
  same(asText.document.getText(), 'diag: 1\n---\nreadings: B\n');
  same(tabs(), ['text']);
  await command('diag.openAsNotebook');
  await until('the notebook', () => vscode.window.activeNotebookEditor);
  same(tabs(), ['notebook']);
});

function tabs(): string[] {
  return vscode.window.tabGroups.all
    .flatMap((group) => group.tabs)
    .map(({ input }) => (input instanceof vscode.TabInputNotebook ? 'notebook' : 'text'));
}

test('all cases of the workspace are checked, open or not', async () => {
  await writeFile('wrong.diag', 'diag: 1\ncase: A\n---\nreadings: Idle\nvalues:\n  map: 101 inHg\n');
  const total = await command<{ errors: number }>('diag.checkWorkspace');
  holds(total.errors > 0, 'errors are counted');
  const wrong = vscode.Uri.joinPath(folder(), 'wrong.diag');
  await until('the problem', () => vscode.languages.getDiagnostics(wrong).length > 0);
  same(vscode.languages.getDiagnostics(wrong)[0]?.range.start.line, 5, 'the line');
});

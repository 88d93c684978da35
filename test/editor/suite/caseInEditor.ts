import * as vscode from 'vscode';
import { until } from './testing.ts';

/** A case file that was written to disk and opened as a notebook. */
export class CaseInEditor {
  readonly uri: vscode.Uri;
  editor: vscode.NotebookEditor;

  constructor(uri: vscode.Uri, editor: vscode.NotebookEditor) {
    this.uri = uri;
    this.editor = editor;
  }

  get notebook(): vscode.NotebookDocument {
    return this.editor.notebook;
  }

  cell(index: number): vscode.NotebookCell {
    return this.notebook.cellAt(index);
  }

  values(): string[] {
    return this.notebook.getCells().map(({ document }) => document.getText());
  }

  /** Saves and gives what is on disk then. */
  async saved(): Promise<string> {
    await this.notebook.save();
    return readText(this.uri);
  }

  /** Replaces a piece of a cell's text, as typing would. */
  async edit(index: number, from: string, to: string): Promise<void> {
    const { document } = this.cell(index);
    const at = document.getText().indexOf(from);
    if (at < 0) throw new Error(`There is no ${from} in cell ${index}.`);
    const edit = new vscode.WorkspaceEdit();
    edit.replace(
      document.uri,
      new vscode.Range(document.positionAt(at), document.positionAt(at + from.length)),
      to,
    );
    if (!(await vscode.workspace.applyEdit(edit))) throw new Error('The edit was refused.');
  }

  /** Selects a cell, as a click beside it would. */
  async select(index: number): Promise<void> {
    const range = new vscode.NotebookRange(index, index + 1);
    this.editor = await vscode.window.showNotebookDocument(this.notebook, { selections: [range] });
    this.editor.selection = range;
    await command('notebook.cell.quitEdit');
    await until('the selection', () => this.editor.selection.start === index);
  }

  /** Puts the cursor into a cell's text, before `text`. */
  async putCursor(index: number, text: string): Promise<void> {
    await this.select(index);
    await command('notebook.cell.edit');
    const { document } = this.cell(index);
    const editor = await until("the cell's editor", () =>
      vscode.window.visibleTextEditors.find((each) => each.document === document),
    );
    const at = document.positionAt(document.getText().indexOf(text));
    editor.selection = new vscode.Selection(at, at);
    await until('the cursor', () => editor.selection.active.isEqual(at));
  }
}

/** The Markdown of what stands under a cell. */
export function resultOf(cell: vscode.NotebookCell): string | undefined {
  const item = cell.outputs[0]?.items.find(({ mime }) => mime === 'text/markdown');
  return item === undefined ? undefined : new TextDecoder().decode(item.data);
}

let count = 0;

/** Writes a file and opens it; `text` may be bytes. */
export async function openCase(
  text: string | Uint8Array,
  name = `case-${++count}.diag`,
): Promise<CaseInEditor> {
  const uri = await writeFile(name, text);
  const notebook = await vscode.workspace.openNotebookDocument(uri);
  const editor = await vscode.window.showNotebookDocument(notebook);
  return new CaseInEditor(uri, editor);
}

export async function writeFile(name: string, text: string | Uint8Array): Promise<vscode.Uri> {
  const uri = vscode.Uri.joinPath(folder(), name);
  await vscode.workspace.fs.writeFile(uri, typeof text === 'string' ? new TextEncoder().encode(text) : text);
  return uri;
}

export async function readText(uri: vscode.Uri): Promise<string> {
  const bytes = await vscode.workspace.fs.readFile(uri);
  return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
}

export function folder(): vscode.Uri {
  const [only] = vscode.workspace.workspaceFolders ?? [];
  if (only === undefined) throw new Error('No folder is open.');
  return only.uri;
}

export async function command<T>(name: string, ...args: readonly unknown[]): Promise<T> {
  return vscode.commands.executeCommand<T>(name, ...args);
}

/** Forgets changes and closes every editor, so that a test leaves nothing to the next one. */
export async function closeEverything(): Promise<void> {
  for (
    let tries = 0;
    tries < 20 && vscode.window.tabGroups.all.some(({ tabs }) => tabs.length > 0);
    tries++
  ) {
    await command('workbench.action.revertAndCloseActiveEditor');
  }
}

import * as vscode from 'vscode';
import { openCase } from './caseInEditor.ts';
import { holds, pause, same, test } from './testing.ts';

/** An extension that does nothing, whose activation is the floor. It holds these tests. */
const floor = 'diagnostic-casebook.casebook-floor';
const subject = 'diagnostic-casebook.casebook';

test('activation takes less than 100 ms more than that of an empty extension', async () => {
  // What the host does once, at its own start, belongs to neither.
  await vscode.commands.getCommands();
  await pause(3000);
  const empty = await activation(floor);
  const own = await activation(subject);
  console.log(`[casebook]   activation: ${own.toFixed(1)} ms, an empty extension ${empty.toFixed(1)} ms`);
  holds(own - empty < 100, `${own} − ${empty} ms is less than 100 ms`);
});

test('what is tested is the installed archive, in the host that is meant', async () => {
  const extension = vscode.extensions.getExtension(subject);
  holds(extension?.isActive === true, 'the extension is active');
  holds(/\/extensions\/[^/]+$/.test(extension?.extensionUri.path ?? ''), 'it was installed');
  await openCase('diag: 1\n');
  same(vscode.window.activeNotebookEditor?.notebook.notebookType, 'diag');
});

async function activation(id: string): Promise<number> {
  const extension = vscode.extensions.getExtension(id);
  if (extension === undefined) throw new Error(`${id} is not installed.`);
  if (extension.isActive) throw new Error(`${id} is active already.`);
  const start = performance.now();
  await extension.activate();
  return performance.now() - start;
}

import * as vscode from 'vscode';
import { openCase } from './caseInEditor.ts';
import { holds, measured, pause, same, test } from './testing.ts';

/** An extension that does nothing, whose activation is the floor. It holds these tests. */
const floor = 'diagnostic-casebook.casebook-floor';
const subject = 'diagnostic-casebook.casebook';

test('activation is measured beside that of an empty extension', async () => {
  // What the host does once, at its own start, belongs to neither.
  await vscode.commands.getCommands();
  await pause(3000);
  const empty = await activation(floor);
  const own = await activation(subject);
  measured('activation', own, empty + 100);
  holds(vscode.extensions.getExtension(subject)?.isActive === true, 'the extension is active');
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

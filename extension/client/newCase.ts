import { l10n, window, workspace } from 'vscode';
import { templates } from '../cli/templates.ts';
import { notebookType } from './notebookType.ts';
import { notebookData } from './serializer.ts';

/** Opens a new case made from a template: the named one, or one that the user chooses. */
export async function newCase(name: unknown): Promise<void> {
  const template = templates.find((each) => each.name === name) ?? (await choose());
  if (template === undefined) return;
  const notebook = await workspace.openNotebookDocument(notebookType, notebookData(template.text));
  await window.showNotebookDocument(notebook);
}

async function choose() {
  const items = templates.map((template) => ({
    label: titled(template.name),
    detail: template.meaning,
    template,
  }));
  const chosen = await window.showQuickPick(items, {
    title: l10n.t('New Case'),
    placeHolder: l10n.t('What do you begin with?'),
    matchOnDetail: true,
    // A walkthrough takes the focus when one of its offers is chosen.
    ignoreFocusOut: true,
  });
  return chosen?.template;
}

/** "compression-test" → "Compression test". */
function titled(name: string): string {
  const words = name.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

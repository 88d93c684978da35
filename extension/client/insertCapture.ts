import {
  FileSystemError,
  l10n,
  NotebookCellData,
  NotebookCellKind,
  NotebookEdit,
  NotebookRange,
  Uri,
  WorkspaceEdit,
  window,
  workspace,
} from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  type CaptureFromFileParams,
  type CaptureFromFileResult,
  captureFromFileRequest,
} from '../shared/protocol.ts';
import { activeCase } from './notebookType.ts';

/** Puts the cells for a recorder's file behind the selected cell: a capture with its channels, and readings from it. */
export async function insertCapture(client: BaseLanguageClient): Promise<void> {
  const editor = activeCase();
  if (editor === undefined) return;
  const { notebook } = editor;
  if (notebook.isUntitled) {
    void window.showInformationMessage(l10n.t('Save the case first: captures lie in its folder or below.'));
    return;
  }
  const folder = Uri.joinPath(notebook.uri, '..');
  const [chosen] =
    (await window.showOpenDialog({
      title: l10n.t('Insert Capture from File'),
      openLabel: l10n.t('Insert'),
      defaultUri: folder,
    })) ?? [];
  if (chosen === undefined) return;
  const file = nameBelow(folder, chosen) ?? (await copied(chosen, folder));
  if (file === undefined) return;
  const params: CaptureFromFileParams = { uri: client.code2ProtocolConverter.asUri(notebook.uri), file };
  const made = await client.sendRequest<CaptureFromFileResult>(captureFromFileRequest, params);
  if ('why' in made) throw new Error(l10n.t('{0} cannot be read: {1}.', file, made.why));
  const at = notebook.cellCount === 0 ? 0 : editor.selection.end;
  const cells = made.cells.map((text) => new NotebookCellData(NotebookCellKind.Code, text, 'diag'));
  const edit = new WorkspaceEdit();
  edit.set(notebook.uri, [NotebookEdit.insertCells(at, cells)]);
  await workspace.applyEdit(edit);
  const place = new NotebookRange(at, at + 1);
  editor.selection = place;
  editor.revealRange(place);
  if ('asks' in made)
    void window.showWarningMessage(l10n.t('{0}: {1}. The cell offers the choice.', file, made.asks));
  else void window.showInformationMessage(l10n.t('Read so: {0}.', made.readAs));
}

function nameBelow(folder: Uri, file: Uri): string | undefined {
  const start = `${folder.path.replace(/\/$/, '')}/`;
  const isBelow = file.scheme === folder.scheme && file.authority === folder.authority;
  return isBelow && file.path.startsWith(start) ? file.path.slice(start.length) : undefined;
}

/** A case reads nothing outside its folder: the file is copied there, if the user wants that. */
async function copied(from: Uri, folder: Uri): Promise<string | undefined> {
  const name = `captures/${from.path.split('/').at(-1) ?? ''}`;
  const copy = l10n.t('Copy to {0}', name);
  const answer = await window.showInformationMessage(
    l10n.t('A case reads only files in its own folder or below.'),
    { modal: true },
    copy,
  );
  if (answer !== copy) return undefined;
  try {
    await workspace.fs.copy(from, Uri.joinPath(folder, name), { overwrite: false });
  } catch (problem) {
    if (!(problem instanceof FileSystemError) || problem.code !== 'FileExists') throw problem;
    throw new Error(l10n.t('There is a file {0} already. Rename one of the two.', name));
  }
  return name;
}

import { commands, FileType, l10n, ProgressLocation, Uri, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  type CheckFileParams,
  type CheckFileResult,
  checkFileRequest,
  forgetFilesNotification,
} from '../shared/protocol.ts';

/** Checks every case of the workspace, open or not; what is found stands in the list of problems. */
export async function checkWorkspace(client: BaseLanguageClient): Promise<CheckFileResult | undefined> {
  const files = (await caseFiles()).sort((a, b) => (a.path < b.path ? -1 : 1));
  if (files.length === 0) {
    void window.showInformationMessage(l10n.t('There are no cases in this workspace.'));
    return undefined;
  }
  await client.sendNotification(forgetFilesNotification);
  const unread: string[] = [];
  const total = { errors: 0, warnings: 0, infos: 0 };
  let done = 0;
  await window.withProgress(
    { location: ProgressLocation.Notification, title: l10n.t('Checking cases'), cancellable: true },
    async (progress, cancel) => {
      for (const uri of files) {
        if (cancel.isCancellationRequested) return;
        progress.report({ message: workspace.asRelativePath(uri), increment: 100 / files.length });
        const counts = await checkFile(client, uri);
        if (counts === undefined) unread.push(workspace.asRelativePath(uri));
        else {
          total.errors += counts.errors;
          total.warnings += counts.warnings;
          total.infos += counts.infos;
        }
        done++;
      }
    },
  );
  void tell(done, files.length, total, unread);
  return total;
}

/** Where the editor has no search for the file system, as in some browsers, the folders are looked through. */
async function caseFiles(): Promise<Uri[]> {
  const found = await workspace.findFiles('**/*.diag');
  if (found.length > 0) return found;
  const inFolders = await Promise.all((workspace.workspaceFolders ?? []).map(({ uri }) => filesIn(uri, 0)));
  return inFolders.flat();
}

async function filesIn(folder: Uri, depth: number): Promise<Uri[]> {
  if (depth > deepest) return [];
  const entries = await workspace.fs.readDirectory(folder);
  const found = await Promise.all(
    entries.map(async ([name, type]) => {
      if (name.startsWith('.') || name === 'node_modules') return [];
      const uri = Uri.joinPath(folder, name);
      if (type === FileType.Directory) return filesIn(uri, depth + 1);
      return type === FileType.File && name.endsWith('.diag') ? [uri] : [];
    }),
  );
  return found.flat();
}

const deepest = 20;

async function checkFile(client: BaseLanguageClient, uri: Uri): Promise<CheckFileResult | undefined> {
  let text: string;
  try {
    const bytes = await workspace.fs.readFile(uri);
    text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return undefined;
  }
  const params: CheckFileParams = { uri: client.code2ProtocolConverter.asUri(uri), text };
  return client.sendRequest<CheckFileResult>(checkFileRequest, params);
}

async function tell(
  done: number,
  all: number,
  { errors, warnings, infos }: CheckFileResult,
  unread: readonly string[],
): Promise<void> {
  const sum = l10n.t(
    'Cases checked: {0} of {1}. Errors: {2}. Warnings: {3}. Remarks: {4}.',
    done,
    all,
    errors,
    warnings,
    infos,
  );
  const more = unread.length === 0 ? '' : ` ${l10n.t('Not readable as UTF-8: {0}.', unread.join(', '))}`;
  const show = l10n.t('Show Problems');
  const say = errors > 0 ? window.showWarningMessage : window.showInformationMessage;
  if ((await say(sum + more, show)) === show)
    await commands.executeCommand('workbench.actions.view.problems');
}

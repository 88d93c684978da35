import { type ExtensionContext, l10n, Uri } from 'vscode';
import { activateCasebook } from './activateCasebook.ts';

/** The extension in a desktop's or a remote machine's extension host: the language server is a process of its own. */
export function activate(context: ExtensionContext): void {
  activateCasebook(context, async (options) => {
    const { LanguageClient, TransportKind } = await import('vscode-languageclient/node');
    const module = Uri.joinPath(context.extensionUri, 'dist', 'server.cjs').fsPath;
    const server = { module, transport: TransportKind.ipc };
    return new LanguageClient('diag', l10n.t('Diagnostic Casebook'), { run: server, debug: server }, options);
  });
}

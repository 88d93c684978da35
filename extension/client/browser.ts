import { type ExtensionContext, l10n, Uri } from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { activateCasebook } from './activateCasebook.ts';

/** The extension in the browser: the language server is a worker. */
export function activate(context: ExtensionContext): void {
  activateCasebook(context, (options) => {
    // Made only when it is asked for: without it a case can still be read and written.
    const start = async () => {
      const script = Uri.joinPath(context.extensionUri, 'dist', 'server.worker.js').toString(true);
      const worker = new Worker(script, { name: 'Diagnostic Casebook' });
      context.subscriptions.push({ dispose: () => worker.terminate() });
      return worker;
    };
    return new LanguageClient('diag', l10n.t('Diagnostic Casebook'), start, options);
  });
}

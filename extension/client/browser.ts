import { type ExtensionContext, l10n, Uri, workspace } from 'vscode';
import { activateCasebook } from './activateCasebook.ts';

/** The extension in the browser: the language server is a worker. */
export function activate(context: ExtensionContext): void {
  activateCasebook(context, async (options) => {
    const { BrowserMessageReader, BrowserMessageWriter, LanguageClient } = await import(
      'vscode-languageclient/browser'
    );
    // Made only when it is asked for: without it a case can still be read and written.
    const start = async () => {
      const script = await scriptAddress(Uri.joinPath(context.extensionUri, 'dist', 'server.worker.js'));
      const worker = new Worker(script, { name: 'Diagnostic Casebook' });
      context.subscriptions.push({ dispose: () => worker.terminate() });
      // The editor puts an object of its own in the place of a worker, which the library would not take for one.
      return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
    };
    return new LanguageClient('diag', l10n.t('Diagnostic Casebook'), start, options);
  });
}

/** A worker can be made from an address of the web. An extension that stands on a remote machine is read first. */
async function scriptAddress(uri: Uri): Promise<string> {
  if (/^https?$/.test(uri.scheme)) return uri.toString(true);
  const bytes = await workspace.fs.readFile(uri);
  return URL.createObjectURL(new Blob([new Uint8Array(bytes)], { type: 'text/javascript' }));
}

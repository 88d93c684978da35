import { type Connection, DidChangeWatchedFilesNotification, type Disposable } from 'vscode-languageserver';

/**
 * Has the client watch exactly the files that open cases name. `watch` is given them anew after a study; the client is
 * asked only when they are others.
 */
export function watchFiles(
  connection: Connection,
): (named: ReadonlyMap<string, ReadonlySet<string>>) => void {
  let watched = '';
  let watching: Promise<Disposable> | undefined;
  return (named) => {
    const watchers = [...named].flatMap(([caseUri, files]) => {
      const baseUri = caseUri.slice(0, caseUri.lastIndexOf('/'));
      return [...files].map((file) => ({ globPattern: { baseUri, pattern: literally(file) } }));
    });
    const now = JSON.stringify(watchers);
    if (now === watched) return;
    watched = now;
    const before = watching;
    watching =
      watchers.length === 0
        ? undefined
        : connection.client.register(DidChangeWatchedFilesNotification.type, { watchers });
    void before?.then((each) => each.dispose());
  };
}

/** In a pattern these letters stand for others. */
const literally = (file: string): string => file.replace(/[[\]{}*?]/g, '?').replace(/^\.\//, '');

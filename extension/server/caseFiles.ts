import { type CaseFiles, type FileContent, type NoFile, noFiles } from '../../core/recording/files.ts';
import type { Host } from './host.ts';

/**
 * The files that cases name, by the case's uri. Where the server can read the case's folder itself it does;
 * elsewhere (a browser, a file system of an extension) the client reads, and the case is studied again when it has.
 */
export class FilesOfCases {
  readonly #host: Host;
  readonly #fetch: (caseUri: string, file: string) => Promise<FileContent>;
  readonly #arrived: (caseUri: string) => void;
  readonly #cases = new Map<string, OfCase>();

  constructor(
    host: Host,
    fetch: (caseUri: string, file: string) => Promise<FileContent>,
    arrived: (caseUri: string) => void,
  ) {
    this.#host = host;
    this.#fetch = fetch;
    this.#arrived = arrived;
  }

  of(caseUri: string): CaseFiles {
    return (file) => this.#ofCase(caseUri).files(file);
  }

  /** Resolves when nothing of the case is on its way. */
  async settled(caseUri: string): Promise<void> {
    const waiting = this.#cases.get(caseUri)?.waiting;
    while (waiting !== undefined && waiting.size > 0) await Promise.all(waiting);
  }

  /** Something has happened to files: what the client fetched is asked for again. */
  changed(caseUri: string): void {
    this.#cases.get(caseUri)?.forget();
  }

  uris(): readonly string[] {
    return [...this.#cases.keys()];
  }

  release(caseUri: string): void {
    this.#cases.delete(caseUri);
  }

  #ofCase(caseUri: string): OfCase {
    let found = this.#cases.get(caseUri);
    if (found === undefined) {
      found = this.#newCase(caseUri);
      this.#cases.set(caseUri, found);
    }
    return found;
  }

  #newCase(caseUri: string): OfCase {
    const waiting = new Set<Promise<void>>();
    const beside = /^untitled:/.test(caseUri) ? noFiles : this.#host.filesBeside(caseUri);
    if (beside !== undefined) {
      return { waiting, forget: () => undefined, files: beside };
    }
    const contents = new Map<string, FileContent>();
    const fetch = (file: string): void => {
      const work = this.#fetch(caseUri, file).then((content) => {
        waiting.delete(work);
        contents.set(file, content);
        if (this.#cases.get(caseUri)?.waiting === waiting) this.#arrived(caseUri);
      });
      waiting.add(work);
    };
    return {
      waiting,
      // What is there stays until the new content has come.
      forget: () => {
        for (const [file, content] of contents) {
          if (content.kind === 'bytes') fetch(file);
          else contents.delete(file);
        }
      },
      files: (file) => {
        const content = contents.get(file);
        if (content !== undefined) return content;
        contents.set(file, onItsWay);
        fetch(file);
        return onItsWay;
      },
    };
  }
}

interface OfCase {
  readonly files: CaseFiles;
  readonly waiting: ReadonlySet<Promise<void>>;
  readonly forget: () => void;
}

const onItsWay: NoFile = { kind: 'none', why: { is: 'on its way' } };

import type { CaseFiles } from '../../core/recording/files.ts';

/** What the server needs of the machine that it runs on. */
export interface Host {
  /** Milliseconds from some beginning. */
  readonly now: () => number;
  /** Runs `work` once, after the pause (in milliseconds), and not before the present work is done. Returns what calls it off. */
  readonly later: (pause: number, work: () => void) => () => void;
  /** The files beside a case that the server can read itself; undefined where the client must. */
  readonly filesBeside: (caseUri: string) => CaseFiles | undefined;
  /** How the client may hand over bytes: as they are, or, where messages are text, in base64. */
  readonly takes: 'bytes' | 'base64';
}

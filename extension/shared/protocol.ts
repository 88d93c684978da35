import type { WhyNoFile } from '../../core/recording/files.ts';
import type { CellResult } from '../../core/service/cellResult.ts';

/**
 * What server and client say to each other beyond the language server protocol.
 * Everything here is plain JSON. Lines and characters count from 0, characters in UTF-16 units, as in that protocol.
 */

/**
 * Server → client, a notification: the results of a whole notebook as it stands at `version`.
 * It is sent after every change; a client that already knows of a later version drops it.
 */
export const resultsNotification = 'diag/results';

export interface ResultsParams {
  /** The notebook document. */
  readonly uri: string;
  /** The version of the notebook document that was studied. */
  readonly version: number;
  /** One entry for each cell, in the notebook's order, notes included. */
  readonly cells: readonly ResultOfCell[];
}

export interface ResultOfCell {
  /** The cell's text document. */
  readonly cell: string;
  /** The version of the cell's text document that was studied. */
  readonly version: number;
  /** What is shown under the cell, and what its status item says; left out while it is what was sent last for this cell. */
  readonly result?: CellResult;
}

/** Client → server, a request: study this notebook again from nothing, and send all of its results. */
export const recomputeRequest = 'diag/recompute';

export interface RecomputeParams {
  readonly uri: string;
}

/**
 * Client → server, a request: check a case file that is not open. The server pushes diagnostics for it and answers
 * how many there are. A file that is open already is left alone and answers its own counts.
 */
export const checkFileRequest = 'diag/checkFile';

export interface CheckFileParams {
  readonly uri: string;
  readonly text: string;
}

export interface CheckFileResult {
  readonly errors: number;
  readonly warnings: number;
  readonly infos: number;
}

/**
 * Server → client, a request: the content of a file that a case names, unpacked, or why there is none. It is asked for
 * where the server cannot read the case's folder itself.
 */
export const readFileRequest = 'diag/readFile';

export interface ReadFileParams {
  /** The case. */
  readonly uri: string;
  /** The file's name, as it stands in the case. */
  readonly file: string;
  /** How bytes may be handed over: where messages are text, in base64 (RFC 4648, section 4). */
  readonly as: 'bytes' | 'base64';
}

export type ReadFileResult = { readonly content: Uint8Array | string } | { readonly why: WhyNoFile };

/** Client → server, a request: cells for a file that lies in the folder of a case or below, which need not be saved. */
export const captureFromFileRequest = 'diag/captureFromFile';

export interface CaptureFromFileParams {
  /** The case, which is open. */
  readonly uri: string;
  /** The file, as the case would name it. */
  readonly file: string;
}

/** The cells' texts and how the file was read; or what its author is asked, which the cell offers; or why nothing could be made of it. */
export type CaptureFromFileResult =
  | { readonly cells: readonly string[]; readonly readAs: string }
  | { readonly cells: readonly string[]; readonly asks: string }
  | { readonly why: string };

/** Client → server, a notification: take back the diagnostics of the files that `diag/checkFile` was asked for. */
export const forgetFilesNotification = 'diag/forgetFiles';

/**
 * Client → server, a notification: whether a notebook stands in a tab. One that does not has no findings in the list of
 * problems, even when the editor keeps it open; until something is said of it, a notebook counts as shown.
 */
export const shownNotification = 'diag/shown';

export interface ShownParams {
  readonly uri: string;
  readonly shown: boolean;
}

/**
 * The client's command behind the offer to split a cell that holds a `---` line.
 * A code action of the server names it with one argument: the uri of the cell's text document.
 */
export const splitCellCommand = 'diag.splitCellAtSeparators';

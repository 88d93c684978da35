/**
 * The files that a case names, as the host hands them over. The core never opens one: it asks by the name that stands
 * in the case, and gets the unpacked content or the reason why there is none.
 */
export type CaseFiles = (file: string) => FileContent;

export type FileContent = FileBytes | NoFile;

/** The same object stands for the same content: what was read from it is remembered by it. */
export interface FileBytes {
  readonly kind: 'bytes';
  readonly size: number;
  /**
   * The bytes from the first to the last, at every call. All pieces but the last are `pieceSize` long; each is good
   * until the next one is taken. Returns why the rest is lost where the host cannot read on.
   */
  readonly pieces: () => Generator<Uint8Array, WhyNoFile | undefined>;
}

/** Bytes handed over at once: few enough to stay near the processor while they are read. */
export const pieceSize = 1024 * 1024;

/** A content that is all there. */
export function inMemory(bytes: Uint8Array): FileBytes {
  return {
    kind: 'bytes',
    size: bytes.length,
    *pieces() {
      for (let at = 0; at < bytes.length; at += pieceSize) yield bytes.subarray(at, at + pieceSize);
      return undefined;
    },
  };
}

export interface NoFile {
  readonly kind: 'none';
  readonly why: WhyNoFile;
}

/** Why there are no bytes. Sizes count bytes. */
export type WhyNoFile =
  | { readonly is: 'not there' }
  | { readonly is: 'a folder' }
  | { readonly is: 'outside'; readonly how: OutsideBy }
  /** The case has no folder yet. */
  | { readonly is: 'not saved' }
  | { readonly is: 'too large'; readonly size: number }
  /** A packed file whose content is larger than `largestFile`. */
  | { readonly is: 'too large inside'; readonly size: number }
  | { readonly is: 'packing damaged' }
  /** The host is still fetching it, and asks again when it is there. */
  | { readonly is: 'on its way' }
  | { readonly is: 'not readable'; readonly reason: string };

/** How a name leads out of the case's own folder. */
export type OutsideBy = 'absolute path' | 'parent folder' | 'address' | 'link' | 'link not resolved';

/** Bytes of a file, packed or unpacked: an hour of five channels at a thousand samples a second is half of it. */
export const largestFile = 256 * 1024 * 1024;

/** A case without a folder: it has no files. */
export const noFiles: CaseFiles = () => unsaved;

const unsaved: NoFile = { kind: 'none', why: { is: 'not saved' } };

/** How a name leads out of the case's folder as it is written; links are for the host to see. */
export function leadsOut(file: string): OutsideBy | undefined {
  if (/^[A-Za-z]:/.test(file) || /^[\\/]/.test(file)) return 'absolute path';
  if (/^[A-Za-z][\w+.-]*:/.test(file)) return 'address';
  return file.split(/[\\/]/).includes('..') ? 'parent folder' : undefined;
}

/** Whether a study that was made with the one need not be made anew with the other. */
export function sameContent(a: FileContent | undefined, b: FileContent | undefined): boolean {
  if (a === b) return true;
  return a?.kind === 'none' && b?.kind === 'none' && JSON.stringify(a.why) === JSON.stringify(b.why);
}

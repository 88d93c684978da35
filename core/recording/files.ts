/**
 * The files that a case names, as the host hands them over. The core never opens one: it asks by the name that stands
 * in the case, and gets the unpacked bytes or the reason why there are none.
 */
export type CaseFiles = (file: string) => FileContent;

export type FileContent = FileBytes | NoFile;

/** The same array stands for the same content: what was read from it is remembered by it. */
export interface FileBytes {
  readonly kind: 'bytes';
  readonly bytes: Uint8Array;
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
  if (a === undefined || b === undefined) return false;
  if (a.kind === 'bytes') return b.kind === 'bytes' && a.bytes === b.bytes;
  return b.kind === 'none' && JSON.stringify(a.why) === JSON.stringify(b.why);
}

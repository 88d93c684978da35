import { type FileStat, FileSystemError, FileType, Uri, workspace } from 'vscode';
import { largestFile, leadsOut, type WhyNoFile } from '../../core/recording/files.ts';
import { base64 } from '../../core/report/picture.ts';
import type { ReadFileParams, ReadFileResult } from '../shared/protocol.ts';

/**
 * Reads a file that a case names, for a server that cannot: in a browser, or on a file system of an extension.
 * The editor does not tell where a link leads, so links are refused, on every step of the way.
 */
export async function readCaseFile({ uri, file, as }: ReadFileParams): Promise<ReadFileResult> {
  const how = leadsOut(file);
  if (how !== undefined) return { why: { is: 'outside', how } };
  try {
    const place = await placeOf(Uri.joinPath(Uri.parse(uri), '..'), file);
    if ('is' in place) return { why: place };
    const bytes = await workspace.fs.readFile(place);
    const plain = bytes[0] === 0x1f && bytes[1] === 0x8b ? await unpacked(bytes) : bytes;
    if ('is' in plain) return { why: plain };
    return { content: as === 'base64' ? base64(plain) : plain };
  } catch (error) {
    return { why: whyNot(error) };
  }
}

async function placeOf(folder: Uri, file: string): Promise<Uri | WhyNoFile> {
  let place = folder;
  let last: FileStat | undefined;
  for (const step of file.split(/[\\/]/)) {
    if (step === '' || step === '.') continue;
    place = Uri.joinPath(place, step);
    last = await workspace.fs.stat(place);
    if ((last.type & FileType.SymbolicLink) !== 0) return { is: 'outside', how: 'link not resolved' };
  }
  if (last?.type !== FileType.File) return { is: 'a folder' };
  return last.size > largestFile ? { is: 'too large', size: last.size } : place;
}

/** What is packed with gzip (RFC 1952); no more than the bound is unpacked. */
async function unpacked(packed: Uint8Array): Promise<Uint8Array | WhyNoFile> {
  const pieces: Uint8Array[] = [];
  let length = 0;
  try {
    const reader = new Blob([new Uint8Array(packed)])
      .stream()
      .pipeThrough(new DecompressionStream('gzip'))
      .getReader();
    for (let next = await reader.read(); !next.done; next = await reader.read()) {
      length += next.value.length;
      if (length > largestFile) {
        await reader.cancel();
        return { is: 'too large inside', size: largestFile };
      }
      pieces.push(next.value);
    }
  } catch {
    return { is: 'packing damaged' };
  }
  const all = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}

function whyNot(error: unknown): WhyNoFile {
  const code = error instanceof FileSystemError ? error.code : '';
  if (code === 'FileNotFound') return { is: 'not there' };
  const reason = code === 'NoPermissions' ? 'this user may not' : 'the editor cannot read it';
  return { is: 'not readable', reason };
}

import { closeSync, fstatSync, openSync, readSync, realpathSync, type Stats, statSync } from 'node:fs';
import { isAbsolute, join, relative, sep } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { type FileContent, largestFile, leadsOut, type WhyNoFile } from '../../core/recording/files.ts';

/** A file in a case's folder or below: its true path and what the disk says about it. */
export interface FilePlace {
  readonly path: string;
  readonly about: Stats;
}

/**
 * Finds a file that a case names. One that leads out of the case's folder, by `..`, from the root, by an address or
 * through a link, is refused before it is opened; so is a folder, a device, and a file over the bound.
 */
export function placeBeside(folder: string, file: string): FilePlace | WhyNoFile {
  const how = leadsOut(file);
  if (how !== undefined) return { is: 'outside', how };
  try {
    const home = realpathSync(folder);
    const path = realpathSync(join(home, file));
    const inside = relative(home, path);
    if (inside === '..' || inside.startsWith(`..${sep}`) || isAbsolute(inside))
      return { is: 'outside', how: 'link' };
    const about = statSync(path);
    if (about.isDirectory()) return { is: 'a folder' };
    if (!about.isFile()) return { is: 'not readable', reason: 'it is a device and no file' };
    return about.size > largestFile ? { is: 'too large', size: about.size } : { path, about };
  } catch (error) {
    return whyNot(error);
  }
}

/** The content of a file beside a case, unpacked; or why there is none. */
export function readFileBeside(folder: string, file: string): FileContent {
  const place = placeBeside(folder, file);
  return 'is' in place ? { kind: 'none', why: place } : readPlace(place);
}

export function readPlace({ path }: FilePlace): FileContent {
  try {
    const bytes = bytesOf(path);
    if (!(bytes instanceof Uint8Array)) return { kind: 'none', why: bytes };
    return bytes[0] === 0x1f && bytes[1] === 0x8b ? unpacked(bytes) : { kind: 'bytes', bytes };
  } catch (error) {
    return { kind: 'none', why: whyNot(error) };
  }
}

/** Never more than the size that the file had when it was opened: it may be growing. */
function bytesOf(path: string): Uint8Array | WhyNoFile {
  const file = openSync(path, 'r');
  try {
    const { size } = fstatSync(file);
    if (size > largestFile) return { is: 'too large', size };
    const bytes = new Uint8Array(size);
    let length = 0;
    while (length < size) {
      const read = readSync(file, bytes, length, size - length, length);
      if (read === 0) break;
      length += read;
    }
    return bytes.subarray(0, length);
  } finally {
    closeSync(file);
  }
}

/** What is packed with gzip (RFC 1952), by its first bytes, whatever its name. No more than the bound is unpacked. */
function unpacked(packed: Uint8Array): FileContent {
  try {
    return { kind: 'bytes', bytes: gunzipSync(packed, { maxOutputLength: largestFile }) };
  } catch (error) {
    const code = codeOf(error);
    if (code === 'ERR_BUFFER_TOO_LARGE') {
      return { kind: 'none', why: { is: 'too large inside', size: largestFile } };
    }
    return { kind: 'none', why: { is: 'packing damaged' } };
  }
}

function whyNot(error: unknown): WhyNoFile {
  const code = codeOf(error);
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return { is: 'not there' };
    case 'EACCES':
    case 'EPERM':
      return { is: 'not readable', reason: 'this user may not' };
    case 'ELOOP':
      return { is: 'not readable', reason: 'it is a link that leads back to itself' };
    default:
      return { is: 'not readable', reason: code === '' ? 'the machine says no' : `the machine says ${code}` };
  }
}

const codeOf = (error: unknown): string =>
  typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : '';

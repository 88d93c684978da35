import { closeSync, fstatSync, openSync, readSync, realpathSync, type Stats, statSync } from 'node:fs';
import { isAbsolute, join, relative, sep } from 'node:path';
import { gunzipSync } from 'node:zlib';
import {
  type FileBytes,
  type FileContent,
  inMemory,
  largestFile,
  leadsOut,
  pieceSize,
  type WhyNoFile,
} from '../../core/recording/files.ts';

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
    const file = openSync(path, 'r');
    try {
      const about = fstatSync(file);
      const { size } = about;
      if (size > largestFile) return { kind: 'none', why: { is: 'too large', size } };
      const start = filled(file, new Uint8Array(Math.min(size, pieceSize)), 0);
      const isPacked = start[0] === 0x1f && start[1] === 0x8b;
      if (size > start.length && !isPacked) return onDisk(path, about);
      const bytes = size > start.length ? filled(file, new Uint8Array(size), 0) : start;
      return isPacked ? unpacked(bytes) : inMemory(bytes);
    } finally {
      closeSync(file);
    }
  } catch (error) {
    return { kind: 'none', why: whyNot(error) };
  }
}

/**
 * A file that is read as often as its content is wanted, through one piece of memory: twice as fast as making room
 * for all of it. Never more than the size that it had when it was found: it may be growing.
 */
function onDisk(path: string, found: Stats): FileBytes {
  const { size } = found;
  return {
    kind: 'bytes',
    size,
    *pieces() {
      let file: number | undefined;
      try {
        file = openSync(path, 'r');
        if (!isSame(fstatSync(file), found)) return changed;
        const piece = new Uint8Array(pieceSize);
        for (let at = 0; at < size; at += pieceSize) {
          const wanted = Math.min(pieceSize, size - at);
          const bytes = filled(file, piece.subarray(0, wanted), at);
          if (bytes.length < wanted) return changed;
          yield bytes;
        }
        return undefined;
      } catch (error) {
        return whyNot(error);
      } finally {
        if (file !== undefined) closeSync(file);
      }
    },
  };
}

const isSame = (a: Stats, b: Stats): boolean =>
  a.size >= b.size && a.ino === b.ino && a.dev === b.dev && (a.size > b.size || a.mtimeMs === b.mtimeMs);

const changed: WhyNoFile = {
  is: 'not readable',
  reason: 'it changed while it was read. Check the case again',
};

/** Reads from a place on until the bytes are full or the file ends. */
function filled(file: number, bytes: Uint8Array, from: number): Uint8Array {
  let length = 0;
  while (length < bytes.length) {
    const read = readSync(file, bytes, length, bytes.length - length, from + length);
    if (read === 0) break;
    length += read;
  }
  return bytes.subarray(0, length);
}

/** What is packed with gzip (RFC 1952), by its first bytes, whatever its name. No more than the bound is unpacked. */
function unpacked(packed: Uint8Array): FileContent {
  try {
    return inMemory(gunzipSync(packed, { maxOutputLength: largestFile }));
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

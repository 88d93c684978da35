import { closeSync, openSync, readSync } from 'node:fs';

const pieceSize = 1024 * 1024;

/** The first bytes of a file, or of what is piped in (0): all of it, but no more than `most`. Throws what the machine says. */
export function readAtMost(from: string | 0, most: number): Buffer {
  const file = from === 0 ? 0 : openSync(from, 'r');
  try {
    const pieces: Buffer[] = [];
    for (let left = most; left > 0; ) {
      const piece = Buffer.allocUnsafe(Math.min(pieceSize, left));
      const read = readSync(file, piece);
      if (read === 0) break;
      pieces.push(piece.subarray(0, read));
      left -= read;
    }
    return Buffer.concat(pieces);
  } finally {
    if (file !== 0) closeSync(file);
  }
}

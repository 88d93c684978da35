/** How a file's characters are written. */
export type Encoding = 'UTF-8' | 'UTF-16 little-endian' | 'UTF-16 big-endian';

/** Bytes handed to a reader at once. */
const pieceSize = 1024 * 1024;

/** By its byte-order mark, or by the zero beside each character of a plain text without one. */
export function encodingOf(bytes: Uint8Array): { readonly encoding: Encoding; readonly mark: number } {
  const [a, b, c, d] = bytes;
  if (a === 0xef && b === 0xbb && c === 0xbf) return { encoding: 'UTF-8', mark: 3 };
  if (a === 0xff && b === 0xfe) return { encoding: 'UTF-16 little-endian', mark: 2 };
  if (a === 0xfe && b === 0xff) return { encoding: 'UTF-16 big-endian', mark: 2 };
  if (bytes.length >= 4 && a !== 0 && b === 0 && c !== 0 && d === 0)
    return { encoding: 'UTF-16 little-endian', mark: 0 };
  if (bytes.length >= 4 && a === 0 && b !== 0 && c === 0 && d !== 0)
    return { encoding: 'UTF-16 big-endian', mark: 0 };
  return { encoding: 'UTF-8', mark: 0 };
}

/** The file piece by piece as UTF-8, without its mark, so that one scan serves every encoding. */
export function* utf8Pieces(bytes: Uint8Array): Generator<Uint8Array> {
  const { encoding, mark } = encodingOf(bytes);
  if (encoding === 'UTF-8') {
    for (let at = mark; at < bytes.length; at += pieceSize) yield bytes.subarray(at, at + pieceSize);
    return;
  }
  const low = encoding === 'UTF-16 little-endian' ? 0 : 1;
  // Every unit of two bytes gives three at most; a half pair waits for its other half.
  const piece = new Uint8Array((pieceSize / 2) * 3 + 4);
  let high = 0;
  for (let at = mark; at < bytes.length; at += pieceSize) {
    const end = Math.min(at + pieceSize, bytes.length - 1);
    let length = 0;
    for (let i = at; i < end; i += 2) {
      const unit = (bytes[i + low] ?? 0) | ((bytes[i + 1 - low] ?? 0) << 8);
      if (unit < 0x80) piece[length++] = unit;
      else if (unit < 0x800) {
        piece[length++] = 0xc0 | (unit >> 6);
        piece[length++] = 0x80 | (unit & 63);
      } else if (unit >= 0xd800 && unit < 0xdc00) high = unit;
      else if (unit >= 0xdc00 && unit < 0xe000) {
        const code = 0x10000 + ((high & 0x3ff) << 10) + (unit & 0x3ff);
        piece[length++] = 0xf0 | (code >> 18);
        piece[length++] = 0x80 | ((code >> 12) & 63);
        piece[length++] = 0x80 | ((code >> 6) & 63);
        piece[length++] = 0x80 | (code & 63);
      } else {
        piece[length++] = 0xe0 | (unit >> 12);
        piece[length++] = 0x80 | ((unit >> 6) & 63);
        piece[length++] = 0x80 | (unit & 63);
      }
    }
    yield piece.subarray(0, length);
  }
}

/**
 * Bytes as text. What is no UTF-8 is taken for Latin-1 (ISO 8859-1), byte by byte: the tools that do not write UTF-8
 * write their degree and micro signs so.
 */
export function textOf(bytes: Uint8Array, start: number, end: number): string {
  let text = '';
  let at = start;
  while (at < end) {
    const first = bytes[at] ?? 0;
    const size = first < 0x80 ? 1 : first >= 0xf0 ? 4 : first >= 0xe0 ? 3 : first >= 0xc2 ? 2 : 0;
    let code = size === 1 ? first : first & (0x7f >> size);
    let known = 1;
    while (known < size && at + known < end && ((bytes[at + known] ?? 0) & 0xc0) === 0x80) {
      code = (code << 6) | ((bytes[at + known] ?? 0) & 0x3f);
      known++;
    }
    const whole = size > 0 && known === size && code <= 0x10ffff;
    text += whole ? String.fromCodePoint(code) : String.fromCharCode(first);
    at += whole ? size : 1;
  }
  return text;
}

/** Whether there is a byte that no UTF-8 text has there. */
export function isUtf8(bytes: Uint8Array, start: number, end: number): boolean {
  for (let at = start; at < end; ) {
    const first = bytes[at] ?? 0;
    const size =
      first < 0x80 ? 1 : first >= 0xf5 ? 0 : first >= 0xf0 ? 4 : first >= 0xe0 ? 3 : first >= 0xc2 ? 2 : 0;
    if (size === 0) return false;
    for (let i = 1; i < size && at + i < end; i++) if (((bytes[at + i] ?? 0) & 0xc0) !== 0x80) return false;
    at += size;
  }
  return true;
}

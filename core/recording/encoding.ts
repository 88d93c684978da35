import { type FileBytes, pieceSize, type WhyNoFile } from './files.ts';

/** How a file's characters are written. */
export type Encoding = 'UTF-8' | 'UTF-16 little-endian' | 'UTF-16 big-endian';

/** Bytes looked at to see how a text without a mark is written. */
const lookedAt = 1024;

/** By its byte-order mark, or by the zero beside nearly each character of a text without one. */
export function encodingOf(bytes: Uint8Array): { readonly encoding: Encoding; readonly mark: number } {
  const [a, b, c] = bytes;
  if (a === 0xef && b === 0xbb && c === 0xbf) return { encoding: 'UTF-8', mark: 3 };
  if (a === 0xff && b === 0xfe) return { encoding: 'UTF-16 little-endian', mark: 2 };
  if (a === 0xfe && b === 0xff) return { encoding: 'UTF-16 big-endian', mark: 2 };
  const zeros = [0, 0];
  const end = Math.min(bytes.length, lookedAt) & ~1;
  for (let at = 0; at < end; at++) if (bytes[at] === 0) zeros[at & 1] = (zeros[at & 1] ?? 0) + 1;
  const [even = 0, odd = 0] = zeros;
  // A heading may be in another script; digits, delimiters and ends of lines are not.
  if (odd > end / 8 && even === 0) return { encoding: 'UTF-16 little-endian', mark: 0 };
  if (even > end / 8 && odd === 0) return { encoding: 'UTF-16 big-endian', mark: 0 };
  return { encoding: 'UTF-8', mark: 0 };
}

/**
 * The file piece by piece as UTF-8, without its mark, so that one scan serves every encoding. Like the content's own,
 * a piece is good until the next one is taken; returns why the rest is lost. What stands behind the text is left out.
 */
export function* utf8Pieces({ pieces }: FileBytes): Generator<Uint8Array, WhyNoFile | undefined> {
  const all = pieces();
  try {
    let next = all.next();
    if (next.done === true) return next.value;
    const { encoding, mark } = encodingOf(next.value);
    const reencode = encoding === 'UTF-8' ? undefined : utf8From(encoding);
    let isHeld = false;
    for (let start = mark; next.done !== true; start = 0) {
      const bytes = next.value.subarray(start);
      const whole = reencode?.(bytes) ?? bytes;
      const piece = withoutPadding(whole);
      if (piece.length > 0) {
        // What seemed to be behind the text was between its lines.
        if (isHeld) yield new Uint8Array(1);
        yield piece;
      }
      isHeld = piece.length < whole.length;
      next = all.next();
    }
    return next.value;
  } finally {
    // Whoever wants no more lets go of the file.
    all.return(undefined);
  }
}

/**
 * Without what may stand behind a text: zeros, which recorders that reserve their file beforehand leave behind
 * when they lose power, and the mark of its end (control-Z) that old systems write.
 */
function withoutPadding(bytes: Uint8Array): Uint8Array {
  let end = bytes.length;
  while (end > 0 && (bytes[end - 1] === 0 || bytes[end - 1] === 0x1a)) end--;
  return end === bytes.length ? bytes : bytes.subarray(0, end);
}

/** Turns the pieces of a file, in order, into UTF-8; all are of whole units but perhaps the last. */
function utf8From(encoding: Exclude<Encoding, 'UTF-8'>): (bytes: Uint8Array) => Uint8Array {
  const low = encoding === 'UTF-16 little-endian' ? 0 : 1;
  // Every unit of two bytes gives three at most; a half pair waits for its other half.
  const piece = new Uint8Array((pieceSize / 2) * 3 + 4);
  let high = 0;
  return (bytes) => {
    let length = 0;
    for (let i = 0; i + 1 < bytes.length; i += 2) {
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
    return piece.subarray(0, length);
  };
}

/** What Windows-1252 has at 0x80 to 0x9F, where ISO 8859-1 has nothing to show (WHATWG Encoding, index windows-1252). */
const windows = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

/**
 * Bytes as text. What is no UTF-8 is taken for Windows-1252, byte by byte: the tools that do not write UTF-8 write
 * their degree and micro signs so, or as ISO 8859-1, which is the same there.
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
    text += whole ? String.fromCodePoint(code) : (windows[first - 0x80] ?? String.fromCharCode(first));
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

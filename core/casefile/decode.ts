import { type Diagnostic, diagnose, type Found } from '../diagnostics/diagnostic.ts';

/**
 * A file's bytes as text: UTF-8, strictly, a byte-order mark kept as its first character.
 * Anything else gives no text and a finding at the file's start; `offset` there counts bytes from 0.
 */
export function decode(bytes: Uint8Array): Found<string | undefined> {
  const order = utf16Order(bytes);
  if (order !== undefined) return refused(diagnose('is-utf16', { start: 0, end: 0 }, { order }));
  const units = new Uint16Array(bytes.length);
  let length = 0;
  let at = 0;
  while (at < bytes.length) {
    const first = bytes[at] ?? 0;
    if (first < 0x80) {
      units[length++] = first;
      at++;
      continue;
    }
    const size = sequenceLength(first, bytes[at + 1] ?? 0);
    let code = first & (0x7f >> size);
    let known = 1;
    while (known < size && isContinuation(bytes[at + known])) {
      code = (code << 6) | ((bytes[at + known] ?? 0) & 0x3f);
      known++;
    }
    if (size === 0 || known < size) return refused(notUtf8(bytes, size === 0 ? at : at + known));
    if (code > 0xffff) {
      units[length++] = 0xd800 + ((code - 0x10000) >> 10);
      units[length++] = 0xdc00 + (code & 0x3ff);
    } else units[length++] = code;
    at += size;
  }
  return { value: textOf(units.subarray(0, length)), diagnostics: [] };
}

const refused = (diagnostic: Diagnostic): Found<undefined> => ({
  value: undefined,
  diagnostics: [diagnostic],
});

function notUtf8(bytes: Uint8Array, offset: number): Diagnostic {
  const at = Math.min(offset, bytes.length - 1);
  const byte = (bytes[at] ?? 0).toString(16).toUpperCase().padStart(2, '0');
  return diagnose('not-utf8', { start: 0, end: 0 }, { offset: at, byte });
}

/** How many bytes a character that starts so has; 0 when none does (The Unicode Standard, table 3-7). */
function sequenceLength(first: number, second: number): 0 | 2 | 3 | 4 {
  if (first >= 0xc2 && first <= 0xdf) return 2;
  if (first >= 0xe0 && first <= 0xef) {
    const overlong = first === 0xe0 && second < 0xa0;
    const surrogate = first === 0xed && second > 0x9f;
    return overlong || surrogate ? 0 : 3;
  }
  if (first >= 0xf0 && first <= 0xf4) {
    const overlong = first === 0xf0 && second < 0x90;
    const beyond = first === 0xf4 && second > 0x8f;
    return overlong || beyond ? 0 : 4;
  }
  return 0;
}

const isContinuation = (byte: number | undefined): boolean => byte !== undefined && (byte & 0xc0) === 0x80;

/** By its byte-order mark, or by the zero beside each letter of an English text without one. */
function utf16Order(bytes: Uint8Array): string | undefined {
  const [a, b, c, d] = bytes;
  if (a === 0xff && b === 0xfe) return 'little-endian';
  if (a === 0xfe && b === 0xff) return 'big-endian';
  if (a === undefined || b === undefined || c === undefined || d === undefined) return undefined;
  if (a !== 0 && b === 0 && c !== 0 && d === 0) return 'little-endian';
  if (a === 0 && b !== 0 && c === 0 && d !== 0) return 'big-endian';
  return undefined;
}

function textOf(units: Uint16Array): string {
  let text = '';
  for (let start = 0; start < units.length; start += chunk) {
    text += String.fromCharCode(...units.subarray(start, start + chunk));
  }
  return text;
}

/** As many arguments as every engine takes in one call. */
const chunk = 8192;

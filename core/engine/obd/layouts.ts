/*
 * What bytes are by themselves, where no id stands in front of them.
 */

/** The first byte of an answer of services 01 to 0A, or of a refusal. */
export function answersService(byte: number): boolean {
  return (byte >= 0x41 && byte <= 0x4a) || byte === 0x7f;
}

/**
 * A frame of a CAN network without its id: a first byte that counts, then an answer. `joining` says that a first frame
 * stands above: the last of its frames may be short.
 */
export function isBareFrame(bytes: Uint8Array, from: number, to: number, joining: boolean): boolean {
  const length = to - from;
  const [first = 0, second = 0, third = 0] = [bytes[from], bytes[from + 1], bytes[from + 2]];
  switch (first >> 4) {
    case 0:
      // `02 43 00` alone asks for parameter 43 of a freeze frame; filled up to eight bytes it is an answer.
      return answersService(second) && length > first && (first >= 3 || (first === 2 && length === 8));
    case 1:
      return length === 8 && answersService(third);
    case 2:
      // `22 F1 90` alone is a maker's request.
      return length === 8 || joining;
    default:
      return false;
  }
}

/** A request of services 01 to 0A or of a maker's (answers start at 40), or a tester's flow control. */
export function isRequest(bytes: Uint8Array, from: number, to: number): boolean {
  const first = bytes[from] ?? 0;
  const length = to - from;
  if (first >= 0x10 && first < 0x40) return true;
  return first >= 1 && first <= 0x0a && length <= 7;
}

export type LegacyFrame =
  | { readonly is: 'answer'; readonly id: string; readonly header: number; readonly to: number }
  | { readonly is: 'request' }
  | { readonly is: 'damaged'; readonly due: string };

/**
 * A frame with a header of three bytes and a checksum, as networks before CAN have it (values from memory):
 * 48 6B (ISO 9141-2, SAE J1850 at variable width), 41 6B (J1850 at fixed width), and a format byte with the tester's
 * address F1 (ISO 14230). Undefined for other bytes.
 */
export function legacyFrame(bytes: Uint8Array, from: number, to: number): LegacyFrame | undefined {
  const length = to - from;
  if (length < 5) return undefined;
  const [first = 0, second = 0, third = 0, fourth = 0] = bytes.subarray(from, from + 4);
  if (second === 0x6a && (first === 0x68 || first === 0x61)) return { is: 'request' };
  const keyword = first >= 0x80 && (second === 0xf1 || second === 0x33);
  if (keyword && second === 0x33) return { is: 'request' };
  const last = bytes[to - 1] ?? 0;
  const id = hexByte(third);
  const sum = sumOf(bytes, from, to - 1);
  if (keyword) {
    // A format byte that counts nothing is followed by a byte that does, behind the addresses.
    const header = (first & 0x3f) === 0 ? 4 : 3;
    if (!answersService(header === 4 ? (bytes[from + 4] ?? 0) : fourth)) return undefined;
    return last === sum ? { is: 'answer', id, header, to: to - 1 } : { is: 'damaged', due: hexByte(sum) };
  }
  if (second !== 0x6b || (first !== 0x48 && first !== 0x41) || !answersService(fourth)) return undefined;
  const crc = crcOf(bytes, from, to - 1);
  if (last === crc || (first === 0x48 && last === sum)) return { is: 'answer', id, header: 3, to: to - 1 };
  // 41 6B may also be an answer of parameter 6B without any header.
  return first === 0x41 ? undefined : { is: 'damaged', due: `${hexByte(sum)} or ${hexByte(crc)}` };
}

function sumOf(bytes: Uint8Array, from: number, to: number): number {
  let sum = 0;
  for (let at = from; at < to; at++) sum += bytes[at] ?? 0;
  return sum & 0xff;
}

/** SAE J1850: polynomial 1D, starts with FF, and is inverted. */
function crcOf(bytes: Uint8Array, from: number, to: number): number {
  let crc = 0xff;
  for (let at = from; at < to; at++) {
    crc ^= bytes[at] ?? 0;
    for (let bit = 0; bit < 8; bit++) crc = crc & 0x80 ? ((crc << 1) ^ 0x1d) & 0xff : (crc << 1) & 0xff;
  }
  return crc ^ 0xff;
}

const hexByte = (byte: number): string => byte.toString(16).toUpperCase().padStart(2, '0');

import { carried, type NumberPart, type ParameterRow, type Part } from './parameter.ts';
import { bytesOfCode, noCode } from './troubleCode.ts';

/**
 * The bytes of a parameter whose parts hold these values, in the order of the row: numbers in the part's unit, words as
 * they are, a trouble code, a map and bits as decoding words them. Undefined where a value is outside what the encoding
 * carries or is no word of the part. Parts that are left out are 0. Monitors are made by `encodeMonitors` and `encodeCycleMonitors`.
 */
export function encodeParameter(
  row: ParameterRow,
  values: readonly (number | string | undefined)[],
): readonly number[] | undefined {
  const bytes = new Array<number>(row.bytes).fill(0);
  for (const [index, part] of row.parts.entries()) {
    const value = values[index];
    if (value === undefined) continue;
    const raw = rawFor(part, value, row.pid);
    if (raw === undefined) return undefined;
    // Parts of one byte share it: each has bits of its own.
    for (let i = 0; i < part.size; i++)
      bytes[part.at + i] = (bytes[part.at + i] ?? 0) | (Math.floor(raw / 256 ** (part.size - 1 - i)) % 256);
    if (part.ifBit !== undefined) bytes[0] = (bytes[0] ?? 0) | (1 << part.ifBit);
  }
  return bytes;
}

function rawFor(part: Part, value: number | string, pid: number): number | undefined {
  if (part.holds === 'number') return typeof value === 'number' ? rawNumber(part, value) : undefined;
  if (typeof value === 'number') return undefined;
  switch (part.holds) {
    case 'word':
      return [...part.words].find(([, text]) => text === value)?.[0];
    case 'code': {
      if (value === noCode) return 0;
      const [high, low] = bytesOfCode(value) ?? [];
      return high === undefined || low === undefined ? undefined : high * 256 + low;
    }
    case 'supported':
      return bitsOf(value === 'none' ? '' : value, 16, (each) => 32 - (each - pid));
    case 'flags':
      if (part.bits !== undefined) return namedBits(value, part.bits);
      return bitsOf(value.replace(/^no bit set$|^bits? /, ''), 10, (each) => each, part.size * 8);
    case 'monitors':
    case 'cycle monitors':
      return undefined;
  }
}

function rawNumber(part: NumberPart, value: number): number | undefined {
  const { low, high, step } = carried(part);
  if (!(value >= low - step / 2 && value <= high + step / 2)) return undefined;
  const raw = Math.round(((value - part.plus) * part.over) / part.times);
  return raw < 0 ? raw + 256 ** part.size : raw;
}

/** Names in a text as set bits, the lowest first; undefined for one that no bit has. */
function namedBits(text: string, names: readonly string[]): number | undefined {
  if (text === 'none') return 0;
  const bits = new Set(text.split(', ').map((each) => names.indexOf(each)));
  return bits.has(-1) ? undefined : [...bits].reduce((raw, bit) => raw + 2 ** bit, 0);
}

/** Numbers in a text as set bits; `place` says which bit each is, from the lowest. Undefined for one that has no bit. */
function bitsOf(
  text: string,
  radix: 10 | 16,
  place: (number: number) => number,
  size = 32,
): number | undefined {
  let raw = 0;
  for (const each of new Set(text.split(/[ ,]+/).filter((part) => part !== ''))) {
    const bit = place(Number.parseInt(each, radix));
    if (!(bit >= 0 && bit < size)) return undefined;
    raw += 2 ** bit;
  }
  return raw;
}

import { type CodePart, carried, type NumberPart, type ParameterRow, type WordPart } from './parameter.ts';
import { bytesOfCode } from './troubleCode.ts';

/**
 * The bytes of a parameter whose parts hold these values, in the order of the row: numbers in the part's unit, words as
 * they are, a trouble code. Undefined where a value is outside what the encoding carries or is no word of the part.
 * Parts that are left out are 0. Monitors, maps and flags are not made here.
 */
export function encodeParameter(
  row: ParameterRow,
  values: readonly (number | string | undefined)[],
): readonly number[] | undefined {
  const bytes = new Array<number>(row.bytes).fill(0);
  for (const [index, part] of row.parts.entries()) {
    const value = values[index];
    if (value === undefined) continue;
    const raw =
      part.holds === 'number' || part.holds === 'word' || part.holds === 'code'
        ? rawFor(part, value)
        : undefined;
    if (raw === undefined) return undefined;
    for (let i = 0; i < part.size; i++)
      bytes[part.at + i] = Math.floor(raw / 256 ** (part.size - 1 - i)) % 256;
    if (part.ifBit !== undefined) bytes[0] = (bytes[0] ?? 0) | (1 << part.ifBit);
  }
  return bytes;
}

function rawFor(part: NumberPart | WordPart | CodePart, value: number | string): number | undefined {
  if (part.holds === 'word') return [...part.words].find(([, text]) => text === value)?.[0];
  if (part.holds === 'code') {
    const [high = 0, low = 0] = typeof value === 'string' ? (bytesOfCode(value) ?? []) : [];
    return typeof value === 'string' ? high * 256 + low : undefined;
  }
  if (typeof value !== 'number') return undefined;
  const { low, high, step } = carried(part);
  if (!(value >= low - step / 2 && value <= high + step / 2)) return undefined;
  const raw = Math.round(((value - part.plus) * part.over) / part.times);
  return raw < 0 ? raw + 256 ** part.size : raw;
}

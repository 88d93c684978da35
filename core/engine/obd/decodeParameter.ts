import type { Item, ItemValue } from './item.ts';
import { cycleMonitorItems, monitorItems } from './monitors.ts';
import { type FlagsPart, type NumberPart, type ParameterRow, type Part, valueFor } from './parameter.ts';
import { codeOfBytes, noCode } from './troubleCode.ts';

/** The full scale that another parameter gives; undefined where it gave none. */
export type FullScale = (pid: number, byte: number) => number | undefined;

const noFullScale: FullScale = () => undefined;

/**
 * What the bytes of a parameter say, from offset `at` on, as items. All of the row's bytes must be there.
 * A part whose bit says that the vehicle does not have it gives no item.
 */
export function decodeParameter(
  row: ParameterRow,
  bytes: Uint8Array,
  at: number,
  fullScale: FullScale = noFullScale,
): readonly Item[] {
  const items: Item[] = [];
  const first = bytes[at] ?? 0;
  for (const part of row.parts) {
    if (part.ifBit !== undefined && ((first >> part.ifBit) & 1) === 0) continue;
    const from = at + part.at;
    if (part.holds === 'monitors') items.push(...monitorItems(bytes, from));
    else if (part.holds === 'cycle monitors') items.push(...cycleMonitorItems(bytes, from));
    else items.push(itemOf(part, valueOfPart(part, bytes, from, row.pid, fullScale), from));
  }
  return items;
}

function itemOf({ meaning, signal, member, size }: Part, value: ItemValue, from: number): Item {
  return { meaning, signal, member, value, from, to: from + size };
}

function valueOfPart(
  part: Exclude<Part, { readonly holds: 'monitors' | 'cycle monitors' }>,
  bytes: Uint8Array,
  from: number,
  pid: number,
  fullScale: FullScale,
): ItemValue {
  const raw = rawOf(bytes, from, part.size);
  switch (part.holds) {
    case 'number': {
      if (raw === part.none) return { is: 'absent', why: 'no reading' };
      const masked = part.mask === undefined ? raw : (raw & part.mask) >>> 0;
      return numberValue(scaled(part, fullScale), masked);
    }
    case 'word': {
      const masked = part.mask === undefined ? raw : (raw & part.mask) >>> 0;
      if (masked === part.none) return { is: 'absent', why: 'no reading' };
      return { is: 'words', text: part.words.get(masked) ?? `unknown (${hex(masked)})` };
    }
    case 'code':
      return {
        is: 'words',
        text: raw === 0 ? noCode : codeOfBytes(bytes[from] ?? 0, bytes[from + 1] ?? 0),
      };
    case 'supported':
      return { is: 'words', text: supportedIn(bytes, from, pid).map(hex).join(' ') || 'none' };
    case 'flags':
      return { is: 'words', text: flagsIn(raw, part) };
  }
}

/** An unsigned number of up to four bytes, the first one the greatest. */
export function rawOf(bytes: Uint8Array, from: number, size: number): number {
  let raw = bytes[from] ?? 0;
  for (let i = 1; i < size; i++) raw = raw * 256 + (bytes[from + i] ?? 0);
  return raw;
}

function numberValue(part: NumberPart, raw: number): ItemValue {
  const ends = 256 ** part.size;
  const signed = part.signed && raw >= ends / 2 ? raw - ends : raw;
  const step = part.counts === true ? 0 : Math.abs(part.times / part.over);
  return { is: 'number', value: valueFor(part, signed), unit: part.unit, kind: part.kind, step };
}

/** With the end of the scale that the controller gave for it: every step, and what is added, grow alike. */
function scaled(part: NumberPart, fullScale: FullScale): NumberPart {
  if (part.scaledBy === undefined) return part;
  const { pid, byte, full } = part.scaledBy;
  const most = fullScale(pid, byte);
  if (most === undefined || most === 0) return part;
  const times = most * full * part.over;
  return { ...part, times, plus: (part.plus * times) / part.times };
}

/** The parameters that a map of four bytes says are answered: bit by bit, those that follow `base`. */
function supportedIn(bytes: Uint8Array, from: number, base: number): number[] {
  const found: number[] = [];
  for (let bit = 0; bit < 32; bit++) {
    if (((bytes[from + (bit >> 3)] ?? 0) & (0x80 >> (bit & 7))) !== 0) found.push(base + bit + 1);
  }
  return found;
}

function flagsIn(raw: number, { size, bits }: FlagsPart): string {
  const set: number[] = [];
  for (let bit = 0; bit < size * 8; bit++) if (Math.floor(raw / 2 ** bit) % 2 === 1) set.push(bit);
  if (bits !== undefined) return set.map((bit) => bits[bit] ?? '').join(', ') || 'none';
  return set.length === 0 ? 'no bit set' : `${set.length === 1 ? 'bit' : 'bits'} ${set.join(', ')}`;
}

/** A byte as it is written: `0C`. */
export function hex(value: number): string {
  return value.toString(16).toUpperCase().padStart(2, '0');
}

import { hex, rawOf } from './decodeParameter.ts';
import { inUseCounters } from './inUseCounters.ts';
import type { Message } from './isoTp.ts';
import type { Item, ItemValue } from './item.ts';
import { type Problems, tell } from './problems.ts';
import { copyOnTape, spanOnTape, type Tape } from './tape.ts';
import { vinProblem } from './vin.ts';

/*
 * Service 09 (SAE J1979, value from memory): numbers and names of the vehicle and its controllers.
 * On CAN networks one message holds it all, a number of things first; before CAN several numbered messages hold four
 * bytes each, filled up with zeros in front.
 */

/** Kinds that are text: how long one is, and how many messages it takes before CAN. */
export const informationTexts: Readonly<
  Record<number, { readonly meaning: string; readonly length: number; readonly messages: number }>
> = {
  2: { meaning: 'Vehicle identification number', length: 17, messages: 5 },
  4: { meaning: 'Calibration', length: 16, messages: 4 },
  10: { meaning: 'Name of the controller', length: 20, messages: 5 },
};

/** Before CAN the sixteen counters of a spark-ignition engine take eight messages; nothing is filled up. */
const counterMessages: Readonly<Record<number, number>> = { 8: 8 };

/** Of service 09: the vehicle identification number. */
export const vinKind = 2;

/** Messages of before CAN, joined where they are parts of one text; all others as they are. */
export function joinInformation(
  tape: Tape,
  messages: readonly Message[],
  problems: Problems,
): readonly Message[] {
  const open = new Map<string, { readonly parts: Message[]; readonly needs: number }>();
  const joined: Message[] = [];
  for (const message of messages) {
    const { id, from, to } = message;
    const kind = tape.bytes[from + 1] ?? 0;
    const needs = informationTexts[kind]?.messages ?? counterMessages[kind];
    if (tape.bytes[from] !== 0x49 || to - from !== 7 || needs === undefined || message.delimited) {
      joined.push(message);
      continue;
    }
    const key = `${id} ${kind}`;
    const number = tape.bytes[from + 2] ?? 0;
    const before = open.get(key) ?? { parts: [], needs };
    const expected = before.parts.length + 1;
    if ((number - 1) % needs !== before.parts.length) {
      tell(problems, 'obd-wrong-sequence', spanOnTape(tape, from, to), { sender: id, expected, got: number });
      open.delete(key);
      continue;
    }
    before.parts.push(message);
    open.set(key, before);
    if (before.parts.length < needs) continue;
    open.delete(key);
    joined.push(joinParts(tape, id, before.parts));
  }
  for (const { parts, needs } of open.values()) {
    const [first] = parts;
    if (first === undefined) continue;
    const facts = { sender: first.id, got: parts.length * 4, total: needs * 4 };
    tell(problems, 'obd-unfinished', spanOnTape(tape, first.from, first.to), facts);
  }
  return joined;
}

/** Service, kind and a number, as a CAN network would say it; then the bytes, of a text without the zeros in front. */
function joinParts(tape: Tape, id: string, parts: readonly Message[]): Message {
  const from = tape.length;
  for (const [i, part] of parts.entries()) {
    let start = i === 0 ? part.from : part.from + 3;
    if (i === 0) {
      copyOnTape(tape, part.from, part.from + 3);
      start = part.from + 3;
      const filled = informationTexts[tape.bytes[part.from + 1] ?? 0] !== undefined;
      while (filled && start < part.to && tape.bytes[start] === 0) start++;
    }
    copyOnTape(tape, start, part.to);
  }
  return { id, from, to: tape.length, delimited: true };
}

/** What an answer of service 09 says. A vehicle identification number is checked. */
export function informationItems(tape: Tape, { from, to }: Message, problems: Problems): readonly Item[] {
  const kind = tape.bytes[from + 1] ?? 0;
  const text = informationTexts[kind];
  if (text !== undefined) return textItems(tape, from + 3, to, text, kind, problems);
  if (kind === 6) {
    const items: Item[] = [];
    for (let at = from + 3; at + 4 <= to; at += 4) {
      const bytes = [...tape.bytes.subarray(at, at + 4)].map(hex).join('');
      items.push(item('Checksum of the calibration', words(bytes), at, at + 4));
    }
    return items;
  }
  const names = inUseCounters.get(kind);
  return names === undefined ? [] : counterItems(tape, from + 3, to, names);
}

/** Two bytes each; more than have a name are numbered. */
function counterItems(tape: Tape, from: number, to: number, names: readonly string[]): readonly Item[] {
  const items: Item[] = [];
  for (let at = from; at + 2 <= to; at += 2) {
    const place = (at - from) / 2;
    const value = rawOf(tape.bytes, at, 2);
    const counted: ItemValue = { is: 'number', value, unit: '1', kind: 'none', step: 0 };
    items.push(item(names[place] ?? `Counter ${place + 1}`, counted, at, at + 2));
  }
  return items;
}

function textItems(
  tape: Tape,
  from: number,
  to: number,
  { meaning, length }: { readonly meaning: string; readonly length: number },
  kind: number,
  problems: Problems,
): readonly Item[] {
  const items: Item[] = [];
  for (let at = from; at < to; at += length) {
    const end = Math.min(to, at + length);
    const text = asciiOf(tape.bytes.subarray(at, end));
    if (text === '') continue;
    items.push(item(meaning, words(text), at, end));
    if (kind === vinKind) checkVin(tape, text, at, end, problems);
  }
  return items;
}

function checkVin(tape: Tape, vin: string, from: number, to: number, problems: Problems): void {
  const problem = vinProblem(vin);
  if (problem === undefined) return;
  const at = problem.kind === 'character' ? problem.at : 8;
  const span =
    problem.kind === 'length' ? spanOnTape(tape, from, to) : spanOnTape(tape, from + at, from + at + 1);
  tell(problems, 'vin-form', span, { vin, problem });
}

/** Zeros fill up; what is no printable sign is shown as its number, so that nothing is hidden. */
function asciiOf(bytes: Uint8Array): string {
  let text = '';
  for (const byte of bytes) {
    if (byte === 0) continue;
    text += byte >= 0x20 && byte < 0x7f ? String.fromCharCode(byte) : `[${hex(byte)}]`;
  }
  return text.trim();
}

const words = (text: string): ItemValue => ({ is: 'words', text });

function item(meaning: string, value: ItemValue, from: number, to: number): Item {
  return { meaning, signal: undefined, member: undefined, value, from, to };
}

import { message } from '../../../core/diagnostics/words.ts';
import { decodeObd } from '../../../core/engine/obd/decodeObd.ts';
import type { Item } from '../../../core/engine/obd/item.ts';
import { hexOnTape } from '../../../core/engine/obd/tape.ts';
import { lineIndex, positionAt } from '../../../core/text/lines.ts';

/** `41 0C 1A F8` as numbers. */
export const bytesOf = (hex: string): Uint8Array =>
  Uint8Array.from(hex.match(/[0-9A-F]{2}/gi)?.map((each) => Number.parseInt(each, 16)) ?? []);

/** What a recording says, an item a line: `7E8 rpm 1726 rpm`; items without a signal by their meaning. */
export function saidBy(text: string): string[] {
  return decodeObd(text).answers.flatMap(({ id, items }) =>
    items.map((each) => [id, nameOf(each), wordsOf(each)].filter((part) => part !== '').join(' ')),
  );
}

/** What is found in a recording: `2:7-9 obd-odd-length: …`, lines and columns from 1, ends exclusive. */
export function foundIn(text: string): string[] {
  const index = lineIndex(text);
  return decodeObd(text).diagnostics.map((each) => {
    const { line, column } = positionAt(index, each.span.start);
    return `${line}:${column}-${positionAt(index, each.span.end).column} ${each.code}: ${message(each)}`;
  });
}

/** The codes in a recording: `P0171 stored`. */
export function codesIn(text: string): string[] {
  return decodeObd(text).codes.map(({ code, status }) => `${code} ${status}`);
}

/** The value of the only item with that signal or meaning. */
export function numberIn(text: string, name: string): number {
  const items = decodeObd(text).answers.flatMap((each) => each.items);
  const [item, more] = items.filter((each) => nameOf(each) === name);
  if (item?.value.is !== 'number' || more !== undefined) throw new Error(`Not one number ${name} in ${text}`);
  return item.value.value;
}

/** The bytes of each item, as the tape has them. */
export function bytesSaid(text: string): string[] {
  const { answers, tape } = decodeObd(text);
  return answers.flatMap(({ items }) => items.map(({ from, to }) => hexOnTape(tape, from, to)));
}

function nameOf({ signal, member, meaning }: Item): string {
  return member === undefined ? (signal ?? meaning) : `${signal}[${member}]`;
}

function wordsOf({ value }: Item): string {
  switch (value.is) {
    case 'number':
      return `${Number(value.value.toPrecision(12))}${value.unit === '1' ? '' : ` ${value.unit}`}`;
    case 'words':
      return value.text;
    case 'absent':
      return value.why;
  }
}

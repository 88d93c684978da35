import type { Span } from '../../text/span.ts';

/**
 * Bytes that were read from a text, one after the other, each with the place of its first digit.
 * Everything that is decoded points into it: a message is a stretch of the tape, so that its bytes can be found again.
 */
export interface Tape {
  readonly bytes: Uint8Array;
  readonly places: Int32Array;
  length: number;
}

/** A tape for a text of that length: every byte takes two digits, and a joined message stands on it once more. */
export function blankTape(textLength: number): Tape {
  return { bytes: new Uint8Array(textLength + 2), places: new Int32Array(textLength + 2), length: 0 };
}

/** Puts the stretch from `from` to `to` at the end once more. */
export function copyOnTape(tape: Tape, from: number, to: number): void {
  tape.bytes.copyWithin(tape.length, from, to);
  tape.places.copyWithin(tape.length, from, to);
  tape.length += to - from;
}

/** Where a stretch stands in the text: from its first digit to its last. A stretch without bytes is the place of the next. */
export function spanOnTape({ places }: Tape, from: number, to: number): Span {
  const start = places[from] ?? 0;
  return to <= from ? { start, end: start } : { start, end: Math.max(start, places[to - 1] ?? start) + 2 };
}

/** A stretch as it is written: `41 0C 1A F8`. */
export function hexOnTape({ bytes }: Tape, from: number, to: number): string {
  let text = '';
  for (let at = from; at < to; at++) {
    const byte = bytes[at] ?? 0;
    text += `${at > from ? ' ' : ''}${byte < 16 ? '0' : ''}${byte.toString(16).toUpperCase()}`;
  }
  return text;
}

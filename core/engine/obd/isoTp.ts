import type { Span } from '../../text/span.ts';
import { type Problems, tell } from './problems.ts';
import type { Line, Lines } from './readLines.ts';
import { copyOnTape, spanOnTape, type Tape } from './tape.ts';

/** A whole message of a controller: what its frames carry together, from its service on. */
export interface Message {
  /** Who sent it: an id of 11 or 29 bits, an address of one byte, or '' where nothing says so. */
  readonly id: string;
  readonly from: number;
  readonly to: number;
  /** Its length is known from its frames: nothing behind it is filler. */
  readonly delimited?: boolean;
}

/** A message of several frames that has not come to its end. */
interface Open {
  readonly total: number;
  /** Stretches of the tape, in order. */
  readonly parts: (readonly [from: number, to: number])[];
  got: number;
  /** The number that the next frame must have, 0 to 15. */
  next: number;
  readonly span: Span;
}

/**
 * Puts frames together as ISO 15765-2 says: single (0), first (1), consecutive (2), flow control (3).
 * Frames of several controllers may be mixed where their ids tell them apart. A message with a wrong order, a missing frame or too few bytes is told
 * and left out.
 */
export function joinFrames({ tape, lines }: Lines, problems: Problems): readonly Message[] {
  const messages: Message[] = [];
  const open = new Map<string, Open>();
  let numbered: Open | undefined;
  /** Without ids: a message was interrupted by the first frame of the next. */
  let isInterrupted = false;
  /** And the message that was then put together, of parts that may be the other’s. */
  let doubtful: Message | undefined;
  const finish = (message: Message): void => {
    messages.push(message);
    if (message.id !== '') return;
    doubtful = isInterrupted ? message : undefined;
    isInterrupted = false;
  };
  /** A part too many: where it may belong to the message above, that one is taken back. */
  const tooMany = (span: Span, number: number): void => {
    const isMixed = doubtful !== undefined && messages[messages.length - 1] === doubtful;
    if (isMixed) messages.pop();
    doubtful = undefined;
    tell(problems, 'obd-no-first-frame', span, isMixed ? { number, mixed: true } : { number });
  };
  const close = (id: string, message: Open | undefined): void => {
    if (message === undefined) return;
    open.delete(id);
    tell(problems, 'obd-unfinished', message.span, { sender: id, got: message.got, total: message.total });
  };
  for (const line of lines) {
    if (line.is !== 'numbered' && line.is !== 'length' && numbered !== undefined) {
      close('', numbered);
      numbered = undefined;
    }
    switch (line.is) {
      case 'message':
        messages.push(line);
        break;
      case 'length':
        isInterrupted = numbered !== undefined && numbered.got > 0;
        close('', numbered);
        numbered = { total: line.length, parts: [], got: 0, next: 0, span: line.span };
        break;
      case 'numbered': {
        if (numbered === undefined) {
          tooMany(spanOnTape(tape, line.from, line.to), line.number);
          break;
        }
        const done = append(tape, numbered, line.number, line.from, line, problems, '');
        if (done === 'waits') break;
        numbered = undefined;
        if (done !== 'broken') finish({ id: '', ...done, delimited: true });
        break;
      }
      case 'frame':
        readFrame(line);
    }
  }
  close('', numbered);
  for (const [id, message] of [...open]) close(id, message);
  return messages;

  function readFrame({ id, from, to }: Line & { readonly is: 'frame' }): void {
    const first = tape.bytes[from] ?? 0;
    switch (first >> 4) {
      case 0: {
        close(id, open.get(id));
        const length = first & 15;
        if (length === 0 || length > to - from - 1)
          tell(problems, 'obd-short-frame', spanOnTape(tape, from, to), { says: length, has: to - from - 1 });
        else messages.push({ id, from: from + 1, to: from + 1 + length, delimited: true });
        return;
      }
      case 1: {
        if (id === '') isInterrupted = open.has(id);
        close(id, open.get(id));
        const total = (first & 15) * 256 + (tape.bytes[from + 1] ?? 0);
        const span = spanOnTape(tape, from, to);
        // A first frame carries six bytes, and a message that fits in a single one is sent in one.
        if (to - from < 8 || total < 8) {
          tell(problems, 'obd-short-frame', span, {
            says: total < 8 ? total : 6,
            has: to - from - 2,
            first: true,
          });
          return;
        }
        open.set(id, { total, parts: [[from + 2, from + 8]], got: 6, next: 1, span });
        return;
      }
      case 2: {
        const message = open.get(id);
        if (message === undefined) {
          if (id === '') tooMany(spanOnTape(tape, from, to), first & 15);
          else tell(problems, 'obd-no-first-frame', spanOnTape(tape, from, to), { number: first & 15 });
          return;
        }
        const done = append(tape, message, first & 15, from + 1, { from, to }, problems, id);
        if (done === 'waits') return;
        open.delete(id);
        if (done !== 'broken') finish({ id, ...done, delimited: true });
        return;
      }
      case 3:
        return;
      default:
        tell(problems, 'obd-unknown-frame', spanOnTape(tape, from, from + 1), {
          first: first.toString(16).toUpperCase().padStart(2, '0'),
        });
    }
  }
}

/** Adds what a frame carries from `from` on to an open message; gives the whole message on the tape when that was its last. */
function append(
  tape: Tape,
  message: Open,
  number: number,
  from: number,
  frame: { readonly from: number; readonly to: number },
  problems: Problems,
  sender: string,
): 'waits' | 'broken' | { readonly from: number; readonly to: number } {
  const span = spanOnTape(tape, frame.from, frame.to);
  if (number !== message.next) {
    tell(problems, 'obd-wrong-sequence', span, { sender, expected: message.next, got: number });
    return 'broken';
  }
  const length = Math.min(frame.to - from, message.total - message.got);
  const isLast = message.got + length >= message.total;
  // Of numbered lines the first carries six bytes, as a first frame does.
  const due = message.parts.length === 0 ? 6 : 7;
  if (!isLast && length < due) {
    tell(problems, 'obd-short-frame', span, { says: due, has: length });
    return 'broken';
  }
  message.parts.push([from, from + length]);
  message.got += length;
  message.next = (message.next + 1) & 15;
  if (!isLast) return 'waits';
  const start = tape.length;
  for (const [a, b] of message.parts) copyOnTape(tape, a, b);
  return { from: start, to: tape.length };
}

/** A message cut into frames of eight bytes, filled up with `filler`: the other direction, for tests and demonstrations. */
export function splitIntoFrames(message: readonly number[], filler = 0): readonly (readonly number[])[] {
  const full = (bytes: readonly number[]): readonly number[] => [
    ...bytes,
    ...new Array<number>(Math.max(0, 8 - bytes.length)).fill(filler),
  ];
  if (message.length <= 7) return [full([message.length, ...message])];
  const frames = [full([0x10 | (message.length >> 8), message.length & 255, ...message.slice(0, 6)])];
  for (let at = 6, number = 1; at < message.length; at += 7, number = (number + 1) & 15)
    frames.push(full([0x20 | number, ...message.slice(at, at + 7)]));
  return frames;
}

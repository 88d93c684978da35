import type { Span } from '../../text/span.ts';
import { answersService, isBareFrame, isRequest, legacyFrame } from './layouts.ts';
import { type Problems, tell } from './problems.ts';
import { blankTape, type Tape } from './tape.ts';

/** One line of a recording that holds bytes; the bytes are a stretch of the tape, without header and checksum. */
export type Line =
  /** A frame of a CAN network (ISO 15765-4): its first byte says how it belongs to a message. */
  | { readonly is: 'frame'; readonly id: string; readonly from: number; readonly to: number }
  /** A whole message. `id` names who sent it; '' where no header says so. */
  | { readonly is: 'message'; readonly id: string; readonly from: number; readonly to: number }
  /** A stretch of a message whose lines are numbered (`0: 49 02 01 …`), and the line with its length above (`014`). */
  | { readonly is: 'numbered'; readonly number: number; readonly from: number; readonly to: number }
  | { readonly is: 'length'; readonly length: number; readonly span: Span };

export interface Lines {
  readonly tape: Tape;
  readonly lines: readonly Line[];
  /** Requests that were echoed or recorded too, and flow control. */
  readonly requests: number;
  /** Lines without data, such as NO DATA: how many, and the first. */
  readonly noise: number;
  readonly firstNoise: { readonly span: Span; readonly text: string } | undefined;
}

interface Reading {
  readonly text: string;
  readonly tape: Tape;
  readonly lines: Line[];
  readonly problems: Problems;
  /** Where the words of the line in hand start and end. */
  readonly starts: number[];
  readonly ends: number[];
  requests: number;
  noise: number;
  firstNoise: Lines['firstNoise'];
  /** So many frames without an id are to follow a first one that stands above. */
  due: number;
}

/**
 * Reads a recording line by line: with and without headers (11 and 29 bits, or three bytes), with and without spaces,
 * prompts and echoed requests between. What follows a `#` behind a space is a remark.
 */
export function readLines(text: string, problems: Problems): Lines {
  const reading: Reading = {
    text,
    tape: blankTape(text.length),
    lines: [],
    problems,
    starts: [],
    ends: [],
    requests: 0,
    noise: 0,
    firstNoise: undefined,
    due: 0,
  };
  let start = 0;
  for (let at = 0; at <= text.length; at++) {
    const unit = at < text.length ? text.charCodeAt(at) : lineFeed;
    if (unit !== lineFeed && unit !== carriageReturn) continue;
    if (at > start) readLine(reading, start, at);
    start = at + 1;
  }
  const { tape, lines, requests, noise, firstNoise } = reading;
  return { tape, lines, requests, noise, firstNoise };
}

/** UTF-16 units: eight bytes with a header and a time in front take a tenth of it. */
const longestLine = 1000;

const [lineFeed, carriageReturn, tab, space, numberSign, prompt] = [10, 13, 9, 32, 35, 62];
/** Stands at the start of files that some programs write. */
const byteOrderMark = 0xfeff;

/** Cuts a line into words. `strange` is where the first stands that is not hexadecimal. */
function readLine(reading: Reading, start: number, end: number): void {
  const { text, starts, ends } = reading;
  starts.length = 0;
  ends.length = 0;
  let from = start;
  while (from < end && isWhite(text.charCodeAt(from), true)) from++;
  let strange = -1;
  let inWord = false;
  let at = from;
  for (; at < end; at++) {
    const unit = text.charCodeAt(at);
    if (isWhite(unit, false)) {
      if (inWord) ends.push(at);
      inWord = false;
      continue;
    }
    // A remark.
    if (unit === numberSign && !inWord) break;
    if (!inWord) starts.push(at);
    inWord = true;
    if (strange < 0 && digitOf(unit) < 0) strange = starts.length - 1;
  }
  if (inWord) ends.push(at);
  if (starts.length === 0) return;
  if (strange < 0) readHex(reading);
  else readStrange(reading, strange, at);
}

function isWhite(unit: number, withPrompt: boolean): boolean {
  return unit === space || unit === tab || unit === byteOrderMark || (withPrompt && unit === prompt);
}

/** The words of a line that are all hexadecimal: a header and what follows it, or bytes alone. */
function readHex(reading: Reading): void {
  const { text, starts, ends, tape } = reading;
  const start = starts[0] ?? 0;
  const length = (ends[0] ?? 0) - start;
  const alone = starts.length === 1;
  if (length === 3 && alone) {
    const span = { start, end: start + 3 };
    reading.lines.push({ is: 'length', length: Number.parseInt(text.slice(start, start + 3), 16), span });
  } else if (length === 3 || (length === 8 && !alone && isLongId(text, start))) {
    readFrame(reading, start, length);
  } else {
    const glued = alone ? gluedId(text, start, length) : undefined;
    if (glued !== undefined) {
      const from = tape.length;
      starts[0] = start + glued.id + glued.counts;
      if (pushWords(reading, 0, false)) addFrame(reading, start, glued.id, from);
      return;
    }
    const from = tape.length;
    if (pushWords(reading, 0, true)) sortBytes(reading, from, tape.length);
  }
}

/** How many digits of a line without spaces are the id, and how many behind it the line's length; undefined without an id. */
function gluedId(
  text: string,
  start: number,
  length: number,
): { readonly id: number; readonly counts: number } | undefined {
  if (length > 8 && isLongId(text, start)) return { id: 8, counts: 0 };
  if (length <= 4 || text[start] !== '7') return undefined;
  // With an id of three digits in front of them, whole bytes make an odd number of digits.
  if (length % 2 === 1) return { id: 3, counts: 0 };
  if (!/^7E[89A-F]/i.test(text.slice(start, start + 3))) return undefined;
  return { id: 3, counts: digitOf(text.charCodeAt(start + 3)) * 2 === length - 4 ? 1 : 0 };
}

/** An id, possibly the line's length, and the frame's bytes. */
function readFrame(reading: Reading, idStart: number, idLength: number): void {
  const { starts, ends, tape } = reading;
  const counted = (ends[1] ?? 0) - (starts[1] ?? 0) === 1 && starts.length > 2;
  const from = tape.length;
  if (pushWords(reading, counted ? 2 : 1, false)) addFrame(reading, idStart, idLength, from);
}

function addFrame(reading: Reading, idStart: number, idLength: number, from: number): void {
  const { text, tape, lines } = reading;
  const id = text.slice(idStart, idStart + idLength).toUpperCase();
  if (isTester(id)) {
    reading.requests++;
    return;
  }
  const first = tape.bytes[from] ?? 0;
  const is = first >= 0x40 && answersService(first) ? 'message' : 'frame';
  if (tape.length > from) lines.push({ is, id, from, to: tape.length });
}

/** Bytes without an id in front: a header of three or four bytes among them, a message as it is, an echoed request. */
function sortBytes(reading: Reading, from: number, to: number): void {
  const { tape, lines, problems } = reading;
  const { bytes } = tape;
  if (bytes[from] === 0x18 && ((bytes[from + 1] ?? 0) & 0xfe) === 0xda && to - from > 4) {
    const id = [0, 1, 2, 3].map((i) => (bytes[from + i] ?? 0).toString(16).padStart(2, '0')).join('');
    if (isTester(id.toUpperCase())) reading.requests++;
    else lines.push({ is: 'frame', id: id.toUpperCase(), from: from + 4, to });
    return;
  }
  const legacy = legacyFrame(bytes, from, to);
  if (legacy !== undefined) {
    if (legacy.is === 'request') reading.requests++;
    else if (legacy.is === 'answer')
      lines.push({ is: 'message', id: legacy.id, from: from + legacy.header, to: legacy.to });
    else {
      const span = { start: tape.places[to - 1] ?? 0, end: (tape.places[to - 1] ?? 0) + 2 };
      tell(problems, 'obd-wrong-checksum', span, { is: hexByte(bytes[to - 1] ?? 0), due: legacy.due });
    }
    return;
  }
  if (isBareFrame(bytes, from, to, reading.due > 0)) {
    lines.push({ is: 'frame', id: '', from, to });
    const [first = 0, second = 0] = bytes.subarray(from, to);
    const total = first >> 4 === 1 ? (first & 15) * 256 + second : 0;
    reading.due = first >> 4 === 2 ? reading.due - 1 : Math.ceil((total - 6) / 7);
    return;
  }
  if (isRequest(bytes, from, to)) reading.requests++;
  else lines.push({ is: 'message', id: '', from, to });
}

/**
 * Puts the words from `first` on as bytes on the tape; false, with a finding, where a word has an odd number of digits.
 * A request may end in one digit: how many answers are waited for.
 */
function pushWords(reading: Reading, first: number, mayAsk: boolean): boolean {
  const { text, tape, starts, ends, problems } = reading;
  const before = tape.length;
  for (let word = first; word < starts.length; word++) {
    const start = starts[word] ?? 0;
    const end = ends[word] ?? 0;
    if ((end - start) % 2 === 1) {
      const isLast = word === starts.length - 1;
      const asked =
        tape.length > before ? (tape.bytes[before] ?? 0) : Number.parseInt(text.slice(start, start + 2), 16);
      const isCount =
        mayAsk && isLast && asked >= 1 && asked <= 10 && (end - start === 1 || text[start] === '0');
      tape.length = before;
      if (isCount) {
        reading.requests++;
        return false;
      }
      tell(
        problems,
        'obd-odd-length',
        { start, end },
        { digits: shortened(text.slice(start, end)), count: end - start },
      );
      return false;
    }
    for (let at = start; at < end; at += 2) {
      tape.places[tape.length] = at;
      tape.bytes[tape.length++] = digitOf(text.charCodeAt(at)) * 16 + digitOf(text.charCodeAt(at + 1));
    }
  }
  return tape.length > before;
}

/** A line with something in it that is no hexadecimal digit: a numbered line, a logged frame, words, or a slip. */
function readStrange(reading: Reading, strange: number, end: number): void {
  const { text, starts, ends, lines, tape } = reading;
  const start = starts[0] ?? 0;
  const line = text.slice(start, end);
  // No interface writes such a line: whatever it is, it is not searched for patterns.
  if (line.length > longestLine) {
    tellStrange(reading, strange);
    return;
  }
  const numbered = /^([0-9A-F]):[ \t]*(?=[0-9A-F \t]+$)/i.exec(line);
  if (numbered !== null) {
    const from = tape.length;
    recut(reading, start + numbered[0].length, end);
    if (pushWords(reading, 0, false))
      lines.push({ is: 'numbered', number: Number.parseInt(numbered[1] ?? '', 16), from, to: tape.length });
    return;
  }
  const logged =
    /^((?:\([\d.]+\)\s+)?(?:[a-z]+[0-9]\s+)?)([0-9A-F]{8}|[0-9A-F]{3})(#|\s+\[\d\]\s+)(?=[0-9A-F \t]+$)/i.exec(
      line,
    );
  if (logged !== null) {
    const [all, before = '', id = ''] = logged;
    const from = tape.length;
    recut(reading, start + all.length, end);
    if (pushWords(reading, 0, false)) addFrame(reading, start + before.length, id.length, from);
    return;
  }
  // A time in front of what was logged: "12:30:01.250 41 0C …".
  const timed = /^\[?[\d:.,]*\d[:.][\d:.,]*\]?[ \t]+(?=[0-9A-F]{2}[0-9A-F \t]*$)/i.exec(line);
  if (timed !== null) {
    readLine(reading, start + timed[0].length, end);
    return;
  }
  // Which way it went, in front of what was logged: "RX: 41 0C …", "< 41 0C …".
  const directed = /^(?:RX|TX|<|<-)[:>]?[ \t]+(?=[0-9A-F]{2}[0-9A-FX, \t]*$)/i.exec(line);
  if (directed !== null) {
    readLine(reading, start + directed[0].length, end);
    return;
  }
  // As programs write bytes: "0x41, 0x0C, …", "41,0C,…".
  if (/^(?:(?:0x)?[0-9A-F]{2,8}(?:[ \t]*[,;][ \t]*|[ \t]+|$))+$/i.test(line)) {
    starts.length = 0;
    ends.length = 0;
    for (const { index, 0: word } of line.matchAll(/[0-9A-FX]+/gi)) {
      starts.push(start + index + (/^0x/i.test(word) ? 2 : 0));
      ends.push(start + index + word.length);
    }
    readHex(reading);
    return;
  }
  // Words of the interface in front of data: "SEARCHING...41 00 …".
  const waiting = /^[A-Z][A-Z :]*\.{2,}[ \t]*(?=[0-9A-F]{2}[0-9A-F \t]*$)/i.exec(line);
  if (waiting !== null) {
    readLine(reading, start + waiting[0].length, end);
    return;
  }
  const hexWords = starts.filter((from, i) => isHex(text, from, ends[i] ?? 0)).length;
  const digits = line.replace(/[^0-9A-F]/gi, '').length;
  const isData =
    hexWords * 2 > starts.length || (starts.length === 1 && /^[0-9]/.test(line) && digits * 2 > line.length);
  if (!isData || line.includes('<')) {
    reading.noise++;
    reading.firstNoise ??= {
      span: { start, end: ends[ends.length - 1] ?? end },
      text: shortened(line.trim()),
    };
    return;
  }
  tellStrange(reading, strange);
}

function tellStrange({ text, starts, ends, problems }: Reading, word: number): void {
  const span = { start: starts[word] ?? 0, end: ends[word] ?? 0 };
  tell(problems, 'obd-not-hex', span, { word: shortened(text.slice(span.start, span.end)) });
}

/** Cuts a stretch of hexadecimal words anew. */
function recut({ text, starts, ends }: Reading, start: number, end: number): void {
  starts.length = 0;
  ends.length = 0;
  let inWord = false;
  for (let at = start; at < end; at++) {
    const white = isWhite(text.charCodeAt(at), false);
    if (white && inWord) ends.push(at);
    if (!white && !inWord) starts.push(at);
    inWord = !white;
  }
  if (inWord) ends.push(end);
}

/** What a tester sends: to all, to one controller by either length of id. */
function isTester(id: string): boolean {
  return /^(?:7DF|7E[0-7]|18DB33F1|18DA..F1)$/.test(id);
}

/** `18DAF110`: who is asked and who asks, in 29 bits. */
function isLongId(text: string, at: number): boolean {
  return /^18D[AB]/i.test(text.slice(at, at + 4));
}

function isHex(text: string, start: number, end: number): boolean {
  for (let at = start; at < end; at++) if (digitOf(text.charCodeAt(at)) < 0) return false;
  return end - start >= 2;
}

/** The value of a hexadecimal digit; -1 for anything else. */
function digitOf(unit: number): number {
  if (unit >= 48 && unit <= 57) return unit - 48;
  const letter = unit | 32;
  return letter >= 97 && letter <= 102 ? letter - 87 : -1;
}

const hexByte = (byte: number): string => byte.toString(16).toUpperCase().padStart(2, '0');

const shortened = (text: string): string => (text.length > 24 ? `${text.slice(0, 24)}…` : text);

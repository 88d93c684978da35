const lineFeed = 10;
const carriageReturn = 13;
const space = 32;
const quote = 34;

/** A field in quotes that is longer, or goes over more lines, is none: its quote is a letter. */
const longest = 64 * 1024;
const mostEnds = 50;

const nothing = new Uint8Array(0);

/**
 * Makes one line of the lines that a field in quotes goes over (RFC 4180, 2.6), piece by piece: the ends of lines inside
 * become blanks. A piece is looked through only where it has a quote; the heading above the first line of samples is
 * left as it is.
 */
export class QuotedLines {
  /** For each end of a line that was taken away, the line that it was in, counted without it. */
  readonly joins: number[] = [];
  readonly #delimiter: number;
  readonly #firstLine: number;
  /** The line that a piece broke off within quotes. */
  #held = nothing;
  /** The last byte handed on. */
  #last = lineFeed;

  constructor(delimiter: number, firstLine: number) {
    this.#delimiter = delimiter;
    this.#firstLine = firstLine;
  }

  /** The next piece; `before`: how many whole lines have been read. */
  take(piece: Uint8Array, before: number): Uint8Array {
    if (this.#held.length === 0 && piece.indexOf(quote) < 0) return this.#handOn(piece);
    const text = this.#held.length === 0 ? piece : joined(this.#held, piece);
    this.#held = nothing;
    let out = text;
    let line = before + 1;
    let counted = 0;
    for (let at = text.indexOf(quote); at >= 0; ) {
      const close = this.#opens(text, at) ? closing(text, at) : letter;
      if (close === unknown) {
        const start = startOfLine(text, at);
        this.#held = text.slice(start);
        return this.#handOn(out.subarray(0, start));
      }
      const ends = close === letter ? 0 : endsBetween(text, at, close);
      if (close === letter || ends > mostEnds || (ends > 0 && !this.#ends(text, close + 1))) {
        at = text.indexOf(quote, at + 1);
        continue;
      }
      if (ends > 0) {
        line += endsBetween(text, counted, at);
        counted = at;
        if (line >= this.#firstLine) {
          if (out === text) out = text.slice();
          blank(out, at, close);
          for (let each = 0; each < ends; each++) this.joins.push(line);
          counted = close;
        }
      }
      at = text.indexOf(quote, close + 1);
    }
    return this.#handOn(out);
  }

  /** What is left at the end: its quote is never closed. */
  rest(): Uint8Array {
    return this.#held;
  }

  #handOn(bytes: Uint8Array): Uint8Array {
    this.#last = bytes[bytes.length - 1] ?? this.#last;
    return bytes;
  }

  /** Whether a field begins with this quote. */
  #opens(text: Uint8Array, quoteAt: number): boolean {
    let at = quoteAt - 1;
    while (at >= 0 && text[at] === space) at--;
    const before = at < 0 ? this.#last : text[at];
    return this.#parts(before) || (before === space && this.#delimiter === space);
  }

  #ends(text: Uint8Array, from: number): boolean {
    let at = from;
    while (at < text.length && text[at] === space) at++;
    return at === text.length || this.#parts(text[at]);
  }

  #parts(byte: number | undefined): boolean {
    return byte === this.#delimiter || byte === lineFeed || byte === carriageReturn;
  }
}

/** The quote is a letter, or it cannot be told before the next piece is there. */
const letter = -1;
const unknown = -2;

/** Where the field that a quote opens is closed; two quotes in it are one. */
function closing(text: Uint8Array, open: number): number {
  const limit = open + longest;
  for (let at = open + 1; ; ) {
    const found = text.indexOf(quote, at);
    if (found < 0 || found > limit) return found < 0 && text.length <= limit ? unknown : letter;
    if (found + 1 === text.length) return unknown;
    if (text[found + 1] !== quote) return found;
    at = found + 2;
  }
}

const isEnd = (text: Uint8Array, at: number): boolean =>
  text[at] === lineFeed || (text[at] === carriageReturn && text[at + 1] !== lineFeed);

function endsBetween(text: Uint8Array, from: number, to: number): number {
  let count = 0;
  for (let at = from; at < to; at++) if (isEnd(text, at)) count++;
  return count;
}

function startOfLine(text: Uint8Array, from: number): number {
  let at = from;
  while (at > 0 && !isEnd(text, at - 1)) at--;
  return at;
}

function blank(text: Uint8Array, from: number, to: number): void {
  for (let at = from; at < to; at++)
    if (text[at] === lineFeed || text[at] === carriageReturn) text[at] = space;
}

function joined(a: Uint8Array, b: Uint8Array): Uint8Array<ArrayBuffer> {
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}

/**
 * Scalars of YAML 1.2 decoded with the place of every unit: what stands in the file between the quotes, on folded
 * lines or in an indented block, as the text that it means. Lines end at LF, CRLF or CR.
 * Decoding is total: a bad escape stands for itself (the reader reports it).
 */
export interface ScalarText {
  readonly text: string;
  /** As in `TextNode.map`. */
  readonly map: readonly (readonly [number, number])[];
}

/** A plain scalar from `start` to `end`, of one or several lines. */
export function plainText(source: string, start: number, end: number): ScalarText {
  const out = new Pieces();
  foldLines(source, start, end, (from, to) => out.add(source.slice(from, to), from), out);
  return out.done(start);
}

/** A single-quoted scalar; `start` and `end` include the quotes. */
export function singleQuotedText(source: string, start: number, end: number): ScalarText {
  const out = new Pieces();
  const line = (from: number, to: number): void => {
    let at = from;
    while (at < to) {
      const quote = source.indexOf("''", at);
      if (quote < 0 || quote + 1 >= to) break;
      out.add(source.slice(at, quote), at);
      out.addEscaped("'", quote, quote + 2);
      at = quote + 2;
    }
    out.add(source.slice(at, to), at);
  };
  foldLines(source, start + 1, closed(source, start, end, "'"), line, out);
  return out.done(start + 1);
}

/** A double-quoted scalar; `start` and `end` include the quotes. */
export function doubleQuotedText(source: string, start: number, end: number): ScalarText {
  const out = new Pieces();
  const last = closed(source, start, end, '"');
  let at = start + 1;
  while (at < last) {
    const unit = source[at] ?? '';
    if (unit === '\\') {
      at = decodeEscape(source, at, last, out);
    } else if (unit === '\n' || unit === '\r') {
      at = foldBreaks(source, at, last, at, out);
    } else if (unit === ' ' || unit === '\t') {
      const from = at;
      while (at < last && (source[at] === ' ' || source[at] === '\t')) at++;
      if (at < last && (source[at] === '\n' || source[at] === '\r'))
        at = foldBreaks(source, at, last, from, out);
      else out.add(source.slice(from, at), from);
    } else {
      const from = at;
      while (at < last && !'\\\n\r \t'.includes(source[at] ?? '')) at++;
      out.add(source.slice(from, at), from);
    }
  }
  return out.done(start + 1);
}

export interface BlockHeader {
  readonly folded: boolean;
  readonly chomp: '' | '-' | '+';
  /** The indentation stated after `|`, relative to the parent; 0 when the first line decides. */
  readonly indicator: number;
}

/** Reads `|`, `>-`, `|2+` at an offset. */
export function blockHeader(source: string, at: number): BlockHeader {
  let chomp: '' | '-' | '+' = '';
  let indicator = 0;
  for (let i = at + 1; i < at + 3; i++) {
    const unit = source[i] ?? '';
    if ((unit === '-' || unit === '+') && chomp === '') chomp = unit;
    else if (unit >= '1' && unit <= '9' && indicator === 0) indicator = Number(unit);
    else break;
  }
  return { folded: source[at] === '>', chomp, indicator };
}

/**
 * A block scalar's body: `start` is where its first line begins, `end` where the scalar ends.
 * `parentIndent` is the column of the map or list that holds it (-1 at the top), for a stated indentation.
 */
export function blockText(
  source: string,
  start: number,
  end: number,
  header: BlockHeader,
  parentIndent: number,
): ScalarText {
  const lines = bodyLines(source, start, end);
  const first = lines.find((line) => !line.blank);
  const stated = header.indicator === 0 ? undefined : Math.max(parentIndent, 0) + header.indicator;
  const indent = stated ?? first?.indent ?? Math.max(0, ...lines.map((line) => line.indent));
  // Blank lines that reach beyond the indentation have content of their own: spaces.
  let last = lines.length;
  while (last > 0 && isEmptyLine(lines[last - 1], indent)) last--;
  const out = new Pieces();
  if (header.folded) foldBlock(source, lines.slice(0, last), indent, out);
  else literalBlock(source, lines.slice(0, last), indent, out);
  const tail = lines.slice(last);
  const ending = lines[last - 1];
  // A text that ends without a line break has its final line all the same.
  if (ending !== undefined && header.chomp !== '-') out.add('\n', ending.to);
  if (header.chomp === '+') {
    const blanks = ending === undefined && tail.length === 1 ? tail : tail.filter((line) => line.broken);
    for (const line of blanks) out.add('\n', line.to);
  }
  return out.done(start);
}

interface BodyLine {
  readonly from: number;
  /** Where its line break is. */
  readonly to: number;
  readonly indent: number;
  readonly blank: boolean;
  readonly broken: boolean;
}

function bodyLines(source: string, start: number, end: number): BodyLine[] {
  const lines: BodyLine[] = [];
  let from = start;
  while (from < end) {
    let to = from;
    while (to < end && source[to] !== '\n' && source[to] !== '\r') to++;
    let content = from;
    while (content < to && source[content] === ' ') content++;
    lines.push({ from, to, indent: content - from, blank: content === to, broken: to < end });
    from = to < end ? afterBreak(source, to) : end;
  }
  return lines;
}

const isEmptyLine = (line: BodyLine | undefined, indent: number): boolean =>
  line?.blank === true && line.indent <= indent;

function literalBlock(source: string, lines: readonly BodyLine[], indent: number, out: Pieces): void {
  lines.forEach((line, index) => {
    const from = Math.min(line.from + indent, line.to);
    out.add(source.slice(from, line.to), from);
    if (index < lines.length - 1) out.add('\n', line.to);
  });
}

/** Lines at the block's indentation are joined by a space; deeper lines and those around them keep their breaks. */
function foldBlock(source: string, lines: readonly BodyLine[], indent: number, out: Pieces): void {
  let blanks: BodyLine[] = [];
  let before: { readonly line: BodyLine; readonly deeper: boolean } | undefined;
  for (const line of lines) {
    if (isEmptyLine(line, indent)) {
      blanks.push(line);
      continue;
    }
    const from = Math.min(line.from + indent, line.to);
    const deeper = source[from] === ' ' || source[from] === '\t';
    if (before === undefined) {
      for (const blank of blanks) out.add('\n', blank.to);
    } else if (before.deeper || deeper) {
      out.add('\n', before.line.to);
      for (const blank of blanks) out.add('\n', blank.to);
    } else if (blanks.length === 0) {
      out.add(' ', before.line.to);
    } else {
      out.add('\n', before.line.to);
      for (const blank of blanks.slice(1)) out.add('\n', blank.to);
    }
    out.add(source.slice(from, line.to), from);
    before = { line, deeper };
    blanks = [];
  }
}

/** Lines of a plain or single-quoted scalar: each trimmed, one break a space, more of them one fewer breaks. */
function foldLines(
  source: string,
  start: number,
  end: number,
  line: (from: number, to: number) => void,
  out: Pieces,
): void {
  let at = start;
  while (true) {
    let to = at;
    while (to < end && source[to] !== '\n' && source[to] !== '\r') to++;
    if (to >= end) {
      line(at, end);
      return;
    }
    let trimmed = to;
    while (trimmed > at && (source[trimmed - 1] === ' ' || source[trimmed - 1] === '\t')) trimmed--;
    line(at, trimmed);
    at = foldBreaks(source, to, end, trimmed, out);
  }
}

/** Folds the line breaks at `at`, with the white space around them; gives where the next content is. */
function foldBreaks(source: string, at: number, end: number, shownAt: number, out: Pieces): number {
  let breaks = 0;
  let next = at;
  const places: number[] = [];
  while (next < end) {
    const unit = source[next];
    if (unit === '\n' || unit === '\r') {
      breaks++;
      places.push(next);
      next = Math.min(afterBreak(source, next), end);
    } else if (unit === ' ' || unit === '\t') next++;
    else break;
  }
  if (breaks === 1) out.add(' ', shownAt);
  else for (let i = 1; i < breaks; i++) out.add('\n', i === 1 ? shownAt : (places[i] ?? shownAt));
  return next;
}

function decodeEscape(source: string, at: number, last: number, out: Pieces): number {
  const unit = source[at + 1] ?? '';
  const simple = escapes.get(unit);
  if (simple !== undefined && at + 1 < last) {
    out.addEscaped(simple, at, at + 2);
    return at + 2;
  }
  if (unit === '\n' || unit === '\r') {
    let next = afterBreak(source, at + 1);
    while (next < last && (source[next] === ' ' || source[next] === '\t')) next++;
    return Math.min(next, last);
  }
  const digits = unit === 'x' ? 2 : unit === 'u' ? 4 : unit === 'U' ? 8 : 0;
  const hex = source.slice(at + 2, at + 2 + digits);
  if (digits > 0 && at + 2 + digits <= last && hex.length === digits && /^[0-9a-fA-F]+$/.test(hex)) {
    const code = Number.parseInt(hex, 16);
    if (code <= 0x10ffff) {
      out.addEscaped(String.fromCodePoint(code), at, at + 2 + digits);
      return at + 2 + digits;
    }
  }
  const end = Math.min(at + 2, last);
  out.add(source.slice(at, end), at);
  return end;
}

/** What may follow `\` in double quotes (YAML 1.2.2, section 5.7). */
const escapes: ReadonlyMap<string, string> = new Map([
  ['0', '\0'],
  ['a', '\x07'],
  ['b', '\b'],
  ['t', '\t'],
  ['\t', '\t'],
  ['n', '\n'],
  ['v', '\v'],
  ['f', '\f'],
  ['r', '\r'],
  ['e', '\x1b'],
  [' ', ' '],
  ['"', '"'],
  ['/', '/'],
  ['\\', '\\'],
  ['N', '\u0085'],
  ['_', '\u00a0'],
  ['L', '\u2028'],
  ['P', '\u2029'],
]);

function closed(source: string, start: number, end: number, quote: string): number {
  return end > start + 1 && source[end - 1] === quote ? end - 1 : end;
}

function afterBreak(source: string, at: number): number {
  return source[at] === '\r' && source[at + 1] === '\n' ? at + 2 : at + 1;
}

/** Collects decoded pieces with their places, joining those that go on where the last one ended. */
class Pieces {
  #text = '';
  #next = -1;
  readonly #map: (readonly [number, number])[] = [];

  add(piece: string, at: number): void {
    if (piece === '') return;
    if (at !== this.#next) this.#map.push([this.#text.length, at]);
    this.#text += piece;
    this.#next = at + piece.length;
  }

  /** A character that the file writes with several: `\n`, `''`. The place behind it is known, too. */
  addEscaped(piece: string, at: number, end: number): void {
    this.add(piece, at);
    this.#map.push([this.#text.length, end]);
    this.#next = end;
  }

  done(start: number): ScalarText {
    if (this.#map.length === 0) this.#map.push([0, start]);
    return { text: this.#text, map: this.#map };
  }
}

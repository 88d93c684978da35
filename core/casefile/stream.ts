/**
 * A `.diag` file cut into cells without losing a character: `joinStream(splitStream(text)) === text` for every text.
 *
 * A cell starts at a line `---` that ends there or goes on with a space or a tab.
 * What stands before the first such line is the prologue when it holds no content
 * (a byte-order mark, comments, blank lines, directives, a lone `...`), otherwise it is the first cell.
 */
export interface Stream {
  readonly prologue: string;
  readonly cells: readonly RawCell[];
  /** The offset of each cell's text in the file. They stand beside the cells, so that a cell that is moved stays the same. */
  readonly starts: readonly number[];
}

export interface RawCell {
  /** The `---` line with its line break; empty for a first cell that has none. */
  readonly separator: string;
  /** The document's text without its last line break. */
  readonly text: string;
  /** That last line break: LF, CRLF, CR or nothing. */
  readonly ending: string;
}

export function splitStream(text: string): Stream {
  const first = text.charCodeAt(0) === byteOrderMark ? 1 : 0;
  const cells: RawCell[] = [];
  const starts: number[] = [];
  let at = nextSeparator(text, first, first);
  let prologue = text.slice(0, at);
  if (holdsContent(text, first, at)) {
    prologue = text.slice(0, first);
    cells.push(rawCell(text, first, first, at));
    starts.push(first);
  }
  while (at < text.length) {
    const start = lineEnd(text, at);
    const next = nextSeparator(text, start, first);
    cells.push(rawCell(text, at, start, next));
    starts.push(start);
    at = next;
  }
  return { prologue, cells, starts };
}

/** A stream of these cells; given the one that it was before, only cells that are not the same are measured. */
export function streamOf(prologue: string, cells: readonly RawCell[], before?: Stream): Stream {
  const known = before?.prologue === prologue ? before : undefined;
  return { prologue, cells, starts: shifted(cells, known) ?? measured(prologue, cells) };
}

function measured(prologue: string, cells: readonly RawCell[]): readonly number[] {
  let at = prologue.length;
  return cells.map(({ separator, text, ending }) => {
    const start = at + separator.length;
    at = start + text.length + ending.length;
    return start;
  });
}

/** The starts of before, moved by what the cells in front have become longer; nothing unless there are as many. */
function shifted(cells: readonly RawCell[], before: Stream | undefined): readonly number[] | undefined {
  if (before === undefined || before.cells.length !== cells.length) return undefined;
  let starts: number[] | undefined;
  let by = 0;
  for (let index = 0; index < cells.length; index++) {
    const old = before.cells[index];
    const now = cells[index];
    const moved = old === now ? by : by + (now?.separator.length ?? 0) - (old?.separator.length ?? 0);
    if (moved !== 0) {
      starts ??= [...before.starts];
      starts[index] = (before.starts[index] ?? 0) + moved;
    }
    if (old !== now && old !== undefined && now !== undefined) by += lengthOfCell(now) - lengthOfCell(old);
  }
  return starts ?? before.starts;
}

const lengthOfCell = ({ separator, text, ending }: RawCell): number =>
  separator.length + text.length + ending.length;

/** How long the file is. */
export function lengthOf({ prologue, cells, starts }: Stream): number {
  const last = cells.at(-1);
  return last === undefined ? prologue.length : (starts.at(-1) ?? 0) + last.text.length + last.ending.length;
}

/** The offset of a cell's `---` line in the file. */
export function separatorStart({ cells, starts }: Stream, cell: number): number {
  return (starts[cell] ?? 0) - (cells[cell]?.separator.length ?? 0);
}

export function joinStream(stream: Pick<Stream, 'prologue' | 'cells'>): string {
  let text = stream.prologue;
  for (const cell of stream.cells) text += cell.separator + cell.text + cell.ending;
  return text;
}

/** The line break that a new line of this file should have: its own first one, LF when it has none. */
export function lineBreakOf(text: string): string {
  const at = text.search(/[\r\n]/);
  if (at < 0 || text[at] === '\n') return '\n';
  return text[at + 1] === '\n' ? '\r\n' : '\r';
}

function rawCell(text: string, separatorStart: number, start: number, next: number): RawCell {
  let end = next;
  if (end > start && text.charCodeAt(end - 1) === lineFeed) end--;
  if (end > start && text.charCodeAt(end - 1) === carriageReturn) end--;
  return {
    separator: text.slice(separatorStart, start),
    text: text.slice(start, end),
    ending: text.slice(end, next),
  };
}

/** The offset of the next `---` line from a line's start on, or the text's end. */
function nextSeparator(text: string, from: number, first: number): number {
  let at = text.indexOf('---', from);
  while (at >= 0) {
    const before = text.charCodeAt(at - 1);
    const startsLine = at === first || before === lineFeed || before === carriageReturn;
    if (startsLine && endsMark(text.charCodeAt(at + 3))) return at;
    at = text.indexOf('---', at + 1);
  }
  return text.length;
}

/** True for what may follow `---` and `...`: the end of the text (NaN), a line break, a space, a tab. */
function endsMark(unit: number): boolean {
  return Number.isNaN(unit) || unit === 32 || unit === 9 || unit === lineFeed || unit === carriageReturn;
}

/** The offset after the line break of the line that holds `from`. */
function lineEnd(text: string, from: number): number {
  for (let at = from; at < text.length; at++) {
    const unit = text.charCodeAt(at);
    if (unit === lineFeed) return at + 1;
    if (unit === carriageReturn) return text.charCodeAt(at + 1) === lineFeed ? at + 2 : at + 1;
  }
  return text.length;
}

/** Whether a stretch of lines holds more than comments, blank lines, directives and `...`. */
function holdsContent(text: string, from: number, to: number): boolean {
  let at = from;
  while (at < to) {
    const lineStart = at;
    const end = lineEnd(text, at);
    while (at < end && (text.charCodeAt(at) === 32 || text.charCodeAt(at) === 9)) at++;
    const unit = text.charCodeAt(at);
    const blank = at >= end || unit === lineFeed || unit === carriageReturn;
    const mark = at === lineStart && text.startsWith('...', at) && endsMark(text.charCodeAt(at + 3));
    const directive = at === lineStart && unit === percent;
    if (!blank && unit !== numberSign && !mark && !directive) return true;
    at = end;
  }
  return false;
}

const byteOrderMark = 0xfeff;
const lineFeed = 10;
const carriageReturn = 13;
const numberSign = 35;
const percent = 37;

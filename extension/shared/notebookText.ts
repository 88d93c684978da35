import { type ReadCell, readCase } from '../../core/casefile/readCase.ts';
import { lineBreakOf, type RawCell, splitStream } from '../../core/casefile/stream.ts';
import { newNote, noteMarkdown, writeNote } from '../../core/casefile/writeNote.ts';

/**
 * A case file as a notebook and back. What a notebook cannot show and the file must not lose rides in metadata;
 * it counts only while it still says what the cell shows, since an editor may hand a cell another's.
 *
 * Law: `writeNotebook(readNotebook(text)) === text`.
 */
export interface Notebook {
  readonly metadata: NotebookMetadata;
  readonly cells: readonly NotebookCell[];
}

export interface NotebookCell {
  readonly kind: 'code' | 'note';
  /** The cell's text as it stands, or the note's Markdown. */
  readonly value: string;
  readonly metadata: CellMetadata;
}

/** All optional: a notebook that was made in the editor has none. */
export interface NotebookMetadata {
  /** What stands before the first cell. */
  readonly prologue?: string;
  /** The line break of a new line. */
  readonly lineBreak?: string;
  /** The last cell's line break: nothing when the file ends without one. */
  readonly ending?: string;
}

export interface CellMetadata {
  /** The cell's `---` line with its line break; nothing for a first cell without one. */
  readonly separator?: string;
  /** The line break behind the cell. */
  readonly ending?: string;
  /** The text as it stands in the file, where the editor would change it by itself (its line breaks), or a note's source. */
  readonly source?: string;
}

export function readNotebook(text: string): Notebook {
  const { prologue, cells } = splitStream(text);
  const lineBreak = lineBreakOf(text);
  const last = cells.at(-1);
  // An empty last cell without a line break says nothing about the file's end.
  const ending =
    last === undefined || (last.text === '' && last.ending === '') ? {} : { ending: last.ending };
  return { metadata: { prologue, lineBreak, ...ending }, cells: cells.map((raw) => shown(raw, lineBreak)) };
}

/** The whole file, and where each cell's text starts and ends in it. */
export interface PlacedNotebook {
  readonly text: string;
  readonly cells: readonly { readonly start: number; readonly end: number }[];
}

export function writeNotebook(notebook: Notebook): string {
  return placeNotebook(notebook).text;
}

export function placeNotebook({ metadata, cells }: Notebook): PlacedNotebook {
  const places: { start: number; end: number }[] = [];
  let whole = metadata.prologue ?? '';
  for (const [index, cell] of cells.entries()) {
    const { separator, text, ending } = written(cell, index, cells.length, metadata);
    const start = whole.length + separator.length;
    places.push({ start, end: start + text.length });
    whole += separator + text + ending;
  }
  return { text: whole, cells: places };
}

/**
 * A cell as it stands in the file, where a reader finds just this cell there, whatever its neighbours hold;
 * undefined for any other, such as one into which a `---` line was typed. The very same for the very same cell.
 */
export function writtenAlone(
  cell: NotebookCell,
  index: number,
  count: number,
  metadata: NotebookMetadata,
): RawCell | undefined {
  const raw = written(cell, index, count, metadata);
  const isLast = index === count - 1;
  if (index > 0 && !isLast) return isAlone(raw, '', false) ? raw : undefined;
  return isAlone(raw, index === 0 ? (metadata.prologue ?? '') : '', isLast) ? raw : undefined;
}

/** Between two cells, a cell ends with a line break, so that the `---` of the next one starts a line. */
function isAlone(raw: RawCell, prologue: string, isLast: boolean): boolean {
  // Nearly every cell, and no text has to be taken apart to see it.
  const isPlain = raw.separator === '---\n' && raw.ending === '\n' && !/---|\r/.test(raw.text);
  if (prologue === '' && isPlain) return true;
  const stream = splitStream(prologue + raw.separator + raw.text + raw.ending);
  const [only, second] = stream.cells;
  return (
    stream.prologue === prologue &&
    second === undefined &&
    only?.separator === raw.separator &&
    only.text === raw.text &&
    (isLast || raw.ending !== '' || /[\r\n]$/.test(raw.separator + raw.text))
  );
}

function written(cell: NotebookCell, index: number, count: number, metadata: NotebookMetadata): RawCell {
  const lineBreak = metadata.lineBreak ?? '\n';
  const inside = writtenInside(cell, lineBreak);
  const isLast = index === count - 1;
  if (index > 0 && !isLast) return inside;
  const { text } = inside;
  const ending = isLast ? endingOf(cell, text, metadata.ending, lineBreak) : inside.ending;
  const follows = index > 0 || !holdsContent(text) || /[^\ufeff]/.test(metadata.prologue ?? '');
  const separator = separatorOf(cell, follows, isLast && text + ending === '', lineBreak);
  return { separator, text, ending };
}

function shown({ separator, text, ending }: RawCell, lineBreak: string): NotebookCell {
  const note = readNote(text);
  if (note !== undefined) {
    return { kind: 'note', value: note.markdown, metadata: { separator, ending, source: text } };
  }
  const changes =
    text.includes('\r') || text.startsWith(byteOrderMark) || (lineBreak !== '\n' && text.includes('\n'));
  const metadata = changes ? { separator, ending, source: text } : { separator, ending };
  return { kind: 'code', value: text, metadata };
}

/** A note that can be shown as a page: one without findings of its own, which would not be seen there. */
function readNote(text: string): { read: ReadCell; markdown: string } | undefined {
  if (!/^(?:[ \t]*(?:#.*)?[\r\n]+)*["']?note\b/.test(text)) return undefined;
  // A line break more, since that of the cell is not part of its text.
  const read = readCase(`${text}\n`).cells[0];
  if (read?.cell?.kind !== 'note' || read.raw.text !== text || read.diagnostics.length > 0) return undefined;
  return { read, markdown: noteMarkdown(read.cell) };
}

/** Kept for as long as an editor holds the very same cell: what it is between others, with the line break that it was written for. */
const known = new WeakMap<NotebookCell, { readonly lineBreak: string; readonly raw: RawCell }>();

function writtenInside(cell: NotebookCell, lineBreak: string): RawCell {
  const before = known.get(cell);
  if (before?.lineBreak === lineBreak) return before.raw;
  const text = writeCell(cell, lineBreak);
  const separator = separatorOf(cell, true, false, lineBreak);
  const raw = { separator, text, ending: endingOf(cell, text, undefined, lineBreak) };
  known.set(cell, { lineBreak, raw });
  return raw;
}

function writeCell({ kind, value, metadata: { source } }: NotebookCell, lineBreak: string): string {
  if (source === undefined) {
    if (kind === 'note') return newNote(value, lineBreak);
    return lineBreak === '\n' && !value.includes('\r') ? value : value.replace(lineEnds, lineBreak);
  }
  const ownBreak = /[\r\n]/.test(source) ? lineBreakOf(source) : lineBreak;
  if (kind === 'code') return keepBreaks(source, value, ownBreak);
  const note = readNote(source);
  return note === undefined ? newNote(value, ownBreak) : writeNote(note.read, value, ownBreak);
}

/** A cell keeps its own separator; one without gets `---`, unless it can be the file's first as it is. */
function separatorOf(
  { metadata: { separator = '' } }: NotebookCell,
  follows: boolean,
  endsFile: boolean,
  lineBreak: string,
): string {
  if (separator === '') return follows ? `---${lineBreak}` : '';
  // The file's last line may be a `---` without a line break.
  return endsFile || /[\r\n]$/.test(separator) ? separator : separator + lineBreak;
}

/** `last` is the file's own end, given for its last cell only. */
function endingOf(
  { metadata }: NotebookCell,
  written: string,
  last: string | undefined,
  lineBreak: string,
): string {
  if (written === '' && metadata.ending === '') return '';
  // A file may end without a line break, but not when the break of its last cell would then be lost.
  const bare = last === '' && !/[\r\n]$/.test(written);
  const ending = bare ? '' : last || metadata.ending || lineBreak;
  // A carriage return before a line feed would become one line break.
  return ending === '\n' && written.endsWith('\r') ? '\r\n' : ending;
}

/** `value` with the line breaks that its unchanged first and last lines have in `source`. */
function keepBreaks(source: string, value: string, lineBreak: string): string {
  const old = source.split(lineEnds);
  const now = value.split(lineEnds);
  if (old[0] === byteOrderMark + now[0]) now[0] = old[0];
  const breaks = source.match(lineEnds) ?? [];
  let head = 0;
  while (head < now.length - 1 && head < breaks.length && old[head] === now[head]) head++;
  let tail = 0;
  while (
    tail < now.length - 1 - head &&
    tail < breaks.length - head &&
    old.at(-1 - tail) === now.at(-1 - tail)
  )
    tail++;
  let text = '';
  for (const [index, line] of now.entries()) {
    const fromEnd = now.length - 1 - index;
    if (fromEnd === 0) text += line;
    else if (index < head) text += line + (breaks[index] ?? lineBreak);
    else if (fromEnd <= tail) text += line + (breaks.at(-fromEnd) ?? lineBreak);
    else text += line + lineBreak;
  }
  return text;
}

/** Whether a reader takes the text for a cell without a `---` before it. */
function holdsContent(text: string): boolean {
  const { prologue, cells } = splitStream(byteOrderMark + text);
  return prologue === byteOrderMark && cells.length > 0;
}

const lineEnds = /\r\n|\r|\n/g;
const byteOrderMark = '\ufeff';

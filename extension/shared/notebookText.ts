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
  const lineBreak = metadata.lineBreak ?? '\n';
  const places: { start: number; end: number }[] = [];
  const last = cells.length - 1;
  let text = metadata.prologue ?? '';
  for (const [index, cell] of cells.entries()) {
    const inside = writtenInside(cell, lineBreak);
    let { separator, whole } = inside;
    if (index === 0 || index === last) {
      const ending = index === last ? endingOf(cell, inside.text, metadata.ending, lineBreak) : inside.ending;
      const follows = index > 0 || !holdsContent(inside.text) || /[^\ufeff]/.test(text);
      separator = separatorOf(cell, follows, index === last && inside.text + ending === '', lineBreak);
      whole = separator + inside.text + ending;
    }
    const start = text.length + separator.length;
    places.push({ start, end: start + inside.text.length });
    text += whole;
  }
  return { text, cells: places };
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

/** A cell as it is written between others. */
interface Inside {
  readonly lineBreak: string;
  readonly separator: string;
  readonly text: string;
  readonly ending: string;
  /** The three in one: a file of many cells is put together from fewer pieces. */
  readonly whole: string;
}

/** Kept for as long as an editor holds the very same cell: it writes all of them after each change. */
const written = new WeakMap<NotebookCell, Inside>();

function writtenInside(cell: NotebookCell, lineBreak: string): Inside {
  const known = written.get(cell);
  if (known?.lineBreak === lineBreak) return known;
  const text = writeCell(cell, lineBreak);
  const separator = separatorOf(cell, true, false, lineBreak);
  const ending = endingOf(cell, text, undefined, lineBreak);
  const now = { lineBreak, separator, text, ending, whole: separator + text + ending };
  written.set(cell, now);
  return now;
}

function writeCell({ kind, value, metadata: { source } }: NotebookCell, lineBreak: string): string {
  if (source === undefined) {
    return kind === 'note' ? newNote(value, lineBreak) : value.replace(lineEnds, lineBreak);
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

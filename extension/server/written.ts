import type { Study } from '../../core/study/types.ts';
import { noteLines, type View, writtenLines } from './view.ts';

/** A case as its file would say it now, and which document shows which stretch of it. */
export interface Written {
  readonly text: string;
  readonly documents: readonly WrittenDocument[];
}

export interface WrittenDocument {
  readonly uri: string;
  readonly version: number;
  readonly start: number;
  readonly end: number;
  readonly isNote: boolean;
}

/** The documents as views of the study of their text; those that still say the same keep their lines. */
export function viewsOf({ text, documents }: Written, study: Study, before: readonly View[]): View[] {
  const { cells } = study.file;
  let at = 0;
  return documents.map((document, index) => {
    const { uri, version, start, end, isNote } = document;
    while (at < cells.length && (cells[at]?.raw.start ?? 0) < start) at++;
    const firstCell = at;
    while (at < cells.length && (cells[at]?.raw.start ?? 0) <= end) at++;
    const place = { uri, version, start, end, isNote, firstCell, pastCell: at };
    const old = before[index];
    if (old?.isNote === isNote && old.written.length === end - start && text.startsWith(old.written, start))
      return { ...place, written: old.written, lines: old.lines };
    const written = text.slice(start, end);
    const note = isNote ? cells[firstCell] : undefined;
    return { ...place, written, lines: note === undefined ? writtenLines(written) : noteLines(note) };
  });
}

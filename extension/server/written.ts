import type { ReadCell } from '../../core/casefile/readCase.ts';
import type { Study } from '../../core/study/types.ts';
import { type Lines, noteLines, type View, writtenLines } from './view.ts';

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
  /** The same object as long as the stretch says the same; nothing where that is not known. */
  readonly of: object | undefined;
}

/** The documents as views of the study of their text; those that still say the same keep their lines. */
export function viewsOf({ text, documents }: Written, study: Study, before: readonly View[]): View[] {
  const { cells } = study.file;
  let at = 0;
  return documents.map((document, index) => {
    const { uri, version, start, end, isNote, of } = document;
    while (at < cells.length && (cells[at]?.raw.start ?? 0) < start) at++;
    const firstCell = at;
    while (at < cells.length && (cells[at]?.raw.start ?? 0) <= end) at++;
    const old = before[index];
    const isKnown = of !== undefined && old?.of === of && old.end - old.start === end - start;
    const pastCell = at;
    if (
      isKnown &&
      old.start === start &&
      old.version === version &&
      old.firstCell === firstCell &&
      old.pastCell === pastCell &&
      old.uri === uri
    )
      return old;
    const lines = isKnown ? old.lines : newLines(text, document, cells[firstCell]);
    return { uri, version, start, end, isNote, of, firstCell, pastCell, lines };
  });
}

function newLines(text: string, { isNote, start, end }: WrittenDocument, note: ReadCell | undefined): Lines {
  return isNote && note !== undefined ? noteLines(note) : writtenLines(text.slice(start, end));
}

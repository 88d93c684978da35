import type { ReadCell } from '../../core/casefile/readCase.ts';
import type { Stream } from '../../core/casefile/stream.ts';
import type { Study } from '../../core/study/types.ts';
import { remade } from '../../core/text/remade.ts';
import { type Lines, noteLines, type View, writtenLines } from './view.ts';

/** A case as its file would say it now, and which document shows which stretch of it. */
export interface Written {
  /** The whole text, or the pieces that it stands in. */
  readonly file: string | Stream;
  /** The very same as before while nothing about a document changes, wherever it stands now. */
  readonly documents: readonly WrittenDocument[];
  /** Where in the file each document's stretch starts. */
  readonly starts: readonly number[];
  /** Each document shows just one cell of the file, in the same order. */
  readonly isOneToOne: boolean;
}

export interface WrittenDocument {
  readonly uri: string;
  readonly version: number;
  /** What stands in its stretch of the file. */
  readonly text: string;
  readonly isNote: boolean;
  /** The same object as long as the stretch says the same; nothing where that is not known. */
  readonly of: object | undefined;
}

/** The documents as views of the study of their text. */
export interface Viewed {
  readonly documents: readonly WrittenDocument[];
  readonly views: readonly View[];
  /** Each view shows just the cell of its own number. */
  readonly isOneToOne: boolean;
}

/** Views of documents that still say the same keep their lines, and are the very same while nothing about them changes. */
export function viewsOf({ documents, starts, isOneToOne }: Written, study: Study, before?: Viewed): Viewed {
  const { cells, stream } = study.file;
  const viewOf = (document: WrittenDocument, index: number, firstCell: number, pastCell: number): View => {
    const { uri, version, text, isNote, of } = document;
    const old = before?.views[index];
    const isKnown = of !== undefined && old?.of === of && old.length === text.length;
    const lines = isKnown ? old.lines : newLines(document, cells[firstCell]);
    return { uri, version, index, length: text.length, firstCell, pastCell, isNote, of, lines };
  };
  // Of a file that is too large, no cell is read.
  if (isOneToOne && cells.length === documents.length) {
    const known = before?.isOneToOne ? { of: before.documents, made: before.views } : undefined;
    const views = remade(documents, known, (document, index) => viewOf(document, index, index, index + 1));
    return { documents, views, isOneToOne };
  }
  let at = 0;
  const views = documents.map((document, index) => {
    const start = starts[index] ?? 0;
    while (at < cells.length && (stream.starts[at] ?? 0) < start) at++;
    const firstCell = at;
    while (at < cells.length && (stream.starts[at] ?? 0) <= start + document.text.length) at++;
    return viewOf(document, index, firstCell, at);
  });
  return { documents, views, isOneToOne: false };
}

function newLines({ text, isNote }: WrittenDocument, note: ReadCell | undefined): Lines {
  return isNote && note !== undefined ? noteLines(note) : writtenLines(text);
}

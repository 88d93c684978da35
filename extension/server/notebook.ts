import { type NotebookCell, type NotebookMetadata, placeNotebook } from '../shared/notebookText.ts';
import type { Written } from './written.ts';

/** A cell of an open notebook. Its `cell` is the same object until something about it changes. */
export interface HeldCell {
  readonly uri: string;
  readonly version: number;
  readonly cell: NotebookCell;
}

/** A notebook as the editor holds it. */
export interface Notebook {
  readonly kind: 'notebook';
  readonly uri: string;
  readonly version: number;
  readonly metadata: NotebookMetadata;
  /** Their order is the file's; their uris say nothing about it. */
  readonly cells: readonly HeldCell[];
}

/** What can happen to a notebook, in the order in which it is to be applied. */
export interface NotebookChange {
  readonly version: number;
  readonly metadata: NotebookMetadata | undefined;
  readonly splice:
    | { readonly start: number; readonly deleted: number; readonly inserted: readonly InsertedCell[] }
    | undefined;
  /** Cells whose kind or metadata changed. */
  readonly data: readonly Omit<InsertedCell, 'text'>[];
  readonly texts: readonly CellText[];
}

/** A cell that comes in: with its text when it is new, without when it was only moved. */
export interface InsertedCell {
  readonly uri: string;
  readonly kind: NotebookCell['kind'];
  readonly metadata: NotebookCell['metadata'];
}

/** A cell document's text as it is now. */
export interface CellText {
  readonly uri: string;
  readonly version: number;
  readonly text: string;
}

export function changedNotebook(before: Notebook, change: NotebookChange): Notebook {
  let { cells } = before;
  if (change.splice !== undefined) {
    const { start, deleted, inserted } = change.splice;
    const known = new Map(cells.map((each) => [each.uri, each]));
    const added = inserted.map((each) => heldCell(each, known.get(each.uri)));
    cells = [...cells.slice(0, start), ...added, ...cells.slice(start + deleted)];
  }
  if (change.data.length + change.texts.length > 0) {
    const data = new Map(change.data.map((each) => [each.uri, each]));
    const texts = new Map(change.texts.map((each) => [each.uri, each]));
    cells = cells.map((held) => {
      const text = texts.get(held.uri);
      const now = data.get(held.uri);
      const kept = text === undefined ? held : withText(held, text);
      return now === undefined ? kept : heldCell(now, kept);
    });
  }
  return { ...before, version: change.version, metadata: change.metadata ?? before.metadata, cells };
}

export function writtenNotebook({ metadata, cells }: Notebook): Written {
  const placed = placeNotebook({ metadata, cells: cells.map((each) => each.cell) });
  const documents = cells.map(({ uri, version, cell }, index) => {
    const { start, end } = placed.cells[index] ?? { start: 0, end: 0 };
    return { uri, version, start, end, isNote: cell.kind === 'note', of: cell };
  });
  return { text: placed.text, documents };
}

/** A moved cell keeps what it was when nothing about it changed. */
function heldCell({ uri, kind, metadata }: InsertedCell, before: HeldCell | undefined): HeldCell {
  const value = before?.cell.value ?? '';
  return { uri, version: before?.version ?? 0, cell: { kind, value, metadata } };
}

function withText(held: HeldCell, { version, text }: CellText): HeldCell {
  return { ...held, version, cell: { ...held.cell, value: text } };
}

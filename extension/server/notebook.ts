import type { NotebookCell, NotebookMetadata } from '../shared/notebookText.ts';

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
  /** The place of each cell in that order, by its uri. */
  readonly places: ReadonlyMap<string, number>;
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
  let { cells, places } = before;
  if (change.splice !== undefined) {
    const { start, deleted, inserted } = change.splice;
    const added = inserted.map((each) => heldCell(each, cellOf(before, each.uri)));
    cells = [...cells.slice(0, start), ...added, ...cells.slice(start + deleted)];
    places = placesOf(cells);
  }
  if (change.texts.length + change.data.length > 0) {
    const now = [...cells];
    const replace = (uri: string, by: (held: HeldCell) => HeldCell): void => {
      const place = places.get(uri);
      const held = place === undefined ? undefined : now[place];
      if (place !== undefined && held !== undefined) now[place] = by(held);
    };
    for (const each of change.texts) replace(each.uri, (held) => withText(held, each));
    for (const each of change.data) replace(each.uri, (held) => heldCell(each, held));
    cells = now;
  }
  const { version, metadata = before.metadata } = change;
  return { ...before, version, metadata, cells, places };
}

export function placesOf(cells: readonly HeldCell[]): Notebook['places'] {
  return new Map(cells.map(({ uri }, place) => [uri, place]));
}

export function cellOf({ cells, places }: Notebook, uri: string): HeldCell | undefined {
  return cells[places.get(uri) ?? -1];
}

/** A moved cell keeps what it was when nothing about it changed. */
function heldCell({ uri, kind, metadata }: InsertedCell, before: HeldCell | undefined): HeldCell {
  const value = before?.cell.value ?? '';
  return { uri, version: before?.version ?? 0, cell: { kind, value, metadata } };
}

function withText(held: HeldCell, { version, text }: CellText): HeldCell {
  return { ...held, version, cell: { ...held.cell, value: text } };
}

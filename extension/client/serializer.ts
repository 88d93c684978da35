import {
  l10n,
  NotebookCellData,
  NotebookCellKind,
  NotebookData,
  type NotebookDocument,
  type NotebookSerializer,
} from 'vscode';
import { mergeMarkers } from '../../core/casefile/mergeMarkers.ts';
import type { CellMetadata, Notebook, NotebookMetadata } from '../shared/notebookText.ts';
import { readNotebook, writeNotebook } from '../shared/notebookText.ts';

/**
 * Case file ↔ notebook. Pure, since the editor calls it for saving, backups, comparisons and files without a name.
 * Reading throws, with the reason, where only a text editor should touch the file: then that is what is offered.
 */
export const serializer: NotebookSerializer = {
  deserializeNotebook: (bytes) => notebookData(fileText(bytes)),
  serializeNotebook: (data) => new TextEncoder().encode(writeNotebook(notebookOf(data))),
};

/** A text as a notebook of the editor. */
export function notebookData(text: string): NotebookData {
  const { metadata, cells } = readNotebook(text);
  const data = new NotebookData(
    cells.map(({ kind, value, metadata }) => {
      const [cellKind, language] =
        kind === 'note' ? [NotebookCellKind.Markup, 'markdown'] : [NotebookCellKind.Code, 'diag'];
      const cell = new NotebookCellData(cellKind, value, language);
      cell.metadata = { ...metadata };
      return cell;
    }),
  );
  data.metadata = { ...metadata };
  return data;
}

function fileText(bytes: Uint8Array): string {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new Error(l10n.t('This file is not UTF-8. Open it as text and save it with the encoding UTF-8.'));
  }
  const [marker] = mergeMarkers(text);
  if (marker !== undefined) {
    const line = text.slice(0, marker.span.start).split(/\r\n|\r|\n/).length;
    throw new Error(
      l10n.t(
        'This file holds the marks of a merge that was not finished (line {0}). Open it as text, choose what is right, and remove the marks.',
        line,
      ),
    );
  }
  return text;
}

/** What saving the notebook would write. */
export function notebookFile(notebook: NotebookDocument): string {
  return writeNotebook({
    metadata: notebook.metadata,
    cells: notebook.getCells().map(({ kind, document, metadata }) => ({
      kind: kind === NotebookCellKind.Markup ? 'note' : 'code',
      value: document.getText(),
      metadata,
    })),
  });
}

function notebookOf({ metadata, cells }: NotebookData): Notebook {
  return {
    metadata: (metadata ?? {}) as NotebookMetadata,
    cells: cells.map((cell) => ({
      kind: cell.kind === NotebookCellKind.Markup ? 'note' : 'code',
      value: cell.value,
      metadata: (cell.metadata ?? {}) as CellMetadata,
    })),
  };
}

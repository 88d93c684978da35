import type { RawCell } from '../../core/casefile/stream.ts';
import { type Stream, streamOf } from '../../core/casefile/stream.ts';
import { remade } from '../../core/text/remade.ts';
import { placeNotebook, writtenAlone } from '../shared/notebookText.ts';
import type { HeldCell, Notebook } from './notebook.ts';
import type { Written, WrittenDocument } from './written.ts';

/** A notebook as its file would say it, with what the next change starts from. */
export interface WrittenNotebook extends Written {
  readonly of: Notebook;
  /** Each cell as it stands in the file, if a reader finds just that there. */
  readonly alone: readonly (RawCell | undefined)[];
}

/**
 * While each cell of the notebook is one of the file, what a keystroke changes is the one cell, and nobody puts the text
 * together or takes it apart again. Otherwise, as where a `---` line stands in a cell, the text tells what its cells are.
 */
export function writtenNotebook(notebook: Notebook, before?: WrittenNotebook): WrittenNotebook {
  const { cells, metadata } = notebook;
  const known = before?.of.metadata === metadata ? before : undefined;
  const alone = remade(cells, known && { of: known.of.cells, made: known.alone }, ({ cell }, index) =>
    writtenAlone(cell, index, cells.length, metadata),
  );
  if (cells.length === 0 || !areAll(alone)) return { ...fromText(notebook), of: notebook, alone };
  const isKnown = known?.isOneToOne === true;
  const stream = streamOf(metadata.prologue ?? '', alone, isKnown ? streamIn(known) : undefined);
  const documents = remade(
    cells,
    isKnown ? { of: known.of.cells, made: known.documents } : undefined,
    (held, index) => documentOf(held, alone[index]?.text ?? ''),
  );
  return { file: stream, documents, starts: stream.starts, isOneToOne: true, of: notebook, alone };
}

const areAll = (alone: WrittenNotebook['alone']): alone is readonly RawCell[] => !alone.includes(undefined);

const streamIn = ({ file }: Written): Stream | undefined => (typeof file === 'string' ? undefined : file);

function fromText({ metadata, cells }: Notebook): Written {
  const { text, cells: places } = placeNotebook({ metadata, cells: cells.map((each) => each.cell) });
  const starts = places.map(({ start }) => start);
  const documents = cells.map((held, index) =>
    documentOf(held, text.slice(places[index]?.start ?? 0, places[index]?.end ?? 0)),
  );
  return { file: text, documents, starts, isOneToOne: false };
}

function documentOf({ uri, version, cell }: HeldCell, text: string): WrittenDocument {
  return { uri, version, text, isNote: cell.kind === 'note', of: cell };
}

import type {
  NotebookCell as LspCell,
  NotebookDocumentChangeEvent,
  Position,
  Range,
  TextDocumentContentChangeEvent,
  TextDocumentItem,
} from 'vscode-languageserver';
import { NotebookCellKind } from 'vscode-languageserver';
import { type LineIndex, lineIndex, offsetAt } from '../../core/text/lines.ts';
import type { CellMetadata, NotebookMetadata } from '../shared/notebookText.ts';
import {
  type CellText,
  cellOf,
  type HeldCell,
  type InsertedCell,
  type Notebook,
  type NotebookChange,
  placesOf,
} from './notebook.ts';
import type { TextFile } from './textFile.ts';
import type { Point, Stretch } from './view.ts';

/** What the language server protocol says, in our words. The answers go the other way in `toLsp.ts`. */
export function notebookFrom(
  document: {
    readonly uri: string;
    readonly version: number;
    readonly metadata?: unknown;
    readonly cells: readonly LspCell[];
  },
  texts: readonly TextDocumentItem[],
): Notebook {
  const known = new Map(texts.map((each) => [each.uri, each]));
  const cells = document.cells.map((cell): HeldCell => {
    const { uri, kind, metadata } = cellFrom(cell);
    const text = known.get(uri);
    return { uri, version: text?.version ?? 0, cell: { kind, value: text?.text ?? '', metadata } };
  });
  return {
    kind: 'notebook',
    uri: document.uri,
    version: document.version,
    metadata: notebookMetadata(document.metadata),
    cells,
    places: placesOf(cells),
  };
}

/** New cells bring their text in `didOpen`; changes of a text are applied to the one that the notebook has. */
export function notebookChangeFrom(
  version: number,
  change: NotebookDocumentChangeEvent,
  before: Notebook,
): NotebookChange {
  const { structure, data, textContent } = change.cells ?? {};
  const texts = new Map<string, CellText>();
  for (const { uri, version, text } of structure?.didOpen ?? []) texts.set(uri, { uri, version, text });
  for (const { document, changes } of textContent ?? []) {
    const { uri, version } = document;
    const old = texts.get(uri)?.text ?? cellOf(before, uri)?.cell.value ?? '';
    texts.set(uri, { uri, version, text: changedText(old, changes) });
  }
  return {
    version,
    metadata: change.metadata === undefined ? undefined : notebookMetadata(change.metadata),
    splice:
      structure === undefined
        ? undefined
        : {
            start: structure.array.start,
            deleted: structure.array.deleteCount,
            inserted: (structure.array.cells ?? []).map(cellFrom),
          },
    data: (data ?? []).map(cellFrom),
    texts: [...texts.values()],
  };
}

export function textFileFrom({ uri, version, text }: TextDocumentItem): TextFile {
  return { kind: 'text', uri, version, text };
}

/** A text after changes, each of which counts in what the one before left. */
export function changedText(text: string, changes: readonly TextDocumentContentChangeEvent[]): string {
  let now = text;
  for (const change of changes) {
    if (!('range' in change)) {
      now = change.text;
      continue;
    }
    const index = lineIndex(now);
    const start = offsetOf(now, index, change.range.start);
    const end = offsetOf(now, index, change.range.end);
    now = now.slice(0, start) + change.text + now.slice(Math.max(start, end));
  }
  return now;
}

export function pointFrom({ line, character }: Position): Point {
  return { line, character };
}

export function stretchFrom({ start, end }: Range): Stretch {
  return { start, end };
}

/** A character past the line's end means the line's end, before its break. */
function offsetOf(text: string, index: LineIndex, { line, character }: Position): number {
  const at = offsetAt(index, { line: line + 1, column: character + 1 });
  if (at !== index.starts[line + 1]) return at;
  return text[at - 1] === '\n' && text[at - 2] === '\r' ? at - 2 : at - 1;
}

function cellFrom({ document, kind, metadata }: LspCell): InsertedCell {
  return {
    uri: document,
    kind: kind === NotebookCellKind.Markup ? 'note' : 'code',
    metadata: cellMetadata(metadata),
  };
}

/** Metadata is what any extension may have put there: only what is text counts. */
function cellMetadata(given: unknown): CellMetadata {
  return {
    ...textOf(given, 'separator'),
    ...textOf(given, 'ending'),
    ...textOf(given, 'source'),
  };
}

function notebookMetadata(given: unknown): NotebookMetadata {
  return {
    ...textOf(given, 'prologue'),
    ...textOf(given, 'lineBreak'),
    ...textOf(given, 'ending'),
  };
}

function textOf<K extends string>(given: unknown, key: K): { readonly [N in K]?: string } {
  if (typeof given !== 'object' || given === null) return {};
  const value: unknown = Reflect.get(given, key);
  return typeof value === 'string' ? ({ [key]: value } as { readonly [N in K]?: string }) : {};
}

import type { ReadCell } from '../../core/casefile/readCase.ts';
import type { TextNode } from '../../core/casefile/tree.ts';
import { type LineIndex, lineIndex, offsetAt, positionAt } from '../../core/text/lines.ts';

/** A place as an editor counts: lines and characters from 0, characters in UTF-16 units. */
export interface Point {
  readonly line: number;
  readonly character: number;
}

export interface Stretch {
  readonly start: Point;
  readonly end: Point;
}

/**
 * A text document in which the editor shows a stretch of a case file: a notebook's cell, or the file as text.
 * What it shows may differ from what is written: line breaks are the editor's, a note is decoded.
 */
export interface View {
  readonly uri: string;
  readonly version: number;
  /** Its place among the views of its case. */
  readonly index: number;
  /** How long its stretch of the file is. Where that starts is told by the case, since a view that is moved stays the same. */
  readonly length: number;
  /** The study's cells that start in the stretch: usually one; more where a `---` line was typed into a cell. */
  readonly firstCell: number;
  readonly pastCell: number;
  readonly isNote: boolean;
  /** The same object as long as the stretch says the same. */
  readonly of: object | undefined;
  readonly lines: Lines;
}

/** How offsets in a view's written text and points in its document correspond. What is not shown is at its nearest end. */
export interface Lines {
  readonly pointAt: (offset: number) => Point;
  readonly offsetAt: (point: Point) => number;
}

/** Text that is shown as it is written, but for line breaks and a byte-order mark, which editors keep to themselves. */
export function writtenLines(written: string): Lines {
  let index: LineIndex | undefined;
  const hidden = written.startsWith('\ufeff') ? 1 : 0;
  const lines = (): LineIndex => {
    index ??= lineIndex(written);
    return index;
  };
  return {
    pointAt: (offset) => {
      const { line, column } = positionAt(lines(), offset);
      return { line: line - 1, character: line === 1 ? Math.max(0, column - 1 - hidden) : column - 1 };
    },
    offsetAt: ({ line, character }) =>
      offsetAt(lines(), { line: line + 1, column: character + 1 + (line === 0 ? hidden : 0) }),
  };
}

/** A note, of which only the decoded Markdown is shown. */
export function noteLines(note: ReadCell): Lines {
  const { cell } = note;
  return cell?.kind === 'note' ? decodedLines(cell.title) : writtenLines(note.raw.text);
}

function decodedLines(node: TextNode): Lines {
  let index: LineIndex | undefined;
  const lines = (): LineIndex => {
    index ??= lineIndex(node.text);
    return index;
  };
  return {
    pointAt: (offset) => {
      const { line, column } = positionAt(lines(), decodedOffset(node, offset));
      return { line: line - 1, character: column - 1 };
    },
    offsetAt: ({ line, character }) => {
      const decoded = offsetAt(lines(), { line: line + 1, column: character + 1 });
      const pair = node.map.findLast(([text]) => text <= decoded);
      return pair === undefined ? node.span.start : Math.min(pair[1] + decoded - pair[0], node.span.end);
    },
  };
}

/** The offset in the decoded text of an offset in the cell. */
function decodedOffset(node: TextNode, offset: number): number {
  if (offset >= node.span.end) return node.text.length;
  const at = node.map.findLastIndex(([, written]) => written <= offset);
  const pair = node.map[at];
  if (pair === undefined) return 0;
  return Math.min(pair[0] + offset - pair[1], node.map[at + 1]?.[0] ?? node.text.length);
}

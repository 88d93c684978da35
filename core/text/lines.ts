/** A place for people: line and column count from 1, columns in UTF-16 units. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

/** Where the lines of a text start. A line ends at LF, CR or CRLF. */
export interface LineIndex {
  readonly starts: readonly number[];
  readonly length: number;
}

export function lineIndex(text: string): LineIndex {
  const starts = [0];
  if (text.includes('\r')) {
    for (let i = 0; i < text.length; i++) {
      const unit = text.charCodeAt(i);
      if (unit === 10 || (unit === 13 && text.charCodeAt(i + 1) !== 10)) starts.push(i + 1);
    }
  } else {
    for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  }
  return { starts, length: text.length };
}

/** The position of an offset; offsets outside the text are moved to its nearest end. */
export function positionAt(index: LineIndex, offset: number): Position {
  const at = Math.max(0, Math.min(offset, index.length));
  let low = 0;
  let high = index.starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((index.starts[middle] ?? 0) <= at) low = middle;
    else high = middle - 1;
  }
  return { line: low + 1, column: at - (index.starts[low] ?? 0) + 1 };
}

/** The offset of a position; a column past the line's end is moved to the next line's start. */
export function offsetAt(index: LineIndex, position: Position): number {
  const start = index.starts[position.line - 1];
  if (start === undefined) return position.line < 1 ? 0 : index.length;
  const next = index.starts[position.line] ?? index.length;
  return Math.max(start, Math.min(start + position.column - 1, next));
}

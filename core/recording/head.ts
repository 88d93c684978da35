import { encodingOf, isUtf8, textOf, utf8Pieces } from './encoding.ts';
import { type FileBytes, inMemory, pieceSize, type WhyNoFile } from './files.ts';
import type { Layout } from './layout.ts';

/** The start of a file, as far as it is looked at to see how it is written. */
export interface Head {
  readonly encoding: Layout['encoding'];
  /** Lines that are neither blank nor a remark. */
  readonly lines: readonly HeadLine[];
  /** Remarks, whose last may hold the heading. */
  readonly remarks: readonly HeadLine[];
  /** What the first line says the delimiter is: `sep=;`, as spreadsheets write it. */
  readonly delimiter: string | undefined;
}

export interface HeadLine {
  readonly number: number;
  readonly text: string;
}

const lookedAt = 32 * 1024;
const mostLines = 120;

/** The file's first lines; where it is no text, the offset of a byte that no text has. */
export function headOf(
  content: FileBytes,
): Head | { readonly binaryAt: number } | { readonly lost: WhyNoFile } {
  const start = startOf(content);
  if ('is' in start) return { lost: start };
  const { encoding, mark } = encodingOf(start);
  const { value } = utf8Pieces(inMemory(start)).next();
  const piece = value instanceof Uint8Array ? value : start;
  const end = Math.min(piece.length, lookedAt);
  const control = piece.subarray(0, end).findIndex(isControl);
  if (control >= 0) return { binaryAt: encoding === 'UTF-8' ? mark + control : control };
  const isLatin = encoding === 'UTF-8' && !isUtf8(piece, 0, end);
  const all = textOf(piece, 0, end).split(/\r\n|\n|\r/);
  // The last line may be cut off in its middle.
  if (end < piece.length || content.size > pieceSize) all.pop();
  const lines: HeadLine[] = [];
  const remarks: HeadLine[] = [];
  let delimiter: string | undefined;
  all.slice(0, mostLines).forEach((text, i) => {
    const sep = i === 0 ? /^sep=(.)\s*$/i.exec(text) : null;
    if (sep !== null) delimiter = sep[1];
    else if (text.startsWith('#') || text.startsWith('//')) remarks.push({ number: i + 1, text });
    else if (text.trim() !== '') lines.push({ number: i + 1, text });
  });
  return { encoding: isLatin ? 'Latin-1' : encoding, lines, remarks, delimiter };
}

/** The first piece, which is empty where the file is. */
function startOf(content: FileBytes): Uint8Array | WhyNoFile {
  const pieces = content.pieces();
  const { value } = pieces.next();
  // Nobody wants more: the host may let go of the file.
  pieces.return(undefined);
  return value ?? new Uint8Array(0);
}

/** No text holds these; a tab, the ends of lines and a page feed it may. */
const isControl = (byte: number): boolean =>
  byte < 32 && byte !== 9 && byte !== 10 && byte !== 13 && byte !== 12;

import { encodingOf, isUtf8, textOf, utf8Pieces } from './encoding.ts';
import { type FileBytes, inMemory, pieceSize, type WhyNoFile } from './files.ts';
import type { Layout, Other } from './layout.ts';

/** The start of a file, as far as it is looked at to see how it is written. */
export interface Head {
  readonly encoding: Layout['encoding'];
  /** Lines that are neither blank nor a remark. */
  readonly lines: readonly HeadLine[];
  /** Remarks, whose last may hold the heading. */
  readonly remarks: readonly HeadLine[];
  /** What the first line says the delimiter is: `sep=;`, as spreadsheets write it. */
  readonly delimiter: string | undefined;
  /** What it looks like where it has no samples. */
  readonly what: Other | undefined;
  /** The file has no more lines than these. */
  readonly isWhole: boolean;
}

export interface HeadLine {
  /** The first one's where a field in quotes runs over several. */
  readonly number: number;
  readonly text: string;
  /** How many lines of the file it is. */
  readonly lines: number;
}

const lookedAt = 64 * 1024;
const mostLines = 150;

/** A byte that no text has, and where. */
export interface NoText {
  readonly binaryAt: number;
  readonly line: number;
  readonly what: Other | undefined;
}

/** The file's first lines; where it is no text, the offset of a byte that no text has. */
export function headOf(content: FileBytes): Head | NoText | { readonly lost: WhyNoFile } {
  const start = startOf(content);
  if ('is' in start) return { lost: start };
  const { encoding, mark } = encodingOf(start);
  const { value } = utf8Pieces(inMemory(start)).next();
  const piece = value instanceof Uint8Array ? value : start.subarray(0, 0);
  const end = Math.min(piece.length, lookedAt);
  const control = piece.subarray(0, end).findIndex(isControl);
  if (control >= 0) {
    const line = textOf(piece, 0, control).split(/\r\n|\n|\r/).length;
    return { binaryAt: encoding === 'UTF-8' ? mark + control : control, line, what: otherKind(start) };
  }
  const isWindows = encoding === 'UTF-8' && !isUtf8(piece, 0, end);
  const all = textOf(piece, 0, end).split(/\r\n|\n|\r/);
  const isCut = end < piece.length || content.size > pieceSize;
  // The last line may be cut off in its middle.
  if (isCut) all.pop();
  const lines: HeadLine[] = [];
  const remarks: HeadLine[] = [];
  let delimiter: string | undefined;
  for (const line of joinedLines(all.slice(0, mostLines))) {
    const { number, text } = line;
    const sep = number === 1 ? /^sep=(.)\s*$/i.exec(text) : null;
    if (sep !== null) delimiter = sep[1];
    else if (text.startsWith('#') || text.startsWith('//')) remarks.push(line);
    else if (text.trim() !== '') lines.push(line);
  }
  return {
    encoding: isWindows ? 'Windows-1252' : encoding,
    lines,
    remarks,
    delimiter,
    what: otherKind(start),
    isWhole: !isCut && all.length <= mostLines,
  };
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

/** Lines that a field in quotes may run over. */
const mostJoined = 12;

/** A field in quotes may hold ends of lines (RFC 4180, 2.6): its lines are one. A quote that is never closed is a letter. */
function joinedLines(all: readonly string[]): readonly HeadLine[] {
  const lines: HeadLine[] = [];
  for (let at = 0; at < all.length; at++) {
    const first = all[at] ?? '';
    let text = first;
    let count = 1;
    while (leavesOpen(text) && count < mostJoined && at + count < all.length) {
      text += ` ${all[at + count] ?? ''}`;
      count++;
    }
    const isClosed = !leavesOpen(text);
    lines.push({ number: at + 1, text: isClosed ? text : first, lines: isClosed ? count : 1 });
    if (isClosed) at += count - 1;
  }
  return lines;
}

/** Whether a quote that begins a field is still open at the end. */
function leavesOpen(text: string): boolean {
  if (!text.includes('"')) return false;
  let quoted = false;
  for (let at = 0; at < text.length; at++) {
    if (text[at] !== '"') continue;
    if (quoted) quoted = false;
    else if (at === 0 || /[,;\t| "]/.test(text[at - 1] ?? '')) quoted = true;
  }
  return quoted;
}

/** What a file is that holds no samples, by its first bytes. */
function otherKind(bytes: Uint8Array): Other | undefined {
  const [a, b, c, d] = bytes;
  if (a === 0x50 && b === 0x4b && c === 3 && d === 4) return 'a workbook or an archive';
  if (a === 0xd0 && b === 0xcf && c === 0x11 && d === 0xe0) return 'a workbook or an archive';
  if ((a === 0xff && b === 0xfe && c === 0 && d === 0) || (a === 0 && b === 0 && c === 0xfe && d === 0xff))
    return 'text in UTF-32';
  const start = textOf(bytes, 0, Math.min(bytes.length, 64)).trimStart();
  if (/^\ufeff?<[!?a-z]/i.test(start)) return 'a page of HTML or XML';
  return /^\ufeff?[[{]\s*["[{]/.test(start) ? 'JSON' : undefined;
}

import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import type { Cell } from './cell.ts';
import { checkCell } from './checkCell.ts';
import { checkHeader } from './checkHeader.ts';
import { limits } from './limits.ts';
import { readCell } from './readCell.ts';
import { shortened } from './shortened.ts';
import { joinStream, lineBreakOf, type RawCell, type Stream, splitStream } from './stream.ts';
import type { Patience } from './traps/trapsInText.ts';
import { trapsInTree } from './traps/trapsInTree.ts';
import type { Node } from './tree.ts';

/** A case file as it was read. */
export interface CaseFile {
  readonly stream: Stream;
  readonly cells: readonly ReadCell[];
  /** Findings about the file as a whole and between cells; spans count in the file's text. */
  readonly diagnostics: readonly Diagnostic[];
}

/** A cell as it was read. The same object as before when neither its text nor its place changed. */
export interface ReadCell {
  readonly raw: RawCell;
  /** The text as a tree; nothing when it could not be read whole. */
  readonly tree: Node | undefined;
  /** What the tree says, as a cell of its kind; nothing when that could not be told. */
  readonly cell: Cell | undefined;
  /** Spans count in `raw.text`. */
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * text → stream → cells → trees → kinds. With the case as it was before, a cell whose text is unchanged is not read
 * again: its tree, cell and diagnostics are the same objects, wherever it stands now.
 */
export function readCase(text: string, previous?: CaseFile): CaseFile {
  if (text.length > limits.fileLength) return tooLong(text);
  const stream = splitStream(text);
  if (stream.cells.length > limits.cells) return tooManyCells(stream);
  const before = previous === undefined || isForeign(previous) ? [] : previous.cells;
  const patience = { left: limits.patience };
  const withText = finder(before);
  const cells = stream.cells.map((raw, index) => {
    const here = before[index];
    const same = here?.raw.text === raw.text ? here : withText(raw.text);
    if (same === undefined) return freshCell(raw, patience);
    return isSame(same.raw, raw) ? same : { ...same, raw };
  });
  const file = { stream, cells, diagnostics: checkHeader(cells, text.length) };
  // Another version of the format may mean something else by every word.
  if (isForeign(file)) return { ...file, cells: cells.map(unread) };
  return { ...file, diagnostics: [...directives(stream), ...checkSeparators(cells), ...file.diagnostics] };
}

/** Finds a cell by its text. A keystroke asks for one: an index of all is made only when many are asked for. */
function finder(cells: readonly ReadCell[]): (text: string) => ReadCell | undefined {
  let asked = 0;
  let index: ReadonlyMap<string, ReadCell> | undefined;
  return (text) => {
    asked++;
    if (asked <= 4) {
      return cells.findLast(({ raw }) => raw.text.length === text.length && raw.text === text);
    }
    index ??= new Map(cells.map((cell) => [cell.raw.text, cell]));
    return index.get(text);
  };
}

function isForeign(file: CaseFile): boolean {
  return file.diagnostics.some((each) => each.code === 'unknown-version' && each.facts.version !== '');
}

const unread = ({ raw }: ReadCell): ReadCell => ({ raw, tree: undefined, cell: undefined, diagnostics: [] });

function freshCell(raw: RawCell, patience: Patience): ReadCell {
  const { value: tree, diagnostics } = readCell(raw.text, patience);
  if (tree === undefined) {
    return { raw, tree, cell: undefined, diagnostics };
  }
  if (tree.kind !== 'map') {
    const facts = { text: shortened(raw.text.slice(tree.span.start, tree.span.end)) };
    return {
      raw,
      tree,
      cell: undefined,
      diagnostics: [...diagnostics, diagnose('not-a-cell', tree.span, facts)],
    };
  }
  const traps = trapsInTree(tree, raw.text);
  const checked = checkCell(tree, traps.spoiled);
  return {
    raw,
    tree,
    cell: checked.cell,
    diagnostics: [...diagnostics, ...traps.diagnostics, ...checked.diagnostics],
  };
}

function isSame(a: RawCell, b: RawCell): boolean {
  return a.text === b.text && a.start === b.start && a.separator === b.separator && a.ending === b.ending;
}

/** Instructions to a YAML program before the first cell. */
function directives({ prologue }: Stream): Diagnostic[] {
  if (!prologue.includes('%')) return [];
  return [...prologue.matchAll(/(?<=^\uFEFF?|[\r\n])%[^\r\n]*/g)].map((line) => {
    const span = { start: line.index, end: line.index + line[0].length };
    const fix = { title: 'Delete the line', edits: [{ span, newText: '' }] };
    return diagnose('directive', span, { text: shortened(line[0]) }, [fix]);
  });
}

/** Content on a `---` line (a remark there is none), and cells with nothing at all. */
function checkSeparators(cells: readonly ReadCell[]): Diagnostic[] {
  const found: Diagnostic[] = [];
  for (const { raw, tree, diagnostics } of cells) {
    const content = raw.separator.length > 5 ? contentOf(raw) : undefined;
    if (content !== undefined) found.push(content);
    else if (tree === undefined && diagnostics.length === 0) {
      found.push(diagnose('empty-cell', { start: raw.separatorStart, end: raw.start }, {}));
    }
  }
  return found;
}

function contentOf({ separator, separatorStart }: RawCell): Diagnostic | undefined {
  const content = /^---[ \t]+(?!#)([^ \t\r\n][^\r\n]*)/.exec(separator);
  if (content === null) return undefined;
  const words = content[1] ?? '';
  const text = words.trimEnd();
  const start = separatorStart + content[0].length - words.length;
  const edit = { span: { start: separatorStart + 3, end: start }, newText: lineBreakOf(separator) };
  return diagnose('content-on-separator', { start, end: start + text.length }, { text: shortened(text) }, [
    { title: 'Move it to the next line', edits: [edit] },
  ]);
}

function tooLong(text: string): CaseFile {
  const stream: Stream = { prologue: text, cells: [] };
  const facts = { length: `${text.length}`, most: `${limits.fileLength}` };
  return { stream, cells: [], diagnostics: [diagnose('file-too-long', { start: 0, end: 0 }, facts)] };
}

function tooManyCells(stream: Stream): CaseFile {
  const facts = { cells: stream.cells.length, most: limits.cells };
  const whole: Stream = { prologue: joinStream(stream), cells: [] };
  return { stream: whole, cells: [], diagnostics: [diagnose('too-many-cells', { start: 0, end: 0 }, facts)] };
}

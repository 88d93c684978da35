import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { remade } from '../text/remade.ts';
import type { Cell } from './cell.ts';
import { checkCell } from './checkCell.ts';
import { checkHeader } from './checkHeader.ts';
import { limits } from './limits.ts';
import { readCell } from './readCell.ts';
import { shortened } from './shortened.ts';
import {
  joinStream,
  lengthOf,
  lineBreakOf,
  type RawCell,
  type Stream,
  separatorStart,
  splitStream,
} from './stream.ts';
import { cellsWith, traitsOf } from './traits.ts';
import { dashesMissing } from './traps/dashesMissing.ts';
import { separatorSlipInTree } from './traps/separatorSlip.ts';
import type { Patience } from './traps/trapsInText.ts';
import { trapsInTree } from './traps/trapsInTree.ts';
import type { Node } from './tree.ts';

/** A case file as it was read. */
export interface CaseFile {
  readonly stream: Stream;
  readonly cells: readonly ReadCell[];
  /** What of each cell concerns more than itself (`traits.ts`). */
  readonly traits: readonly number[];
  /** Findings about the file as a whole and between cells; spans count in the file's text. */
  readonly diagnostics: readonly Diagnostic[];
}

/** A cell as it was read. The same object as before while nothing about it changes, wherever it stands now. */
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
 * Who holds a case in pieces gives its stream, in which what did not change is not even looked at.
 */
export function readCase(written: string | Stream, previous?: CaseFile): CaseFile {
  const length = typeof written === 'string' ? written.length : lengthOf(written);
  if (length > limits.fileLength) return unreadFile(tooLong(length), written);
  const stream = typeof written === 'string' ? splitStream(written) : written;
  if (stream.cells.length > limits.cells) return unreadFile(tooManyCells(stream), written);
  const known = previous === undefined || isForeign(previous) ? undefined : previous;
  const before = known?.cells ?? [];
  const patience = { left: limits.patience };
  const withText = isOneOther(stream.cells, known?.stream.cells ?? []) ? nowhere : finder(before);
  const cells = remade(stream.cells, known && { of: known.stream.cells, made: before }, (raw, index) => {
    const here = before[index];
    const same = here?.raw.text === raw.text ? here : withText(raw.text);
    if (same === undefined) return freshCell(raw, patience);
    return isSame(same.raw, raw) ? same : { ...same, raw };
  });
  const traits = remade(cells, known && { of: before, made: known.traits }, traitsOf);
  const file = { stream, cells, traits };
  const diagnostics = checkHeader(file, length);
  // Another version of the format may mean something else by every word.
  if (isForeign({ diagnostics })) {
    const unreadCells = cells.map(unread);
    return { stream, cells: unreadCells, traits: unreadCells.map(traitsOf), diagnostics };
  }
  return { ...file, diagnostics: [...directives(stream), ...checkSeparators(file), ...diagnostics] };
}

/** Where just one cell is another, none was moved, and its text is looked for nowhere else. */
function isOneOther(now: readonly RawCell[], before: readonly RawCell[]): boolean {
  if (now.length !== before.length) return false;
  let others = 0;
  for (let index = 0; index < now.length && others < 2; index++) {
    const raw = now[index];
    const old = before[index];
    if (raw !== old && raw?.text !== old?.text) others++;
  }
  return others < 2;
}

const nowhere = (): undefined => undefined;

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

function isForeign(file: Pick<CaseFile, 'diagnostics'>): boolean {
  return file.diagnostics.some((each) => each.code === 'unknown-version' && each.facts.version !== '');
}

function unread({ raw }: Pick<ReadCell, 'raw'>): ReadCell {
  return { raw, tree: undefined, cell: undefined, diagnostics: [] };
}

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
  const dashes = dashesMissing(tree, raw.text);
  const spoiled =
    dashes.length === 0 ? traps.spoiled : new Set([...traps.spoiled, ...dashes.map(({ entry }) => entry)]);
  const checked = checkCell(tree, spoiled);
  const found = [
    ...diagnostics,
    ...traps.diagnostics,
    ...dashes.map(({ diagnostic }) => diagnostic),
    ...checked.diagnostics,
  ];
  const slip = separatorSlipInTree(raw.text, tree);
  if (slip === undefined) return { raw, tree, cell: checked.cell, diagnostics: found };
  // What stands behind it was meant for another cell.
  const before = found.filter(({ span }) => span.end <= slip.span.start);
  return { raw, tree, cell: checked.cell, diagnostics: [...before, slip] };
}

function isSame(a: RawCell, b: RawCell): boolean {
  return a === b || (a.text === b.text && a.separator === b.separator && a.ending === b.ending);
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
function checkSeparators(file: Omit<CaseFile, 'diagnostics'>): Diagnostic[] {
  const found: Diagnostic[] = [];
  for (const index of cellsWith(file, 'file')) {
    const { raw, tree, diagnostics } = file.cells[index] ?? nothing;
    const at = separatorStart(file.stream, index);
    const content = raw.separator.length > 5 ? contentOf(raw, at) : undefined;
    if (content !== undefined) found.push(content);
    else if (tree === undefined && diagnostics.length === 0) {
      found.push(diagnose('empty-cell', { start: at, end: at + raw.separator.length }, {}));
    }
  }
  return found;
}

const nothing = unread({ raw: { separator: '', text: '', ending: '' } });

function contentOf({ separator }: RawCell, at: number): Diagnostic | undefined {
  const content = /^---[ \t]+(?!#)([^ \t\r\n][^\r\n]*)/.exec(separator);
  if (content === null) return undefined;
  const words = content[1] ?? '';
  const text = words.trimEnd();
  const start = at + content[0].length - words.length;
  const edit = { span: { start: at + 3, end: start }, newText: lineBreakOf(separator) };
  return diagnose('content-on-separator', { start, end: start + text.length }, { text: shortened(text) }, [
    { title: 'Move it to the next line', edits: [edit] },
  ]);
}

/** A file of which no cell is read keeps its text all the same. */
function unreadFile(why: Diagnostic, written: string | Stream): CaseFile {
  const prologue = typeof written === 'string' ? written : joinStream(written);
  return { stream: { prologue, cells: [], starts: [] }, cells: [], traits: [], diagnostics: [why] };
}

function tooLong(length: number): Diagnostic {
  const facts = { length: `${length}`, most: `${limits.fileLength}` };
  return diagnose('file-too-long', { start: 0, end: 0 }, facts);
}

function tooManyCells({ cells }: Stream): Diagnostic {
  return diagnose('too-many-cells', { start: 0, end: 0 }, { cells: cells.length, most: limits.cells });
}

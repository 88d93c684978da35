import type { Cell } from '../casefile/cell.ts';
import { checkCell } from '../casefile/checkCell.ts';
import { readCell } from '../casefile/readCell.ts';
import type { MapNode, Node } from '../casefile/tree.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { CellFacts, Definition } from '../study/cellFacts.ts';
import { collectCell } from '../study/cells/collectCell.ts';
import { collectNames, type Names } from '../study/names.ts';
import { parserKnowing } from '../study/source.ts';
import type { Computed, Study } from '../study/types.ts';

/** A cell as the editor sees it: what the study read of it, or, where its text is broken, what of it can be read. */
export interface Standing {
  readonly study: Study;
  readonly index: number;
  readonly text: string;
  /** The text with its last line break: the cursor may stand behind that too. */
  readonly typed: string;
  readonly tree: MapNode | undefined;
  readonly cell: Cell | undefined;
  readonly facts: CellFacts | undefined;
  /** The names of the case, those of this cell with them even where the study could not read it. */
  readonly names: Names;
}

const known = new WeakMap<Study, Map<number, Standing>>();

/** Undefined when the study has no such cell. */
export function standingOf(study: Study, index: number): Standing | undefined {
  let ofStudy = known.get(study);
  if (ofStudy === undefined) {
    ofStudy = new Map();
    known.set(study, ofStudy);
  }
  let standing = ofStudy.get(index);
  if (standing === undefined) {
    standing = read(study, index);
    if (standing !== undefined) ofStudy.set(index, standing);
  }
  return standing;
}

function read(study: Study, index: number): Standing | undefined {
  const of = study.file.cells[index];
  if (of === undefined) return undefined;
  const { text } = of.raw;
  const typed = text + of.raw.ending;
  const { names, header } = study.memo;
  const own = names.cells[index];
  if (of.tree?.kind === 'map' && of.cell !== undefined) {
    return { study, index, text, typed, tree: of.tree, cell: of.cell, facts: own, names };
  }
  const tree = of.tree?.kind === 'map' ? of.tree : mendedTree(text, of.diagnostics);
  const cell = tree === undefined ? undefined : checkCell(tree).cell;
  if (cell === undefined) return { study, index, text, typed, tree, cell, facts: own, names };
  const facts = collectCell(
    cell,
    text,
    index,
    header.header,
    parserKnowing(study.memo.parsed).parse,
    own?.content,
  );
  const cells = names.cells.map((each, at) => (at === index ? facts : each));
  return {
    study,
    index,
    text,
    typed,
    tree,
    cell,
    facts,
    names: collectNames(cells, names.header, names.ownSignals),
  };
}

const computed = new WeakMap<Study, ReadonlyMap<string, Computed>>();

/** A computed name of a cell, with its value. */
export function computedAt(study: Study, cell: number, name: string): Computed | undefined {
  let known = computed.get(study);
  if (known === undefined) {
    known = new Map(study.computed.map((each) => [`${each.cell} ${each.name}`, each]));
    computed.set(study, known);
  }
  return known.get(`${cell} ${name}`);
}

export function computedOf({ study }: Standing, { cell, name }: Definition): Computed | undefined {
  return computedAt(study, cell, name);
}

/** So many broken lines are left out before a cell is given up. */
const mostMended = 8;

/** Longer cells were not written by hand; reading them again and again would be felt. In UTF-16 units. */
const longestMended = 32 * 1024;

/**
 * The tree of a cell in which lines are broken, as they are while someone types: each line that cannot be read
 * is taken for blank, which leaves all other places where they are.
 */
function mendedTree(text: string, reported: readonly Diagnostic[]): MapNode | undefined {
  if (text.length > longestMended) return undefined;
  let mended = text;
  let found = reported;
  for (let left = mostMended; left > 0; left--) {
    const first = found.find((each) => each.severity === 'error');
    const blanked = first === undefined ? undefined : withoutLine(mended, first);
    if (blanked === undefined || blanked === mended) return undefined;
    mended = blanked;
    // Why a line cannot be read was told already: nothing is spent on that here.
    const { value, diagnostics } = readCell(mended, { left: 0 });
    if (isMap(value)) return value;
    found = diagnostics;
  }
  return undefined;
}

const isMap = (node: Node | undefined): node is MapNode => node?.kind === 'map';

function withoutLine(text: string, { span }: Diagnostic): string {
  let start = span.start;
  while (start > 0 && !isBreak(text, start - 1)) start--;
  let end = Math.max(span.start, start);
  while (end < text.length && !isBreak(text, end)) end++;
  return text.slice(0, start) + ' '.repeat(end - start) + text.slice(end);
}

const isBreak = (text: string, at: number): boolean => text[at] === '\n' || text[at] === '\r';

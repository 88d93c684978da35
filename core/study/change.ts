import { type Barometer, type Barometers, findBarometers, isBarometer, sameBarometer } from './barometer.ts';
import type { CellFacts } from './cellFacts.ts';
import { type DefinitionOrder, orderDefinitions } from './evaluateCase.ts';
import { type Header, seenTheSame } from './header.ts';
import type { Memo } from './memo.ts';
import { collectNames, type Names, namesWith } from './names.ts';

/** What of a case has to be studied anew, and what its names are now. */
export interface Change {
  readonly names: Names;
  readonly barometers: Barometers;
  readonly order: DefinitionOrder;
  /** The ids of computed names that are called by their bare name. */
  readonly bareNames: ReadonlySet<string>;
  /** Cells that are studied anew; all others come to what they came to before. */
  readonly cells: ReadonlySet<number>;
}

/**
 * While every name still means a thing of the same cell, a change concerns the changed cells and those that read
 * from them, directly or through others. When a name comes or goes, it may concern every cell.
 * `isSame` tells whether reading a cell brought the same findings as before.
 */
export function changeOf(
  cells: readonly CellFacts[],
  header: Header,
  isSame: (cell: number) => boolean,
  memo: Memo | undefined,
): Change {
  const changed = memo === undefined ? undefined : changedCells(cells, header, isSame, memo);
  const barometers =
    memo !== undefined && changed !== undefined && !holdBarometers(changed, cells, memo.names.cells)
      ? memo.barometers
      : findBarometers(
          cells.flatMap((each) => each.readings),
          header.values,
        );
  if (memo === undefined || changed === undefined || !sameBarometers(memo.barometers, barometers, changed)) {
    const names = collectNames(cells, header.values, header.ownSignals);
    const order = orderDefinitions(names);
    return { names, barometers, order, bareNames: bareNamesOf(cells), cells: new Set(cells.keys()) };
  }
  const { bareNames } = memo;
  const names = namesWith(memo.names, header, cells);
  if (sameDefinitions(memo.names.cells, cells, changed)) {
    return { names, barometers, order: memo.order, bareNames, cells: affected(changed, memo) };
  }
  const order = orderDefinitions(names);
  const inCircles = [...memo.order.circles.keys(), ...order.circles.keys()];
  for (const id of inCircles) changed.add(order.definitions.get(id)?.cell ?? 0);
  return { names, barometers, order, bareNames, cells: affected(changed, memo) };
}

/** A computed name without a cell's name in front is called by its bare name where only one thing has it. */
function bareNamesOf(cells: readonly CellFacts[]): ReadonlySet<string> {
  const byName = new Map<string, string | undefined>();
  for (const { cell, definitions } of cells) {
    for (const { id, name } of definitions) {
      if (id === `${cell + 1}.${name}`) byName.set(name, byName.has(name) ? undefined : id);
    }
  }
  if (byName.size === 0) return noNames;
  for (const { readings } of cells) for (const { fullName } of readings) byName.delete(fullName);
  return new Set([...byName.values()].filter((id) => id !== undefined));
}

const noNames: ReadonlySet<string> = new Set();

/** Undefined when names came, went or stand elsewhere. */
function changedCells(
  cells: readonly CellFacts[],
  header: Header,
  isSame: (cell: number) => boolean,
  memo: Memo,
): Set<number> | undefined {
  const before = memo.names.cells;
  if (!seenTheSame(memo.header.header, header) || before.length !== cells.length) return undefined;
  const changed = new Set<number>();
  for (let index = 0; index < cells.length; index++) {
    const [old, now] = [before[index], cells[index]];
    if (old === undefined || now === undefined) return undefined;
    if (old === now && isSame(index)) continue;
    if (old !== now && !sameNames(old, now)) return undefined;
    changed.add(index);
  }
  return changed;
}

function sameNames(a: CellFacts, b: CellFacts): boolean {
  return (
    a.as === b.as &&
    a.open === b.open &&
    a.answersForSignals === b.answersForSignals &&
    sameLists([...a.states.keys()], [...b.states.keys()]) &&
    a.readings.length === b.readings.length &&
    a.readings.every((each, index) => {
      const other = b.readings[index];
      return each.fullName === other?.fullName && each.key === other.key && each.column === other.column;
    }) &&
    a.definitions.length === b.definitions.length &&
    a.definitions.every((each, index) => {
      const other = b.definitions[index];
      return each.id === other?.id && each.name === other.name;
    })
  );
}

/** Whether the computed names of the changed cells are written as before, and so need the same. */
function sameDefinitions(
  before: readonly CellFacts[],
  now: readonly CellFacts[],
  changed: ReadonlySet<number>,
): boolean {
  for (const cell of changed) {
    const [a, b] = [before[cell]?.definitions ?? [], now[cell]?.definitions ?? []];
    if (!a.every((each, index) => each.source.expression === b[index]?.source.expression)) return false;
  }
  return true;
}

/** Whether a barometer may stand in a cell that changed, or stood there before. */
function holdBarometers(
  changed: ReadonlySet<number>,
  now: readonly CellFacts[],
  before: readonly CellFacts[],
): boolean {
  for (const cell of changed) {
    if (now[cell]?.readings.some(isBarometer) || before[cell]?.readings.some(isBarometer)) return true;
  }
  return false;
}

/** Whether conversions take the same barometer as before, but for those in cells that changed. */
function sameBarometers(a: Barometers, b: Barometers, changed: ReadonlySet<number>): boolean {
  if (a === b) return true;
  if (!sameBarometer(a.ofCase, b.ofCase)) return false;
  for (const cell of new Set([...a.ofCell.keys(), ...b.ofCell.keys()])) {
    if (changed.has(cell)) continue;
    const [before, now] = [a.ofCell.get(cell) ?? noColumns, b.ofCell.get(cell) ?? noColumns];
    if (before.size !== now.size) return false;
    for (const [column, each] of before) if (!sameBarometer(each, now.get(column))) return false;
  }
  return true;
}

const noColumns: ReadonlyMap<string, Barometer> = new Map();

/** The changed cells and all that read from them, directly or through others. */
function affected(changed: ReadonlySet<number>, { readers }: Memo): ReadonlySet<number> {
  const cells = new Set(changed);
  // What is added is walked, too.
  for (const cell of cells) for (const reader of readers(cell)) cells.add(reader);
  return cells;
}

const sameLists = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((each, index) => each === b[index]);

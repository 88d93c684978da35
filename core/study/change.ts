import type { Expression } from '../expression/tree.ts';
import type { Barometer, Barometers } from './barometer.ts';
import type { CellFacts } from './cellFacts.ts';
import type { Outcome } from './outcome.ts';

/** The cells whose facts are others than before. Undefined when there are more or fewer cells. */
export function changedCells(
  before: readonly CellFacts[],
  now: readonly CellFacts[],
): ReadonlySet<number> | undefined {
  if (before.length !== now.length) return undefined;
  const changed = new Set<number>();
  for (let index = 0; index < now.length; index++) if (before[index] !== now[index]) changed.add(index);
  return changed;
}

/** Whether every name still means a thing of the same cell: only values, types and what is read may differ. */
export function sameNames(a: CellFacts, b: CellFacts): boolean {
  return (
    a.as === b.as &&
    a.open === b.open &&
    a.answersForSignals === b.answersForSignals &&
    a.states.size === b.states.size &&
    a.readings.length === b.readings.length &&
    a.definitions.length === b.definitions.length &&
    sameLists([...a.states.keys()], [...b.states.keys()]) &&
    a.readings.every((each, index) => {
      const other = b.readings[index];
      return (
        each.fullName === other?.fullName && each.key === other.key && each.column === other.column
      );
    }) &&
    a.definitions.every((each, index) => {
      const other = b.definitions[index];
      return each.id === other?.id && each.name === other.name;
    })
  );
}

/** Whether computed names need the same as before. */
export function sameDefinitions(a: CellFacts, b: CellFacts): boolean {
  const expressions = (cell: CellFacts): readonly Expression[] =>
    cell.definitions.map((each) => each.source.expression);
  return sameLists(expressions(a), expressions(b));
}

/** Whether conversions take the same barometer as before, but for cells that are known to have changed. */
export function sameBarometers(a: Barometers, b: Barometers, changed: ReadonlySet<number>): boolean {
  if (!sameBarometer(a.ofCase, b.ofCase)) return false;
  for (const cell of new Set([...a.ofCell.keys(), ...b.ofCell.keys()])) {
    if (!changed.has(cell) && !sameBarometer(a.ofCell.get(cell), b.ofCell.get(cell))) return false;
  }
  return true;
}

function sameBarometer(a: Barometer | undefined, b: Barometer | undefined): boolean {
  if (a === undefined || b === undefined || !sameLists(a.from, b.from)) return false;
  if (a.value === b.value) return true;
  // The station's pressure is computed each time, and is exact.
  const isExact = (barometer: Barometer): boolean =>
    barometer.value.kind === 'one' && barometer.value.amount.spread.length === 0;
  return (
    isExact(a) &&
    isExact(b) &&
    a.value.kind === 'one' &&
    b.value.kind === 'one' &&
    a.value.amount.si === b.value.amount.si
  );
}

/** The changed cells, and all that read from them, directly or through others. */
export function affectedCells(changed: ReadonlySet<number>, outcomes: readonly Outcome[]): ReadonlySet<number> {
  const affected = new Set(changed);
  for (let grows = affected.size > 0; grows; ) {
    grows = false;
    for (let cell = 0; cell < outcomes.length; cell++) {
      if (affected.has(cell) || !outcomes[cell]?.reads.some((each) => affected.has(each))) continue;
      affected.add(cell);
      grows = true;
    }
  }
  return affected;
}

const sameLists = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((each, index) => each === b[index]);

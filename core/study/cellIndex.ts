import { type SortedWords, sortedWords } from '../text/nearest.ts';
import type { CellFacts, Definition } from './cellFacts.ts';
import type { Reading } from './types.ts';

/** What a cell holds, by name: a cell of thousands of names is asked for each of them. */
export interface CellIndex {
  /** By key, then by the cell's own name for the state ('' outside a state's column). */
  readonly readings: ReadonlyMap<string, ReadonlyMap<string, Reading>>;
  readonly definitions: ReadonlyMap<string, Definition>;
  readonly defined: readonly string[];
  /** Names of its states, readings and computed names. */
  readonly members: readonly string[];
  /** Names of the readings that a state has. */
  readonly inState: Map<string, readonly string[]>;
}

const indexes = new WeakMap<CellFacts, CellIndex>();

export function indexOf(cell: CellFacts): CellIndex {
  let index = indexes.get(cell);
  if (index === undefined) {
    index = makeIndex(cell);
    indexes.set(cell, index);
  }
  return index;
}

function makeIndex(cell: CellFacts): CellIndex {
  const readings = new Map<string, Map<string, Reading>>();
  for (const reading of cell.readings) {
    const byState = readings.get(reading.key);
    if (byState === undefined) readings.set(reading.key, new Map([[reading.column ?? '', reading]]));
    else byState.set(reading.column ?? '', reading);
  }
  const definitions = new Map<string, Definition>();
  for (const each of cell.definitions) {
    if (!definitions.has(each.name)) definitions.set(each.name, each);
  }
  const defined = [...definitions.keys()];
  const members = [...new Set([...cell.states.keys(), ...readings.keys(), ...defined])];
  return { readings, definitions, defined, members, inState: new Map() };
}

/** The computed name of a cell. */
export function definedIn(cell: CellFacts | undefined, name: string): Definition | undefined {
  return cell === undefined ? undefined : indexOf(cell).definitions.get(name);
}

/** The names that may stand behind a cell's own, or behind that of one of its states: each time the same list. */
export function membersIn(cell: CellFacts, state?: string): readonly string[] {
  const { readings, members, inState } = indexOf(cell);
  if (state === undefined) return members;
  let held = inState.get(state);
  if (held === undefined) {
    held = [...readings].filter(([, byState]) => byState.has(state)).map(([key]) => key);
    inState.set(state, held);
  }
  return held;
}

const sortedLists = new WeakMap<readonly string[], SortedWords>();

/** The words of a list that stays the same, to look for near ones. */
export function sortedOnce(list: readonly string[]): SortedWords {
  let sorted = sortedLists.get(list);
  if (sorted === undefined) {
    sorted = sortedWords(list);
    sortedLists.set(list, sorted);
  }
  return sorted;
}

import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { TypedExpression } from '../expression/check.ts';
import type { Expression } from '../expression/tree.ts';
import type { Value } from '../expression/value.ts';
import type { Barometers } from './barometer.ts';
import type { Checked } from './checked.ts';
import type { Shared } from './circular.ts';
import type { Done } from './done.ts';
import type { Header } from './header.ts';
import type { Named, Names } from './names.ts';
import type { Target } from './readTargets.ts';
import type { Supplies } from './supplies.ts';

/** All of a case that expressions can see. */
export interface Surroundings {
  readonly names: Names;
  readonly header: Header;
  readonly barometers: Barometers;
  /** Computed names that are done; a member of a circle never is. */
  readonly done: Done;
  /** What the expressions of a cell came to in a previous evaluation of the case. */
  readonly before: (cell: number) => ReadonlyMap<Expression, Evaluated> | undefined;
  /** Filled with what they come to in this one, by cell, and with the cells that they read from. */
  readonly now: Map<number, Map<Expression, Evaluated>>;
  readonly reads: Map<number, Set<number>>;
  /** The ids of computed names that are called by their bare name, since only one thing in the case has it. */
  readonly bareNames: ReadonlySet<string>;
  /** Counts the expressions that had to be computed anew. */
  readonly fresh: { count: number };
}

/** Where an expression stands. */
export interface Standpoint {
  readonly cell: number;
  /** Tells apart what may meet in one sum: computed names have their own, statements need none. */
  readonly name: string;
}

/** What one expression came to, and all that it came from: if none of that changes, neither does this. */
export interface Evaluated extends Supplies {
  readonly typed: TypedExpression;
  /** The same with what it rests on. */
  readonly types: Checked;
  readonly value: Value;
  /** All that is behind it: what was read, then what it was supplied with. */
  readonly from: readonly string[];
  /** Full names of the readings that were read, in the order they are first read. */
  readonly readings: readonly string[];
  /** The barometer that it, or a name that it uses, sets against itself. */
  readonly sharedInside: Shared | undefined;
  /** Spans count in the expression's text. */
  readonly diagnostics: readonly Diagnostic[];
  /** The name of the place, and what was read there; the same things mean the same result. */
  readonly place: string;
  readonly read: readonly Target[];
}

/** The readings behind a name, through computed names. */
export function readingsBehind(named: Named, around: Surroundings): readonly string[] {
  switch (named.kind) {
    case 'reading':
      return [named.reading.fullName];
    case 'states':
      return [...named.readings.values()].map((each) => each.fullName);
    case 'definition':
      return around.done.get(named.definition.id)?.readings ?? [];
    case 'not measured':
      return [named.fullName];
    case 'problem':
      return [];
  }
}

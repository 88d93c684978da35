import type { Cell } from '../casefile/cell.ts';
import type { ReadCell } from '../casefile/readCase.ts';
import type { Code, Diagnostic } from '../diagnostics/diagnostic.ts';
import type { CellFacts } from '../study/cellFacts.ts';
import type { Header } from '../study/header.ts';
import type { Finding, Reading } from '../study/types.ts';
import type { Measured } from './measured.ts';
import type { Moment } from './moments.ts';

/**
 * A check that always runs. Its page (what, why, wrong, right) and its words stand in the catalogue of diagnostics
 * under its code; the file holds what it looks at.
 */
export type Rule = ReadingRule | MomentRule | CellRule | CaseRule;

/** Signals without which a rule has nothing to say: it is asked only where a number of one of them was read. */
export type AskedOf = readonly string[];

/** Compares what stands in different cells. */
export interface CaseRule {
  readonly code: Code;
  readonly of?: AskedOf;
  readonly check: (ruled: RuledCase) => readonly Finding[];
}

/** Looks at one number at a time. */
export interface ReadingRule {
  readonly code: Code;
  readonly checkReading: (one: Measured, cell: RuledCell) => Diagnostic | undefined;
}

/** Looks at one moment at a time. */
export interface MomentRule {
  readonly code: Code;
  readonly of?: AskedOf;
  readonly checkMoment: (moment: Moment, cell: RuledCell) => Diagnostic | undefined;
}

/** Looks at one cell at a time. These, like those above, are asked again only when the cell or the header changes. */
export interface CellRule {
  readonly code: Code;
  readonly of?: AskedOf;
  /** The one kind of cell that it looks at, where it is one. */
  readonly in?: Cell['kind'];
  readonly checkCell: (cell: RuledCell) => readonly Diagnostic[];
}

export interface RuledCell {
  readonly read: ReadCell;
  readonly header: Header;
  readonly readings: readonly Reading[];
  /** The numbers that were measured on the car. */
  readonly measured: readonly Measured[];
  /** The believable ones of them by the moment that they were taken at. */
  readonly moments: readonly Moment[];
}

/** Everything that was measured, moment by moment in the order of the text. */
export interface RuledCase {
  readonly header: Header;
  readonly moments: readonly Moment[];
  /** The cells in which controllers gave codes or the vehicle's number. */
  readonly given: readonly CellFacts[];
  readonly read: (cell: number) => ReadCell | undefined;
  /** What was worked out for one rule and is of use to another, by the function that works it out. */
  readonly once: <T>(make: (ruled: RuledCase) => T) => T;
  /** The list itself, or the one of this name that was made of the case before it changed, while both have the very same members. */
  readonly lasting: <T>(name: string, list: readonly T[]) => readonly T[];
  /** The moments that hold a signal; a lasting list. */
  readonly holding: (signal: string) => readonly Moment[];
  /** The moments of one cell: the columns of a table. */
  readonly inCell: (cell: number) => readonly Moment[];
  /** The moments of the same visit and engine state that hold a signal, the moment itself among them. */
  readonly alike: (moment: Moment, signal: string) => readonly Moment[];
}

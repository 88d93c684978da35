import type { Cell } from '../casefile/cell.ts';
import type { ReadCell } from '../casefile/readCase.ts';
import type { Code, Diagnostic } from '../diagnostics/diagnostic.ts';
import type { CellFacts } from '../study/cellFacts.ts';
import type { Header } from '../study/header.ts';
import type { Finding, Reading } from '../study/types.ts';
import type { Car } from './car.ts';
import type { Measured, Oddity } from './measured.ts';
import type { Moment } from './moments.ts';
import type { RuledSignal } from './values.ts';

/**
 * A check that always runs. Its page (what, why, wrong, right) and its words stand in the catalogue of diagnostics
 * under its code; the file holds what it looks at.
 */
export type Rule = ReadingRule | MomentRule | CellRule | CaseRule;

/** Without what a rule has nothing to say: it is asked only where a number of one of these signals was read in one of these states. */
export interface Asked {
  readonly of?: readonly RuledSignal[];
  /** The trade's engine states. */
  readonly at?: readonly string[];
}

/** Compares what stands in different cells. */
export interface CaseRule extends Asked {
  readonly code: Code;
  /**
   * The signals whose numbers it looks at, where it looks at nothing else of a case but the header: while all of these
   * stay as they are, so does what it finds, and it is not asked.
   */
  readonly reads?: readonly RuledSignal[];
  readonly check: (ruled: RuledCase) => readonly Finding[];
}

/** Looks at one number at a time, where it is odd in this way. */
export interface ReadingRule {
  readonly code: Code;
  readonly odd: Oddity;
  readonly checkReading: (one: Measured, cell: RuledCell) => Diagnostic | undefined;
}

/** Looks at one moment at a time. */
export interface MomentRule extends Asked {
  readonly code: Code;
  readonly checkMoment: (moment: Moment, cell: RuledCell) => Diagnostic | undefined;
}

/** Looks at one cell at a time. These, like those above, are asked again only when the cell or the header changes. */
export interface CellRule extends Asked {
  readonly code: Code;
  /** The kinds of cells that it looks at, where it is not all. */
  readonly in?: readonly Cell['kind'][];
  readonly checkCell: (cell: RuledCell) => readonly Diagnostic[];
}

export interface RuledCell {
  readonly read: ReadCell;
  readonly header: Header;
  readonly car: Car;
  readonly readings: readonly Reading[];
  /** Those that hold several numbers, by cylinder or by label. */
  readonly sets: readonly Reading[];
  /** The numbers that were measured on the car. */
  readonly measured: readonly Measured[];
  /** The believable ones of them by the moment that they were taken at. */
  readonly moments: readonly Moment[];
}

/** Everything that was measured, moment by moment in the order of the text. */
export interface RuledCase {
  readonly car: Car;
  readonly moments: readonly Moment[];
  /** The cells in which controllers gave codes or the vehicle's number. */
  readonly given: readonly CellFacts[];
  readonly isRepair: (cell: number) => boolean;
  /** A cell as it was read: for fixes in it, and for what stands beside its readings. That another cell reads otherwise asks no rule again. */
  readonly read: (cell: number) => ReadCell | undefined;
  /**
   * What was worked out for one rule and is of use to another, by the function that works it out. It is given
   * what it made of the case before a change, and may take over what still holds.
   */
  readonly once: <T>(make: (ruled: RuledCase, before: T | undefined) => T) => T;
  /** The moments that hold a signal; the very same list as before a change while its members are. */
  readonly holding: (signal: RuledSignal) => readonly Moment[];
  /** The readings of all cells that hold several numbers, by cylinder or by label. */
  readonly sets: () => readonly Reading[];
  /** The moments of one cell: the columns of a table. */
  readonly inCell: (cell: number) => readonly Moment[];
  /** The moments of the same visit and engine state that hold a signal, the moment itself among them. */
  readonly alike: (moment: Moment, signal: RuledSignal) => readonly Moment[];
}

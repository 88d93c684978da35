import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { allSignals, nearestSignals, signalOf } from '../signals/lookup.ts';
import type { Signal } from '../signals/types.ts';
import { nearest } from '../text/nearest.ts';
import { cover, type Span } from '../text/span.ts';
import type { CellFacts, Definition } from './cellFacts.ts';
import type { Reading } from './types.ts';

/** What a dotted name stands for; `used` counts the parts that the name took, the rest are members of its value. */
export type Named =
  | { readonly kind: 'reading'; readonly reading: Reading; readonly used: number }
  | {
      readonly kind: 'states';
      readonly fullName: string;
      readonly readings: ReadonlyMap<string, Reading>;
      readonly used: number;
    }
  | { readonly kind: 'definition'; readonly definition: Definition; readonly used: number }
  | {
      readonly kind: 'not measured';
      readonly signal: Signal;
      readonly fullName: string;
      readonly used: number;
    }
  | { readonly kind: 'problem'; readonly diagnostic: Diagnostic };

/** Every name of a case. */
export interface Names {
  readonly cells: readonly CellFacts[];
  readonly header: ReadonlyMap<string, Reading>;
  readonly ownSignals: ReadonlyMap<string, Signal>;
  /** The cell of each `as`. */
  readonly prefixes: ReadonlyMap<string, CellFacts>;
  /** Where a bare name can come from. */
  readonly bare: ReadonlyMap<string, readonly Candidate[]>;
}

/** One place that a bare name may mean, with the name that says so unmistakably. */
export interface Candidate {
  readonly fullName: string;
  readonly cell: CellFacts;
  readonly definition: Definition | undefined;
}

const sections = ['engine', 'site', 'vehicle'];

export function collectNames(
  cells: readonly CellFacts[],
  header: ReadonlyMap<string, Reading>,
  ownSignals: ReadonlyMap<string, Signal>,
): Names {
  const prefixes = new Map<string, CellFacts>();
  const bare = new Map<string, Candidate[]>();
  const offer = (name: string, candidate: Candidate): void => {
    const list = bare.get(name);
    if (list === undefined) bare.set(name, [candidate]);
    else if (list.every((each) => each.cell !== candidate.cell)) list.push(candidate);
  };
  for (const cell of cells) {
    if (cell.as !== undefined && !prefixes.has(cell.as)) prefixes.set(cell.as, cell);
    if (!cell.open) continue;
    for (const reading of cell.readings) {
      const fullName = cell.as === undefined ? reading.fullName : `${cell.as}.${reading.key}`;
      offer(reading.key, { fullName, cell, definition: undefined });
    }
    if (cell.as === undefined) continue;
    for (const definition of cell.definitions) {
      offer(definition.name, { fullName: definition.id, cell, definition });
    }
  }
  return { cells, header, ownSignals, prefixes, bare };
}

/**
 * Looks a dotted name up from a cell. Own computed names come first (unless a point follows and a cell has that name), then header sections, cells, bare names, signals.
 * `spans` are the places of the parts, for the findings.
 */
export function lookUp(names: Names, from: number, path: readonly string[], spans: readonly Span[]): Named {
  const first = path[0] ?? '';
  const own = names.cells[from]?.definitions.find((each) => each.name === first);
  const before = path.length > 1 && names.prefixes.has(first);
  if (own !== undefined && !before) return { kind: 'definition', definition: own, used: 1 };
  if (sections.includes(first)) return inHeader(names, path, spans);
  const cell = names.prefixes.get(first);
  if (cell !== undefined) return inCell(names, cell, path, spans);
  return bareName(names, path, spans);
}

function inHeader(names: Names, path: readonly string[], spans: readonly Span[]): Named {
  const section = path[0] ?? '';
  const keys = [...names.header.keys()].filter((key) => key.startsWith(`${section}.`));
  const member = path[1];
  if (member === undefined) return wholeCell(section, keys.map(lastPart), spans, 1);
  const reading = names.header.get(`${section}.${member}`);
  if (reading !== undefined) return { kind: 'reading', reading, used: 2 };
  return noMember(section, member, keys.map(lastPart), spans, 1);
}

function inCell(names: Names, cell: CellFacts, path: readonly string[], spans: readonly Span[]): Named {
  const as = path[0] ?? '';
  const has = membersOf(cell);
  const second = path[1];
  if (second === undefined) return wholeCell(as, has, spans, 1);
  const definition = cell.definitions.find((each) => each.name === second);
  if (definition !== undefined) return { kind: 'definition', definition, used: 2 };
  if (cell.states.has(second)) {
    const inState = cell.readings.filter((each) => each.fullName.startsWith(`${as}.${second}.`));
    const third = path[2];
    if (third === undefined)
      return wholeCell(
        `${as}.${second}`,
        inState.map((each) => each.key),
        spans,
        2,
      );
    const reading = inState.find((each) => each.key === third);
    if (reading !== undefined) return { kind: 'reading', reading, used: 3 };
    return notHeld(
      names,
      cell,
      `${as}.${second}`,
      third,
      inState.map((each) => each.key),
      spans,
      2,
    );
  }
  const readings = cell.readings.filter((each) => each.key === second);
  return taken(as, second, cell, readings, 2) ?? notHeld(names, cell, as, second, has, spans, 1);
}

function bareName(names: Names, path: readonly string[], spans: readonly Span[]): Named {
  const name = path[0] ?? '';
  const candidates = names.bare.get(name) ?? [];
  const only = candidates[0];
  if (only !== undefined && candidates.length === 1) {
    if (only.definition !== undefined) return { kind: 'definition', definition: only.definition, used: 1 };
    const readings = only.cell.readings.filter((each) => each.key === name);
    const found = taken(only.cell.as, name, only.cell, readings, 1);
    if (found !== undefined) return found;
  }
  if (candidates.length > 1) {
    const list = candidates.map((each) => each.fullName);
    return problem(diagnose('ambiguous-name', spans[0] ?? { start: 0, end: 0 }, { name, candidates: list }));
  }
  const signal = names.ownSignals.get(name) ?? signalOf(name);
  if (signal !== undefined) return { kind: 'not measured', signal, fullName: name, used: 1 };
  const close = nearest(name, knownNames(names));
  const offers = close.length > 0 ? close : nearestSignals(name);
  const at = spans[0] ?? { start: 0, end: 0 };
  const fixes = offers.map((offer) => ({
    title: `Write \`${offer}\``,
    edits: [{ span: at, newText: offer }],
  }));
  return problem(diagnose('unknown-name', at, { name, nearest: offers }, fixes));
}

/** The value of a key in a cell: the reading itself, or all of them by state. */
function taken(
  prefix: string | undefined,
  key: string,
  cell: CellFacts,
  readings: readonly Reading[],
  used: number,
): Named | undefined {
  const first = readings[0];
  if (first === undefined) return undefined;
  if (cell.states.size === 0) return { kind: 'reading', reading: first, used };
  const byState = new Map<string, Reading>();
  const names = [...cell.states.keys()];
  for (const reading of readings) {
    const state = names.find((name) => reading.fullName.endsWith(`${name}.${key}`));
    if (state !== undefined) byState.set(state, reading);
  }
  const fullName = prefix === undefined ? key : `${prefix}.${key}`;
  return { kind: 'states', fullName, readings: byState, used };
}

function notHeld(
  names: Names,
  cell: CellFacts,
  of: string,
  member: string,
  has: readonly string[],
  spans: readonly Span[],
  at: number,
): Named {
  const signal = names.ownSignals.get(member) ?? signalOf(member);
  if (signal !== undefined && cell.answersForSignals) {
    return { kind: 'not measured', signal, fullName: `${of}.${member}`, used: at + 1 };
  }
  return noMember(of, member, has, spans, at);
}

function noMember(
  of: string,
  member: string,
  has: readonly string[],
  spans: readonly Span[],
  at: number,
): Named {
  const span = spans[at] ?? spans[0] ?? { start: 0, end: 0 };
  const close = nearest(member, has);
  const offers =
    close.length > 0
      ? close
      : nearest(
          member,
          allSignals().map((each) => each.name),
        );
  const fixes = offers.map((offer) => ({ title: `Write \`${offer}\``, edits: [{ span, newText: offer }] }));
  return problem(diagnose('unknown-member', span, { of, member, nearest: offers, has }, fixes));
}

function wholeCell(name: string, has: readonly string[], spans: readonly Span[], parts: number): Named {
  const first = spans[0] ?? { start: 0, end: 0 };
  const last = spans[parts - 1] ?? first;
  return problem(diagnose('not-a-value', cover(first, last), { name, has }));
}

function membersOf(cell: CellFacts): string[] {
  const members = new Set<string>(cell.states.keys());
  for (const reading of cell.readings) members.add(reading.key);
  for (const definition of cell.definitions) members.add(definition.name);
  return [...members];
}

/** Every name that could be meant, for the nearest one and for completion. */
export function knownNames(names: Names): Set<string> {
  return new Set([...names.prefixes.keys(), ...names.bare.keys(), ...names.header.keys()]);
}

const lastPart = (name: string): string => name.slice(name.lastIndexOf('.') + 1);

const problem = (diagnostic: Diagnostic): Named => ({ kind: 'problem', diagnostic });

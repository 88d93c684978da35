import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import type { Absent } from '../expression/value.ts';
import { allSignals, nearestSignals, signalOf } from '../signals/lookup.ts';
import type { Signal } from '../signals/types.ts';
import { alikeIn, nearest, type SortedWords, sortedWords } from '../text/nearest.ts';
import { cover, type Span } from '../text/span.ts';
import type { CellFacts, Definition } from './cellFacts.ts';
import { definedIn, indexOf, membersIn, sortedOnce } from './cellIndex.ts';
import type { Header } from './header.ts';
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
  /** The number of the cell of each `as`: it stays the same while the cell's values change. */
  readonly prefixes: ReadonlyMap<string, number>;
  /** Where a bare name can come from. */
  readonly bare: ReadonlyMap<string, readonly Candidate[]>;
}

/** One place that a bare name may mean, with the name that says so unmistakably. */
export interface Candidate {
  readonly fullName: string;
  readonly cell: number;
  readonly is: 'reading' | 'definition';
}

const sections = ['engine', 'site', 'vehicle'];

export function collectNames(
  cells: readonly CellFacts[],
  header: ReadonlyMap<string, Reading>,
  ownSignals: ReadonlyMap<string, Signal>,
): Names {
  const prefixes = new Map<string, number>();
  const bare = new Map<string, Candidate[]>();
  const offer = (name: string, candidate: Candidate): void => {
    const list = bare.get(name);
    if (list === undefined) bare.set(name, [candidate]);
    else if (list.every((each) => each.cell !== candidate.cell)) list.push(candidate);
  };
  for (const cell of cells) {
    if (cell.as !== undefined && !prefixes.has(cell.as)) prefixes.set(cell.as, cell.cell);
    if (!cell.open) continue;
    for (const reading of cell.readings) {
      const fullName = cell.as === undefined ? reading.fullName : `${cell.as}.${reading.key}`;
      offer(reading.key, { fullName, cell: cell.cell, is: 'reading' });
    }
    if (cell.as === undefined) continue;
    for (const definition of cell.definitions) {
      offer(definition.name, { fullName: definition.id, cell: cell.cell, is: 'definition' });
    }
  }
  return { cells, header, ownSignals, prefixes, bare };
}

/** The cell that has this `as`. */
export function cellNamed(names: Names, as: string): CellFacts | undefined {
  const cell = names.prefixes.get(as);
  return cell === undefined ? undefined : names.cells[cell];
}

/** The same names after cells changed in which every name is still what it was. */
export function namesWith(
  names: Names,
  header: Pick<Header, 'values' | 'ownSignals'>,
  cells: readonly CellFacts[],
): Names {
  const { prefixes, bare } = names;
  return { cells, header: header.values, ownSignals: header.ownSignals, prefixes, bare };
}

/**
 * Looks a dotted name up from a cell. Own computed names come first (unless a point follows and a cell has that name),
 * then header sections, cells, bare names, signals.
 * `spans` are the places of the parts, for the findings.
 */
export function lookUp(names: Names, from: number, path: readonly string[], spans: readonly Span[]): Named {
  const first = path[0] ?? '';
  const own = definedIn(names.cells[from], first);
  const before = path.length > 1 && names.prefixes.has(first);
  if (own !== undefined && !before) return { kind: 'definition', definition: own, used: 1 };
  if (sections.includes(first)) return inHeader(names, path, spans);
  const cell = cellNamed(names, first);
  if (cell !== undefined) return inCell(names, cell, path, spans);
  return bareName(names, from, path, spans);
}

function inHeader(names: Names, path: readonly string[], spans: readonly Span[]): Named {
  const header = names.cells[0];
  if (header?.unread) return inUnread(header, path);
  const section = path[0] ?? '';
  const member = path[1];
  const reading = member === undefined ? undefined : names.header.get(`${section}.${member}`);
  if (reading !== undefined) return { kind: 'reading', reading, used: 2 };
  const keys = [...names.header.keys()].filter((key) => key.startsWith(`${section}.`)).map(lastPart);
  return member === undefined
    ? wholeCell(section, keys, spans, 1)
    : noMember(section, member, keys, spans, 1, false);
}

function inCell(names: Names, cell: CellFacts, path: readonly string[], spans: readonly Span[]): Named {
  if (cell.unread) return inUnread(cell, path);
  const [as = '', second, third] = path;
  if (second === undefined) return wholeCell(as, membersIn(cell), spans, 1);
  const definition = definedIn(cell, second);
  if (definition !== undefined) return { kind: 'definition', definition, used: 2 };
  const { readings } = indexOf(cell);
  if (cell.states.has(second)) {
    const reading = third === undefined ? undefined : readings.get(third)?.get(second);
    if (reading !== undefined) return { kind: 'reading', reading, used: 3 };
    const group = `${as}.${second}`;
    return third === undefined
      ? wholeCell(group, membersIn(cell, second), spans, 2)
      : notHeld(names, cell, group, third, membersIn(cell, second), spans, 2);
  }
  const found = taken(as, second, readings.get(second), 2);
  return found ?? notHeld(names, cell, as, second, membersIn(cell), spans, 1);
}

/** Whatever is asked of a cell that could not be read: it may well be there. */
function inUnread(cell: CellFacts, path: readonly string[]): Named {
  const nowhere = { start: 0, end: 0 };
  const reading: Reading = {
    fullName: path.join('.'),
    key: path[path.length - 1] ?? '',
    from: 'readings',
    cell: cell.cell,
    when: 'before',
    state: undefined,
    column: undefined,
    signal: undefined,
    form: undefined,
    type: { kind: 'unknown' },
    value: unreadValue,
    keySpan: nowhere,
    valueSpan: nowhere,
    tool: undefined,
    at: undefined,
    saw: undefined,
  };
  return { kind: 'reading', reading, used: path.length };
}

/** What stands for a value in a cell that could not be read. */
export const unreadValue: Absent = {
  kind: 'absent',
  status: 'cannot compute',
  why: 'its cell could not be read',
};

function bareName(names: Names, from: number, path: readonly string[], spans: readonly Span[]): Named {
  const name = path[0] ?? '';
  const candidates = names.bare.get(name) ?? [];
  const only = candidates.length === 1 ? candidates[0] : undefined;
  const cell = only === undefined ? undefined : names.cells[only.cell];
  if (only !== undefined && cell !== undefined) {
    const found = only.is === 'definition' ? definitionIn(cell, name) : readingIn(cell, name);
    if (found !== undefined) return found;
  }
  if (candidates.length > 1) {
    const list = candidates.map((each) => unmistakably(each, names));
    return problem(diagnose('ambiguous-name', spans[0] ?? { start: 0, end: 0 }, { name, candidates: list }));
  }
  const signal = names.ownSignals.get(name) ?? signalOf(name);
  if (signal !== undefined) return { kind: 'not measured', signal, fullName: name, used: 1 };
  const near = knownNames(names, from).flatMap((list) => alikeIn(list, name));
  const close = nearest(name, new Set(near)).filter(canBeWritten);
  const offers = close.length > 0 ? close : nearestSignals(name);
  const at = spans[0] ?? { start: 0, end: 0 };
  const fixes = offers.map((offer) => ({
    title: `Write \`${offer}\``,
    edits: [{ span: at, newText: offer }],
  }));
  return problem(diagnose('unknown-name', at, { name, nearest: offers }, fixes));
}

/** A cell without a name must get one before its values can be told from another's. */
function unmistakably({ fullName, cell }: Candidate, { cells }: Names): string {
  if (cells[cell]?.as !== undefined) return fullName;
  return `${fullName} of cell ${cell + 1} (which needs an \`as\`)`;
}

function definitionIn(cell: CellFacts, name: string): Named | undefined {
  const definition = definedIn(cell, name);
  return definition === undefined ? undefined : { kind: 'definition', definition, used: 1 };
}

function readingIn(cell: CellFacts, key: string): Named | undefined {
  return taken(cell.as, key, indexOf(cell).readings.get(key), 1);
}

/** The value of a key in a cell: the reading itself, or all of them by state. */
function taken(
  prefix: string | undefined,
  key: string,
  byState: ReadonlyMap<string, Reading> | undefined,
  used: number,
): Named | undefined {
  if (byState === undefined) return undefined;
  const reading = byState.get('');
  if (reading !== undefined) return { kind: 'reading', reading, used };
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
  return noMember(of, member, has, spans, at, cell.answersForSignals);
}

function noMember(
  of: string,
  member: string,
  has: readonly string[],
  spans: readonly Span[],
  at: number,
  anySignal: boolean,
): Named {
  const span = spans[at] ?? spans[0] ?? { start: 0, end: 0 };
  const near = alikeIn(sortedOnce(has), member);
  const close = nearest(member, new Set(near)).filter((name) => name !== member && canBeWritten(name));
  const offers =
    close.length > 0 || !anySignal
      ? close
      : nearest(
          member,
          allSignals().map((each) => each.name),
        );
  const fixes = offers.map((offer) => ({ title: `Write \`${offer}\``, edits: [{ span, newText: offer }] }));
  const known = !anySignal && signalOf(member) !== undefined;
  return problem(diagnose('unknown-member', span, { of, member, nearest: offers, has, known }, fixes));
}

function wholeCell(name: string, has: readonly string[], spans: readonly Span[], parts: number): Named {
  const first = spans[0] ?? { start: 0, end: 0 };
  const last = spans[parts - 1] ?? first;
  return problem(diagnose('not-a-value', cover(first, last), { name, has }));
}

/**
 * Every name that could be meant in a cell, in two lists: its own computed names, and those of the whole case.
 * A cell of many slips asks for the same names at each, and so do many cells.
 */
function knownNames(names: Names, from: number): readonly SortedWords[] {
  let ofCase = namesKnown.get(names);
  if (ofCase === undefined) {
    ofCase = sortedWords([...names.prefixes.keys(), ...names.bare.keys(), ...names.header.keys()]);
    namesKnown.set(names, ofCase);
  }
  const cell = names.cells[from];
  return cell === undefined ? [ofCase] : [sortedOnce(indexOf(cell).defined), ofCase];
}

const namesKnown = new WeakMap<Names, SortedWords>();

/** A name with a slip of its own is reported where it stands, and offered nowhere. */
const canBeWritten = (name: string): boolean => /^[\p{L}_][\p{L}\p{M}\p{N}_.]*$/u.test(name);

const lastPart = (name: string): string => name.slice(name.lastIndexOf('.') + 1);

const problem = (diagnostic: Diagnostic): Named => ({ kind: 'problem', diagnostic });

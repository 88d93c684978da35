import type { Named, StateNode } from '../../casefile/cell.ts';
import { notTaken, readTable } from '../../casefile/table.ts';
import type { MapNode, TextNode } from '../../casefile/tree.ts';
import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { Absent } from '../../expression/value.ts';
import type { QuantityType } from '../../quantity/types.ts';
import { nearest } from '../../text/nearest.ts';
import { cover } from '../../text/span.ts';
import { readUnit } from '../readUnit.ts';
import { takenAt } from '../takenAt.ts';
import type { Reading } from '../types.ts';
import { type Circumstances, type Collected, readEntry } from './values.ts';

/** A column of values: the state that they were taken in, a cylinder, or just "value". */
interface Column {
  readonly heading: TextNode;
  readonly around: Circumstances;
}

/**
 * Reads a `table:` of values: a row a signal, a column a state, the unit in a column of its own.
 * In a cell of one state the columns may be cylinders instead.
 */
export function readTableValues(
  node: TextNode,
  states: readonly Named<StateNode>[],
  around: Circumstances,
): Collected {
  const { value: table, diagnostics } = readTable(node);
  if (table === undefined) return { readings: [], diagnostics };
  const found: Diagnostic[] = [...diagnostics];
  const headings = table.headings.slice(1);
  const unitAt = headings.findIndex((each) => each.text === 'unit');
  const valueHeadings = headings.filter((_, i) => i !== unitAt);
  const cylinders = states.length === 0 && valueHeadings.every((each) => /^[1-9][0-9]?$/.test(each.text));
  const unsaid = states.length === 0 && !cylinders && valueHeadings.length > 1;
  const columns = headings.map((heading, i) =>
    i === unitAt ? undefined : columnOf(heading, states, around),
  );
  const stray = cylinders ? [] : strayColumns(valueHeadings, states);
  // A column under another name explains the state that is missing.
  found.push(...(stray.length > 0 ? stray : statesWithoutColumn(headings, states)));
  const readings: Reading[] = [];
  const add = (entry: ReadEntry, reported: Set<string>): void => {
    readings.push(entry.reading);
    for (const each of entry.diagnostics) {
      const key = `${each.code} ${each.span.start}`;
      if (!reported.has(key)) found.push(each);
      reported.add(key);
    }
  };
  for (const { name, values } of table.rows) {
    const unit = unitAt < 0 ? undefined : checkedUnit(values[unitAt], found);
    if (unit === 'unknown') continue;
    const written = values.map((value) => withUnit(value, unit));
    const reported = new Set<string>();
    if (cylinders) {
      add(readEntry(name, byCylinder(headings, written, unitAt), around), reported);
      continue;
    }
    const first = written.find((_, i) => i !== unitAt);
    if (unsaid && first !== undefined) {
      readings.push({ ...readEntry(name, first, around).reading, value: columnUnsaid });
      continue;
    }
    let sort: QuantityType | undefined;
    written.forEach((value, i) => {
      const column = columns[i];
      if (column === undefined) return;
      const entry = readEntry(name, value, column.around);
      const read = entry.reading.value;
      if (read.kind === 'one') sort ??= read.type;
      add(
        read.kind === 'one' && sort !== undefined ? ofOneSort(entry, read.type, sort, value) : entry,
        reported,
      );
    });
  }
  return { readings, diagnostics: found };
}

type ReadEntry = ReturnType<typeof readEntry>;

/** A row is one thing at several states: mass flow beside volts is told at the second, and has no value. */
function ofOneSort(entry: ReadEntry, type: QuantityType, sort: QuantityType, value: TextNode): ReadEntry {
  if (type.dimension === sort.dimension && type.kind === sort.kind) return entry;
  const takes = 'the same sort of value as the rest of its row';
  const facts = { name: entry.reading.key, got: `\`${value.text}\``, takes };
  return {
    reading: { ...entry.reading, value: otherSort },
    diagnostics: [...entry.diagnostics, diagnose('wrong-value-shape', value.span, facts)],
  };
}

const otherSort: Absent = {
  kind: 'absent',
  status: 'cannot compute',
  why: 'it is of another sort than the rest of its row',
};

const columnUnsaid: Absent = {
  kind: 'absent',
  status: 'cannot compute',
  why: 'its table does not say what its columns are',
};

/** The values of a row as the map that an author would write: {1: 181 psi, 2: 178 psi}. */
function byCylinder(headings: readonly TextNode[], values: readonly TextNode[], unitAt: number): MapNode {
  const entries = headings.flatMap((key, i) => {
    const value = values[i];
    return i === unitAt || value === undefined ? [] : [{ key, value }];
  });
  const first = entries[0]?.value.span ?? { start: 0, end: 0 };
  const last = entries[entries.length - 1]?.value.span ?? first;
  return { kind: 'map', entries, flow: false, span: cover(first, last) };
}

function columnOf(
  heading: TextNode,
  states: readonly Named<StateNode>[],
  around: Circumstances,
): Column | undefined {
  if (states.length === 0) return { heading, around };
  const state = states.find((each) => each.key.text === heading.text);
  if (state === undefined) return undefined;
  const prefix = around.prefix === undefined ? heading.text : `${around.prefix}.${heading.text}`;
  return { heading, around: { ...around, prefix, state: takenAt(state.value), column: heading.text } };
}

/** Columns of which nobody says in what state their values were taken. */
function strayColumns(
  headings: readonly TextNode[],
  states: readonly Named<StateNode>[],
): readonly Diagnostic[] {
  const names = states.map((each) => each.key.text);
  const [first, second] = headings;
  if (states.length === 0) {
    if (first === undefined || second === undefined) return [];
    const columns = headings.map((each) => each.text);
    return [diagnose('columns-without-states', cover(first.span, second.span), { columns })];
  }
  return headings
    .filter((each) => !names.includes(each.text))
    .map((heading) => {
      const close = nearest(heading.text, names);
      const fixes = close.map((name) => ({
        title: `Write \`${name}\``,
        edits: [{ span: heading.span, newText: name }],
      }));
      const facts = { state: heading.text, states: names, nearest: close };
      return diagnose('unknown-state-column', heading.span, facts, fixes);
    });
}

function statesWithoutColumn(
  headings: readonly TextNode[],
  states: readonly Named<StateNode>[],
): readonly Diagnostic[] {
  return states
    .filter(({ key }) => headings.every((each) => each.text !== key.text))
    .map(({ key }) => diagnose('state-without-column', key.span, { state: key.text }));
}

/** How a unit column says that a number has none. */
const noUnit: ReadonlySet<string> = new Set([notTaken, '', '1']);

/** The unit of a row; nothing where the column says `-`. An unknown one is reported once for its row. */
function checkedUnit(node: TextNode | undefined, found: Diagnostic[]): TextNode | undefined | 'unknown' {
  if (node === undefined || noUnit.has(node.text)) return undefined;
  const { value, diagnostics } = readUnit(node);
  found.push(...diagnostics);
  return value === undefined ? 'unknown' : node;
}

/**
 * A number and the unit of its row as one text, unless the number has a unit already: `at least 5 ± 2 %` in a row of V
 * is `at least 5 V ± 2 %`. Findings are placed at the number.
 */
function withUnit(value: TextNode, unit: TextNode | undefined): TextNode {
  if (value.text === notTaken) return { ...value, text: 'not taken' };
  const [share = ''] = /\s*(?:±|\+\/-)\s*[\d.]+\s*%$/.exec(value.text) ?? [];
  const number = value.text.slice(0, value.text.length - share.length);
  if (unit === undefined || hasUnit(number)) return value;
  return { ...value, text: `${number} ${unit.text}${share}` };
}

/** A pattern of all letters takes long to build: it is asked last. */
function hasUnit(number: string): boolean {
  if (/^[-+.\d]+$/.test(number)) return false;
  const rest = number.replace(/^at (?:least|most)(?=\s)/, '');
  return /[A-Za-z°%]/.test(rest) || /\p{L}/u.test(rest);
}

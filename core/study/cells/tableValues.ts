import type { Named, StateNode } from '../../casefile/cell.ts';
import { notTaken, readTable } from '../../casefile/table.ts';
import type { TextNode } from '../../casefile/tree.ts';
import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { parseQuantity } from '../../quantity/parse.ts';
import { unitOf } from '../../quantity/unit.ts';
import { nearest } from '../../text/nearest.ts';
import { placedIn } from '../placed.ts';
import { takenAt } from '../takenAt.ts';
import type { Reading } from '../types.ts';
import { type Circumstances, type Collected, readEntry } from './values.ts';

/** A column of a table: the state that its values were taken in, or just "value". */
interface Column {
  readonly heading: TextNode;
  readonly around: Circumstances;
}

/** Reads a `table:` of values: a row a signal, a column a state, the unit in a column of its own. */
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
  const columns = headings.map((heading, i) =>
    i === unitAt ? undefined : columnOf(heading, states, around, found),
  );
  const readings: Reading[] = [];
  for (const { name, values } of table.rows) {
    const unit = unitAt < 0 ? undefined : checkedUnit(values[unitAt], found);
    const reported = new Set<string>();
    values.forEach((value, i) => {
      const column = columns[i];
      if (column === undefined || unit === 'unknown') return;
      const { reading, diagnostics: about } = readEntry(name, withUnit(value, unit), column.around);
      readings.push(reading);
      for (const each of about) {
        const key = `${each.code} ${each.span.start}`;
        if (!reported.has(key)) found.push(each);
        reported.add(key);
      }
    });
  }
  return { readings, diagnostics: found };
}

function columnOf(
  heading: TextNode,
  states: readonly Named<StateNode>[],
  around: Circumstances,
  found: Diagnostic[],
): Column | undefined {
  const state = states.find((each) => each.key.text === heading.text);
  if (state !== undefined) {
    const prefix = around.prefix === undefined ? heading.text : `${around.prefix}.${heading.text}`;
    return { heading, around: { ...around, prefix, state: takenAt(state.value), column: heading.text } };
  }
  if (states.length === 0) return { heading, around };
  const names = states.map((each) => each.key.text);
  const close = nearest(heading.text, names);
  const fixes = close.map((name) => ({
    title: `Write \`${name}\``,
    edits: [{ span: heading.span, newText: name }],
  }));
  const facts = { state: heading.text, states: names, nearest: close };
  found.push(diagnose('unknown-state-column', heading.span, facts, fixes));
  return undefined;
}

/** How a unit column says that a number has none. */
const noUnit: ReadonlySet<string> = new Set([notTaken, '', '1']);

/** The unit of a row; nothing where the column says `-`. An unknown one is reported once for its row. */
function checkedUnit(node: TextNode | undefined, found: Diagnostic[]): TextNode | undefined | 'unknown' {
  if (node === undefined || noUnit.has(node.text)) return undefined;
  const words = node.text.split(/\s+/);
  if (unitOf(words[0] ?? '') !== undefined) return node;
  const asWritten: TextNode = { ...node, text: `1 ${node.text}`, map: [[2, node.span.start]] };
  found.push(...placedIn(asWritten, parseQuantity(asWritten.text).diagnostics));
  return 'unknown';
}

/** A number and the unit of its row as one text; findings are placed at the number. */
function withUnit(value: TextNode, unit: TextNode | undefined): TextNode {
  if (value.text === notTaken) return { ...value, text: 'not taken' };
  if (unit === undefined || /[A-Za-z°µΩ%]/.test(value.text)) return value;
  return { ...value, text: `${value.text} ${unit.text}` };
}

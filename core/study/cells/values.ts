import type { CellOf } from '../../casefile/cell.ts';
import type { Entry, Node, TextNode } from '../../casefile/tree.ts';
import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { nearestSignals, signalOf } from '../../signals/lookup.ts';
import type { Signal } from '../../signals/types.ts';
import { nearest } from '../../text/nearest.ts';
import { type Header, noHeader } from '../header.ts';
import { type Place, readValue } from '../readValue.ts';
import { takenAt, whenOf } from '../takenAt.ts';
import { findTool } from '../tools.ts';
import type { Reading, TakenAt, When } from '../types.ts';

/** What the values of one cell have in common. */
export interface Circumstances {
  readonly from: Reading['from'];
  readonly cell: number;
  readonly when: When;
  readonly state: TakenAt | undefined;
  /** The name of the table's column, where a cell has several states. */
  readonly column?: string;
  readonly tool: TextNode | undefined;
  /** `koeo`, `before.idle`: what the full names start with; undefined for a cell without a name. */
  readonly prefix: string | undefined;
  readonly header: Header;
}

export interface Collected {
  readonly readings: readonly Reading[];
  readonly diagnostics: readonly Diagnostic[];
  /** What there would be is not known: a capture that names no channels, and whose file cannot be read. */
  readonly isUnknown?: boolean;
  /** How a capture's file was read, in words. */
  readonly readAs?: readonly string[];
  /** The columns that a capture's file or its rows have, by their headings. */
  readonly headings?: readonly string[];
}

/** The circumstances of a readings, reference, capture or picture cell. */
export function circumstancesOf(
  cell: Partial<Pick<CellOf<'readings'>, 'as' | 'when' | 'state' | 'tool'>>,
  from: Reading['from'],
  index: number,
  header: Header,
): Circumstances {
  return {
    from,
    cell: index,
    when: whenOf(cell.when),
    state: takenAt(cell.state),
    tool: cell.tool,
    prefix: cell.as?.text,
    header,
  };
}

/** Reads `values:` (or a picture's `marks:`): a signal's name and what was measured, an entry each. */
export function readValues(entries: readonly Entry[], around: Circumstances): Collected {
  const readings: Reading[] = [];
  const diagnostics: Diagnostic[] = [];
  const seen = new Set<string>();
  for (const { key, value } of entries) {
    if (seen.has(key.text)) continue;
    seen.add(key.text);
    const read = readEntry(key, value, around);
    readings.push(read.reading);
    diagnostics.push(...read.diagnostics);
  }
  return { readings, diagnostics };
}

/** One value with its name: the signal is looked up, the value read, the instrument found. */
export function readEntry(
  key: TextNode,
  node: Node,
  around: Circumstances,
): { readonly reading: Reading; readonly diagnostics: readonly Diagnostic[] } {
  const { header } = around;
  const name = key.text;
  const signal = header.ownSignals.get(name) ?? signalOf(name);
  const diagnostics: Diagnostic[] = [];
  const reference = around.from === 'reference';
  if (signal === undefined && !reference && around.from !== 'picture')
    diagnostics.push(unknownSignal(key, header));
  const fullName = around.prefix === undefined ? name : `${around.prefix}.${name}`;
  const place: Place = {
    source: around.prefix === undefined ? `${around.cell + 1}.${around.column ?? ''}.${name}` : fullName,
    key: name,
    signal,
    reference,
    cylinders: header.cylinders,
    accuracy: (tool) => {
      const found = findTool(header.tools, tool ?? around.tool);
      if (tool !== undefined) diagnostics.push(...found.diagnostics);
      return found.accuracy;
    },
  };
  const read = readValue(node, place);
  diagnostics.push(...read.diagnostics);
  const reading: Reading = {
    fullName,
    key: name,
    from: around.from,
    cell: around.cell,
    when: around.when,
    state: around.state,
    column: around.column,
    signal,
    form: read.form,
    type: read.type,
    value: read.value,
    keySpan: key.span,
    valueSpan: read.span,
    tool: read.tool ?? around.tool?.text,
    at: read.at,
    saw: read.saw,
  };
  return { reading, diagnostics };
}

export function unknownSignal(key: TextNode, header: Header): Diagnostic {
  const name = key.text;
  // What the header declares is not known then, and an offer would only mislead.
  if (header.ownSignals === noHeader.ownSignals)
    return diagnose('unknown-signal', key.span, { name, nearest: [], header: 'not read' });
  const own = nearest(name, header.ownSignals.keys());
  const offers: readonly string[] = [...own, ...nearestSignals(name)].slice(0, 3);
  const fixes = offers.map((offer) => ({
    title: `Write \`${offer}\``,
    edits: [{ span: key.span, newText: offer }],
  }));
  return diagnose('unknown-signal', key.span, { name, nearest: offers }, fixes);
}

/** True for a signal of the vocabulary or of the case. */
export function isSignal(name: string, header: Header): Signal | undefined {
  return header.ownSignals.get(name) ?? signalOf(name);
}

import type { HeaderCell } from '../casefile/cell.ts';
import { type Keys, propertyOf } from '../casefile/kinds/key.ts';
import { kinds } from '../casefile/kinds/kinds.ts';
import type { TextNode } from '../casefile/tree.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Signal } from '../signals/types.ts';
import { headerName, headerSignal } from './headerTable.ts';
import { readOwnSignals } from './ownSignals.ts';
import { readValue } from './readValue.ts';
import { noTools, readTools, type Tools } from './tools.ts';
import type { Reading } from './types.ts';

/** What the case's header says, ready for the cells that need it. */
export interface Header {
  readonly title: string;
  /** `engine.displacement`, `site.altitude` …: values that expressions can use. */
  readonly values: ReadonlyMap<string, Reading>;
  readonly tools: Tools;
  readonly ownSignals: ReadonlyMap<string, Signal>;
  readonly cylinders: number | undefined;
  readonly diagnostics: readonly Diagnostic[];
}

export const noHeader: Header = {
  title: '',
  values: new Map(),
  tools: noTools,
  ownSignals: new Map(),
  cylinders: undefined,
  diagnostics: [],
};

export const sections = ['vehicle', 'engine', 'site'] as const;

/** What other cells see of the header, as it is written: while that stays the same, what they bring does, too. */
export function headerBasis({ node }: HeaderCell, text: string): string {
  const seen: readonly string[] = [...sections, 'tools', 'signals'];
  return node.entries
    .filter((each) => seen.includes(each.key.text))
    .map(({ key, value }) => text.slice(key.span.start, value.span.end))
    .join('\n');
}

/** Whether cells see the same in both; places and the title may differ. */
export function seenTheSame(a: Header, b: Header): boolean {
  return a === b || (a.tools === b.tools && a.ownSignals === b.ownSignals);
}

export function readHeader(cell: HeaderCell, index: number): Header {
  const values = new Map<string, Reading>();
  const diagnostics: Diagnostic[] = [];
  for (const section of sections) {
    const fields = cell[section] as unknown as Readonly<Record<string, TextNode | undefined>> | undefined;
    if (fields === undefined) continue;
    for (const place of placesIn(section)) {
      const node = fields[place.property];
      if (node === undefined) continue;
      const { reading, diagnostics: found } = headerValue(place, node, index);
      values.set(place.fullName, reading);
      diagnostics.push(...found);
    }
  }
  const own = readOwnSignals(cell);
  const tools = readTools(cell.tools);
  const cylinders = values.get('engine.cylinders')?.value;
  return {
    title: cell.case?.text.trim() ?? '',
    values,
    tools,
    ownSignals: own.signals,
    cylinders: cylinders?.kind === 'one' ? cylinders.amount.si : undefined,
    diagnostics: [...diagnostics, ...tools.diagnostics, ...own.diagnostics],
  };
}

/** A value that a section of the header may hold: of those that are numbers, as a row of the vocabulary. */
interface Place {
  readonly key: string;
  readonly property: string;
  readonly fullName: string;
  readonly signal: Signal | undefined;
}

/** Put together once: names and rows stay the same, whatever a header says. */
function placesIn(section: (typeof sections)[number]): readonly Place[] {
  let here = places.get(section);
  if (here === undefined) {
    const keys: Keys = kinds.diag.keys[section].holds.keys;
    here = Object.entries(keys).map(([key, row]) => ({
      key,
      property: propertyOf(key, row),
      fullName: headerName(section, key),
      signal: row.holds === 'quantity' ? headerSignal(section, key, row.meaning) : undefined,
    }));
    places.set(section, here);
  }
  return here;
}

const places = new Map<string, readonly Place[]>();

function headerValue(
  { key, fullName, signal }: Place,
  node: TextNode,
  cell: number,
): { readonly reading: Reading; readonly diagnostics: readonly Diagnostic[] } {
  const base = {
    fullName,
    key: fullName,
    from: 'header',
    cell,
    when: 'before',
    state: undefined,
    column: undefined,
    signal: undefined,
    form: undefined,
    keySpan: node.span,
    valueSpan: node.span,
    tool: undefined,
    at: undefined,
    saw: undefined,
  } as const;
  if (signal === undefined) {
    const value = { kind: 'words', text: node.text.trim() } as const;
    return { reading: { ...base, type: { kind: 'words' }, value }, diagnostics: [] };
  }
  const read = readValue(node, {
    source: fullName,
    key,
    signal,
    reference: false,
    cylinders: undefined,
    accuracy: () => undefined,
  });
  return { reading: { ...base, type: read.type, value: read.value }, diagnostics: read.diagnostics };
}

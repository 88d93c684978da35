import type { Holds, Key, Keys } from '../casefile/kinds/key.ts';
import { kindOf } from '../casefile/kinds/kinds.ts';
import { notTaken, readTable } from '../casefile/table.ts';
import { entryOf, type MapNode, type Node, type TextNode } from '../casefile/tree.ts';
import type { Span } from '../text/span.ts';
import type { Standing } from './standing.ts';

/** A text of a cell with what it is there. */
export interface Spot {
  readonly role: Role;
  readonly node: TextNode;
  /** The keys above it and its own, from the cell's kind on; items of lists add nothing. */
  readonly path: readonly string[];
  /** For a key and for what a key holds: the key's row. */
  readonly key: Key | undefined;
  /** The key that it is a value of, or that it is a value under: `map` for the `tool` of `map: {value: …, tool: …}`. */
  readonly under: TextNode | undefined;
  /** Of a key: all of its value. */
  readonly value: Node | undefined;
  /** The column of a table that a value stands in, when it is headed by a state's name. */
  readonly column: string | undefined;
}

export type Role =
  | 'kind'
  | 'title'
  | 'key'
  | 'unknown key'
  /** Names that are defined here. */
  | 'as'
  | 'let'
  | 'column'
  | 'tool name'
  | 'own signal'
  | 'channel'
  /** A cylinder or a label. */
  | 'member'
  /** A key of `values`, a row's name. */
  | 'signal'
  | 'heading'
  /** What stands behind a signal. */
  | 'reading'
  | 'quantity'
  | 'expression'
  | 'state'
  | 'word'
  /** Names that are used. */
  | 'tool'
  | 'signal name'
  | 'unit'
  | 'file'
  | 'sentence'
  | 'markdown'
  | 'text';

const known = new WeakMap<Standing, readonly Spot[]>();

/** Every text of a cell, in the order of the text. */
export function spotsOf(standing: Standing): readonly Spot[] {
  let spots = known.get(standing);
  if (spots === undefined) {
    spots = standing.tree === undefined ? [] : collect(standing.tree);
    known.set(standing, spots);
  }
  return spots;
}

/** The spot that an offset stands in or touches; of two that touch, the one that starts there. */
export function spotAt(standing: Standing, offset: number): Spot | undefined {
  let found: Spot | undefined;
  for (const spot of spotsOf(standing)) {
    const { start, end } = spot.node.span;
    if (start <= offset && offset <= end && (start < end || found === undefined)) found = spot;
    else if (start > offset) break;
  }
  return found;
}

/** From the start of an entry's key to the end of its value. */
export function entrySpan(key: TextNode, value: Node): Span {
  return { start: key.span.start, end: Math.max(key.span.end, value.span.end) };
}

function collect(tree: MapNode): readonly Spot[] {
  const spots: Spot[] = [];
  const [title] = tree.entries;
  if (title === undefined) return spots;
  const kind = kindOf(title.key.text);
  const path = [title.key.text];
  if (kind === undefined) {
    add(spots, 'unknown key', title.key, path, { value: title.value });
  } else {
    add(spots, 'kind', title.key, path, { value: title.value });
    const role: Role = kind.title === 'markdown' ? 'markdown' : 'title';
    if (title.value.kind === 'text') add(spots, role, title.value, path);
  }
  entries(spots, { ...tree, entries: tree.entries.slice(1) }, kind?.keys ?? {}, path);
  return spots.sort((a, b) => a.node.span.start - b.node.span.start || a.node.span.end - b.node.span.end);
}

type More = Partial<Pick<Spot, 'key' | 'under' | 'value' | 'column'>>;

function add(spots: Spot[], role: Role, node: TextNode, path: readonly string[], more: More = {}): void {
  spots.push({
    role,
    node,
    path,
    key: undefined,
    under: undefined,
    value: undefined,
    column: undefined,
    ...more,
  });
}

function entries(spots: Spot[], map: MapNode, keys: Keys, path: readonly string[]): void {
  for (const { key, value } of map.entries) {
    const row = Object.hasOwn(keys, key.text) ? keys[key.text] : undefined;
    const here = [...path, key.text];
    add(spots, row === undefined ? 'unknown key' : 'key', key, here, { value, key: row });
    if (row !== undefined) held(spots, value, row.holds, row, here, key);
  }
}

function held(
  spots: Spot[],
  node: Node,
  holds: Holds,
  key: Key | undefined,
  path: readonly string[],
  under: TextNode,
): void {
  if (typeof holds === 'object') {
    if ('list' in holds) {
      const items = node.kind === 'list' ? node.items : [node];
      for (const item of items) held(spots, item, holds.list, key, path, under);
    } else if ('named' in holds) {
      if (node.kind === 'map') named(spots, node, holds.named, path);
    } else if ('keys' in holds) {
      if (node.kind === 'map') entries(spots, node, holds.keys, path);
      else if (node.kind === 'text' && holds.short !== undefined) {
        const short = holds.keys[holds.short];
        if (short !== undefined) held(spots, node, short.holds, short, [...path, holds.short], under);
      }
    } else if (node.kind === 'text') add(spots, 'word', node, path, { key, under });
    return;
  }
  switch (holds) {
    case 'state':
      if (node.kind === 'text') add(spots, 'state', node, path, { key, under });
      if (node.kind === 'map') stateMap(spots, node, path);
      return;
    case 'map':
      if (node.kind === 'map') signalMap(spots, node, path);
      return;
    case 'anything':
      if (node.kind === 'text') add(spots, 'text', node, path, { key, under });
      return;
    case 'table':
      if (node.kind === 'text') table(spots, node, path);
      return;
    default:
      if (node.kind === 'text') add(spots, roleOf(holds, path), node, path, { key, under });
  }
}

function roleOf(
  holds: 'sentence' | 'markdown' | 'name' | 'text' | 'quantity' | 'expression',
  path: readonly string[],
): Role {
  if (holds === 'name') return 'as';
  if (holds !== 'text') return holds;
  switch (path[path.length - 1]) {
    case 'tool':
      return 'tool';
    case 'unit':
      return 'unit';
    case 'signal':
      return 'signal name';
    case 'file':
    case 'picture':
      return 'file';
    default:
      return 'text';
  }
}

/** Entries whose keys the author chose. */
function named(spots: Spot[], map: MapNode, holds: Holds, path: readonly string[]): void {
  const role = namedRole(path[path.length - 1] ?? '');
  for (const { key, value } of map.entries) {
    const here = [...path, key.text];
    add(spots, role, key, here, { value });
    held(spots, value, holds, undefined, here, key);
  }
}

function namedRole(key: string): Role {
  switch (key) {
    case 'let':
      return 'let';
    case 'states':
      return 'column';
    case 'tools':
      return 'tool name';
    case 'signals':
      return 'own signal';
    default:
      return 'channel';
  }
}

/** `{state: cruise, gear: 4, loop: closed}` */
function stateMap(spots: Spot[], map: MapNode, path: readonly string[]): void {
  for (const { key, value } of map.entries) {
    const here = [...path, key.text];
    add(spots, 'key', key, here, { value });
    if (value.kind === 'text')
      add(spots, key.text === 'state' ? 'state' : 'text', value, here, { under: key });
  }
}

/** `values:`: a signal's name and what was measured, an entry each. */
function signalMap(spots: Spot[], map: MapNode, path: readonly string[]): void {
  for (const { key, value } of map.entries) {
    const here = [...path, key.text];
    add(spots, 'signal', key, here, { value });
    if (value.kind === 'map' && entryOf(value, 'value') !== undefined) measured(spots, value, here, key);
    else readings(spots, value, here, key);
  }
}

/** `{value: 16.4 inHg, tool: gauge, at: brake booster port, saw: steady}` */
function measured(spots: Spot[], map: MapNode, path: readonly string[], under: TextNode): void {
  for (const { key, value } of map.entries) {
    const here = [...path, key.text];
    const row = Object.hasOwn(measuredKeys, key.text) ? measuredKeys[key.text] : undefined;
    add(spots, row === undefined ? 'unknown key' : 'key', key, here, { value, key: row });
    if (key.text === 'value') readings(spots, value, path, under);
    else if (value.kind === 'text') {
      add(spots, key.text === 'tool' ? 'tool' : 'sentence', value, here, { key: row, under });
    }
  }
}

/** The keys of a value that is written with its circumstances. */
export const measuredKeys: Keys = {
  value: { holds: 'quantity', meaning: 'what was measured', example: '16.4 inHg' },
  tool: {
    holds: 'text',
    meaning: 'the instrument, by its name under `tools` in the header',
    example: 'gauge',
  },
  at: { holds: 'sentence', meaning: 'where on the car it was taken', example: 'brake booster port' },
  saw: { holds: 'sentence', meaning: 'what the needle or the number did', example: 'steady' },
};

function readings(spots: Spot[], node: Node, path: readonly string[], under: TextNode): void {
  switch (node.kind) {
    case 'text':
      add(spots, 'reading', node, path, { under });
      return;
    case 'map':
      for (const { key, value } of node.entries) {
        add(spots, 'member', key, [...path, key.text], { value, under });
        readings(spots, value, [...path, key.text], under);
      }
      return;
    case 'list':
      for (const item of node.items) readings(spots, item, path, under);
  }
}

function table(spots: Spot[], node: TextNode, path: readonly string[]): void {
  const { value } = readTable(node);
  if (value === undefined) {
    add(spots, 'text', node, path);
    return;
  }
  const headings = value.headings.slice(1);
  for (const heading of value.headings) add(spots, 'heading', heading, [...path, heading.text]);
  for (const { name, values } of value.rows) {
    const here = [...path, name.text];
    add(spots, 'signal', name, here);
    values.forEach((each, at) => {
      const heading = headings[at]?.text;
      if (heading === 'unit') add(spots, 'unit', each, here, { under: name });
      else if (each.text !== notTaken || each.span.end > each.span.start)
        add(spots, 'reading', each, here, { under: name, column: heading });
    });
  }
}

import type { Cell } from './cell.ts';
import { isName } from './isName.ts';
import { type Fixed, type Holds, type Keys, propertyOf } from './kinds/key.ts';
import { type KindName, kinds } from './kinds/kinds.ts';
import { isState, stateParts } from './stateParts.ts';
import type { MapNode, Node } from './tree.ts';

/**
 * A cell in its typed form, read straight from the table of kinds; undefined when any part of it is not as the table
 * says. What is wrong, and what is left without it, the schema tells (`schema.ts`); most cells never need it.
 * Both read the same cell; a test compares them.
 */
export function readPlain(kind: KindName, tree: MapNode): Cell | undefined {
  const row = kinds[kind];
  const title = tree.entries[0]?.value;
  if (title === undefined || read(row.title, title) === undefined) return undefined;
  const fields = readKeys(row.keys, tree);
  if (fields === undefined) return undefined;
  fields.kind = kind;
  fields.title = title;
  // The table gives both what is read here and the type; the compiler cannot see through the loop between them.
  return fields as unknown as Cell;
}

/** By key's property. Without a prototype, so that no key of the file means anything to the language. */
type Fields = Record<string, unknown>;

function readKeys(keys: Keys, map: MapNode): Fields | undefined {
  const fields: Fields = Object.create(null);
  fields.node = map;
  for (const { key, value } of map.entries) {
    const row = Object.hasOwn(keys, key.text) ? keys[key.text] : undefined;
    if (row === undefined) continue;
    const content = read(row.holds, value);
    if (content === undefined) return undefined;
    fields[propertyOf(key.text, row)] ??= content;
  }
  return fields;
}

/** What a value is read into; undefined when it is not of this sort. */
function read(holds: Holds, node: Node): unknown {
  if (typeof holds === 'string') return readSingle(holds, node);
  if ('words' in holds) return node.kind === 'text' && holds.words.includes(node.text) ? node : undefined;
  // One item may stand without its list.
  if ('list' in holds) return readItems(holds.list, node.kind === 'list' ? node.items : [node]);
  if ('named' in holds) return node.kind === 'map' ? readNamed(holds.named, node) : undefined;
  return readFixed(holds, node);
}

function readSingle(holds: Extract<Holds, string>, node: Node): unknown {
  switch (holds) {
    case 'anything':
      return node;
    case 'map':
      return node.kind === 'map' ? node : undefined;
    case 'state':
      return isState(node) ? stateParts(node) : undefined;
    case 'name':
      return node.kind === 'text' && isName(node.text) ? node : undefined;
    case 'sentence':
    case 'markdown':
    case 'text':
    case 'quantity':
    case 'expression':
    case 'table':
      return node.kind === 'text' ? node : undefined;
  }
}

function readItems(holds: Holds, nodes: readonly Node[]): readonly unknown[] | undefined {
  const items: unknown[] = [];
  for (const node of nodes) {
    const item = read(holds, node);
    if (item === undefined) return undefined;
    items.push(item);
  }
  return items;
}

function readNamed(holds: Holds, { entries }: MapNode): readonly unknown[] | undefined {
  const named: unknown[] = [];
  for (const { key, value } of entries) {
    const content = read(holds, value);
    if (content === undefined) return undefined;
    named.push({ key, value: content });
  }
  return named;
}

function readFixed({ keys, short }: Fixed, node: Node): Fields | undefined {
  if (node.kind === 'map') return readKeys(keys, node);
  const row = short === undefined ? undefined : keys[short];
  if (short === undefined || row === undefined || node.kind !== 'text') return undefined;
  const fields: Fields = Object.create(null);
  fields.node = node;
  fields[propertyOf(short, row)] = node;
  return fields;
}

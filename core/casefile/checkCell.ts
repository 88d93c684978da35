import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { nearest } from '../text/nearest.ts';
import type { Cell } from './cell.ts';
import { badName, checkKeys, replaceBy } from './checkKeys.ts';
import { describeHolds, describeNode, exampleOf } from './kinds/describe.ts';
import type { Holds, Keys } from './kinds/key.ts';
import { type KindName, kindNames, kindOf } from './kinds/kinds.ts';
import { readPlain } from './readPlain.ts';
import { readShape, type ShapeProblem } from './schema.ts';
import type { Entry, ListNode, MapNode, Node } from './tree.ts';

export interface CheckedCell {
  /** The cell without what could not be read; nothing when its kind is not known. */
  readonly cell: Cell | undefined;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Checks a cell's tree against its kind: keys first, then the shapes of what they hold.
 * Parts that a trap spoiled are left out without another word.
 */
export function checkCell(whole: MapNode, spoiled: ReadonlySet<Entry | Node> = new Set()): CheckedCell {
  const title = whole.entries[0];
  if (title === undefined || spoiled.has(title)) return { cell: undefined, diagnostics: [] };
  const tree = spoiled.size === 0 ? whole : withoutParts(whole, spoiled);
  const name = title.key.text;
  const kind = kindOf(name);
  if (kind === undefined) return { cell: undefined, diagnostics: [unknownKind(tree, title)] };
  const { diagnostics, unusable } = checkKeys(name, kind.keys, tree);
  const usable = unusable.size === 0 ? tree : withoutLacking(withoutParts(tree, unusable), kind.keys);
  // What is unusable may stand inside of the title: then the title is another node.
  const heading = usable.entries[0];
  if (heading?.key !== title.key) return { cell: undefined, diagnostics };
  const plain = readPlain(name as KindName, usable);
  if (plain !== undefined) return { cell: plain, diagnostics };
  const read = readShape(name as KindName, usable);
  if ('cell' in read) return { cell: read.cell, diagnostics };
  const wrong = new Set<Entry | Node>(read.problems.map((problem) => problem.node));
  const told = read.problems.map((problem) => worded(problem, usable, kind.keys));
  // What is left after leaving out every value of a wrong shape is read like any other cell.
  const rest = wrong.has(heading.value)
    ? undefined
    : readShape(name as KindName, withoutLacking(withoutParts(usable, wrong), kind.keys));
  return {
    cell: rest !== undefined && 'cell' in rest ? rest.cell : undefined,
    diagnostics: [...diagnostics, ...told],
  };
}

function unknownKind(tree: MapNode, first: Entry): Diagnostic {
  const later = tree.entries.find(
    (entry) => kindOf(entry.key.text) !== undefined && entry.value.kind === 'text',
  );
  if (later !== undefined) return diagnose('kind-not-first', later.key.span, { kind: later.key.text });
  const close = nearest(first.key.text, kindNames);
  const facts = { kind: first.key.text, kinds: kindNames, nearest: close };
  return diagnose('unknown-kind', first.key.span, facts, replaceBy(first.key.span, close));
}

function worded(problem: ShapeProblem, tree: MapNode, keys: Keys): Diagnostic {
  const { node, holds } = problem;
  const name = keyAbove(node, tree) ?? '';
  if (problem.wrong === 'word' && node.kind === 'text' && typeof holds === 'object' && 'words' in holds) {
    const close = nearest(node.text, holds.words);
    const facts = { key: name, word: node.text, allowed: holds.words, nearest: close };
    return diagnose('unknown-word', node.span, facts, replaceBy(node.span, close));
  }
  if (holds === 'name' && node.kind === 'text') return badName(node);
  const key = Object.hasOwn(keys, name) ? keys[name] : undefined;
  const example = key?.holds === holds && !key.example.includes('\n') ? key.example : exampleOf(holds);
  const facts = { key: name, takes: describeHolds(holds), got: describeNode(node), example };
  return diagnose('wrong-shape', node.span, facts);
}

/** The key that a node stands under, as written. */
function keyAbove(node: Node, map: MapNode): string | undefined {
  for (const entry of map.entries) {
    const name = entry.key.text;
    if (entry.value === node) return name;
    const found = insideOf(entry.value, name);
    if (found !== undefined) return found;
  }
  return undefined;

  function insideOf(value: Node, name: string): string | undefined {
    if (value.kind === 'map') return keyAbove(node, value);
    if (value.kind === 'text') return undefined;
    for (const item of value.items) {
      const found = item === node ? name : insideOf(item, name);
      if (found !== undefined) return found;
    }
    return undefined;
  }
}

/** The tree without some of its entries and items; what is not touched stays the same object. */
function withoutParts(tree: MapNode, parts: ReadonlySet<Entry | Node>): MapNode {
  return prune(tree) as MapNode;

  function prune(node: Node): Node {
    if (node.kind === 'text') return node;
    if (node.kind === 'list') {
      const items = node.items.filter((item) => !parts.has(item)).map(prune);
      return same(items, node.items) ? node : ({ ...node, items } satisfies ListNode);
    }
    const entries: Entry[] = [];
    for (const entry of node.entries) {
      if (parts.has(entry) || parts.has(entry.value)) continue;
      const value = prune(entry.value);
      entries.push(value === entry.value ? entry : { key: entry.key, value });
    }
    return same(entries, node.entries) ? node : ({ ...node, entries } satisfies MapNode);
  }
}

/**
 * The tree without the entries and items that have lost what they need: `- expect:` alone, half-typed, states nothing.
 * What is missing was told where it was left out.
 */
function withoutLacking(tree: MapNode, keys: Keys): MapNode {
  const lacking = new Set<Node>();
  lookInto(tree, keys);
  return lacking.size === 0 ? tree : withoutParts(tree, lacking);

  function lookInto(map: MapNode, known: Keys): void {
    for (const { key, value } of map.entries)
      look(value, Object.hasOwn(known, key.text) ? known[key.text]?.holds : undefined);
  }

  function look(node: Node, holds: Holds | undefined): void {
    if (typeof holds !== 'object' || 'words' in holds) return;
    if ('list' in holds) {
      for (const item of node.kind === 'list' ? node.items : [node]) look(item, holds.list);
    } else if (node.kind !== 'map') {
      return;
    } else if ('named' in holds) {
      for (const { value } of node.entries) look(value, holds.named);
    } else {
      lookInto(node, holds.keys);
      const has = (name: string): boolean =>
        node.entries.some(({ key, value }) => key.text === name && !lacking.has(value));
      if (Object.entries(holds.keys).some(([name, { required }]) => required === true && !has(name)))
        lacking.add(node);
    }
  }
}

function same<T>(a: readonly T[], b: readonly T[]): boolean {
  return a.length === b.length && a.every((each, index) => each === b[index]);
}

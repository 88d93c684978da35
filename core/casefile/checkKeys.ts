import { type Diagnostic, diagnose, type Fix } from '../diagnostics/diagnostic.ts';
import { nearest } from '../text/nearest.ts';
import { isName } from './isName.ts';
import { describeHolds, exampleOf } from './kinds/describe.ts';
import type { Holds, Key, Keys } from './kinds/key.ts';
import { kindOf } from './kinds/kinds.ts';
import { limits } from './limits.ts';
import { shortened } from './shortened.ts';
import { type Entry, entryOf, type MapNode, type Node, type TextNode } from './tree.ts';

/** Findings about the keys of a cell, and the parts of its tree that cannot be used. */
export interface KeyCheck {
  readonly diagnostics: readonly Diagnostic[];
  /** Entries and items to leave out: unknown, standing twice, empty, or lacking what they need. */
  readonly unusable: ReadonlySet<Entry | Node>;
}

export function checkKeys(kind: string, keys: Keys, tree: MapNode): KeyCheck {
  const diagnostics: Diagnostic[] = [];
  const unusable = new Set<Entry | Node>();
  checkMap(tree, kind, keys, 1);
  return { diagnostics, unusable };

  function checkMap(map: MapNode, of: string, known: Keys | undefined, from: number): void {
    checkTwice(map);
    for (let i = from; i < map.entries.length; i++) {
      const entry = map.entries[i];
      if (entry === undefined || unusable.has(entry)) continue;
      const name = entry.key.text;
      const key = known !== undefined && Object.hasOwn(known, name) ? known[name] : undefined;
      if (known !== undefined && key === undefined) unknownKey(entry, of, known);
      else if (isEmpty(entry.value) || (key?.names === true && isBlank(entry.value)))
        missingValue(entry, key, from === 1 ? notSetIn(map, i, key, known) : []);
      else checkValue(entry.value, name, key?.holds);
    }
    if (known === undefined) return;
    checkAlternatives(map, known);
    checkRequired(map, of, known, from === 1);
  }

  /** `state` or `states`, `values` or `table`: told at the second. */
  function checkAlternatives(map: MapNode, known: Keys): void {
    const told = new Set<Entry>();
    for (const [at, entry] of map.entries.entries()) {
      const name = entry.key.text;
      const others = Object.hasOwn(known, name) ? known[name]?.insteadOf : undefined;
      if (others === undefined || unusable.has(entry)) continue;
      for (const [otherAt, other] of map.entries.entries()) {
        if (!others.includes(other.key.text)) continue;
        const [first, second] = at < otherAt ? [entry, other] : [other, entry];
        if (told.has(second)) continue;
        told.add(second);
        const facts = { key: second.key.text, other: first.key.text };
        diagnostics.push(diagnose('either-key', second.key.span, facts));
      }
    }
  }

  function checkValue(node: Node, of: string, holds: Holds | undefined): void {
    if (node.kind === 'text') return;
    if (node.kind === 'list') {
      const item = typeof holds === 'object' && 'list' in holds ? holds.list : undefined;
      for (const each of node.items) checkItem(each, of, item);
      return;
    }
    if (holds === 'map') checkMembers(node);
    if (typeof holds !== 'object' || 'words' in holds) checkMap(node, of, undefined, 0);
    else if ('list' in holds) checkItem(node, of, holds.list);
    else if ('keys' in holds) checkMap(node, of, holds.keys, 0);
    else {
      checkTwice(node);
      for (const entry of node.entries) {
        if (holds.inExpressions === true && !isName(entry.key.text)) diagnostics.push(badName(entry.key));
        if (isEmpty(entry.value)) missingValue(entry, undefined);
        else checkValue(entry.value, entry.key.text, holds.named);
      }
    }
  }

  /** Values that are maps themselves, by cylinder or label. */
  function checkMembers(values: MapNode): void {
    for (const entry of values.entries) {
      const { key, value } = entry;
      const inner = value.kind === 'map' ? (entryOf(value, 'value')?.value ?? value) : value;
      if (inner.kind !== 'map' || inner.entries.length <= limits.members) continue;
      const facts = { name: key.text, members: inner.entries.length, most: limits.members };
      diagnostics.push(diagnose('too-many-members', key.span, facts));
      unusable.add(entry);
    }
  }

  function checkItem(item: Node, of: string, holds: Holds | undefined): void {
    if (isEmpty(item)) {
      const takes = holds === undefined ? 'a value' : describeHolds(holds);
      const example = holds === undefined ? '' : exampleOf(holds);
      const dash = { start: Math.max(item.span.start - 1, 0), end: item.span.end };
      diagnostics.push(diagnose('missing-value', dash, { key: `${of}: -`, takes, example }));
      unusable.add(item);
    } else checkValue(item, of, holds);
  }

  function checkTwice(map: MapNode): void {
    if (map.entries.length < 2) return;
    const seen = new Set<string>();
    for (const entry of map.entries) {
      const { text } = entry.key;
      if (seen.has(text)) {
        diagnostics.push(diagnose('duplicate-key', entry.key.span, { key: text }));
        unusable.add(entry);
      }
      seen.add(text);
    }
  }

  function checkRequired(map: MapNode, of: string, known: Keys, root: boolean): void {
    for (const name of Object.keys(known)) {
      const key = known[name];
      if (key?.required !== true || map.entries.some((entry) => entry.key.text === name)) continue;
      const span = root ? (map.entries[0]?.key.span ?? map.span) : map.span;
      diagnostics.push(diagnose('missing-key', span, { key: name, of, meaning: key.meaning }));
      if (!root) unusable.add(map);
    }
  }

  function unknownKey(entry: Entry, of: string, known: Keys): void {
    unusable.add(entry);
    const name = entry.key.text;
    if (of === kind && kindOf(name) !== undefined && isTitled(tree, entry)) {
      diagnostics.push(diagnose('kind-not-first', entry.key.span, { kind: name }));
      return;
    }
    const allowed = Object.keys(known);
    const close = nearest(name, allowed);
    const facts = { key: name, of, allowed, nearest: close };
    diagnostics.push(diagnose('unknown-key', entry.key.span, facts, replaceBy(entry.key.span, close)));
  }

  function missingValue(entry: Entry, key: Key | undefined, below: readonly Entry[] = []): void {
    unusable.add(entry);
    for (const each of below) unusable.add(each);
    const takes = key === undefined ? 'a value' : describeHolds(key.holds);
    const example = key?.example.includes('\n') ? '' : (key?.example ?? '');
    const facts = { key: entry.key.text, takes, example, below: below.map((each) => each.key.text) };
    diagnostics.push(diagnose('missing-value', entry.key.span, facts, setIn(below)));
  }
}

/** Entries that stand under a key without a value and are none of the cell's own: they were meant to be set in. */
function notSetIn(map: MapNode, at: number, key: Key | undefined, known: Keys | undefined): readonly Entry[] {
  if (key === undefined || known === undefined || !holdsEntries(key.holds)) return [];
  const below: Entry[] = [];
  for (const entry of map.entries.slice(at + 1)) {
    const name = entry.key.text;
    // The cell's own keys, misspelt ones too, and what starts another cell.
    if (kindOf(name) !== undefined || nearest(name, Object.keys(known)).length > 0) break;
    if (Object.hasOwn(known, name)) break;
    below.push(entry);
  }
  return below;
}

function holdsEntries(holds: Holds): boolean {
  if (typeof holds !== 'object') return holds === 'map';
  return 'named' in holds || 'keys' in holds;
}

/** Offered where each of them is one line, whose start is its key's. */
function setIn(below: readonly Entry[]): readonly Fix[] {
  const isOneLine = ({ value }: Entry): boolean =>
    value.kind === 'text' ? value.style === 'plain' && value.map.length < 2 : value.flow;
  if (below.length === 0 || !below.every(isOneLine)) return [];
  const edits = below.map(({ key }) => ({
    span: { start: key.span.start, end: key.span.start },
    newText: '  ',
  }));
  return [{ title: 'Set the lines below in by two spaces', edits }];
}

/** A text that expressions can use as a name. */
export function badName(node: TextNode): Diagnostic {
  const plain = node.text.replace(/[^\p{L}\p{M}0-9_]+/gu, '_').replace(/^(?=[0-9])/, '_');
  return diagnose(
    'bad-name',
    node.span,
    { name: shortened(node.text) },
    /^_*$/.test(plain) ? [] : replaceBy(node.span, [plain]),
  );
}

/** Offers each word in place of what stands there. */
export function replaceBy(span: { start: number; end: number }, words: readonly string[]): Fix[] {
  return words.map((word) => ({ title: `Write \`${word}\``, edits: [{ span, newText: word }] }));
}

function isEmpty(node: Node): boolean {
  return node.kind === 'text' && node.text === '' && node.style === 'plain';
}

function isBlank(node: Node): boolean {
  return node.kind === 'text' && node.text.trim() === '';
}

/** Whether a kind's name further down may be the cell's true kind: the first key is none. */
function isTitled(tree: MapNode, entry: Entry): boolean {
  return kindOf(tree.entries[0]?.key.text ?? '') === undefined && entry.value.kind === 'text';
}

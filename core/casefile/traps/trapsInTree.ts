import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { Holds, Keys } from '../kinds/key.ts';
import { kindOf } from '../kinds/kinds.ts';
import type { Entry, MapNode, Node } from '../tree.ts';
import { colonInItem } from './colonInItem.ts';
import { commaInList, commaInMap } from './commaInBraces.ts';
import { cutOffTrap } from './cutOff.ts';
import { noteLinesTrap } from './noteLines.ts';
import { quoteFix } from './quoted.ts';
import { meanings } from './sentence.ts';

export interface TreeTraps {
  readonly diagnostics: readonly Diagnostic[];
  /** Parts of the tree that a trap made or spoiled: there is no more to say about them. */
  readonly spoiled: ReadonlySet<Entry | Node>;
}

const none: TreeTraps = { diagnostics: [], spoiled: new Set() };

/** Traps that YAML reads without complaint, but not as the author meant. */
export function trapsInTree(tree: MapNode, text: string): TreeTraps {
  // Without any of these characters there is nothing to find.
  if (!/[#[{]|- /.test(text)) return none;
  const first = tree.entries[0];
  const kind = kindOf(first?.key.text ?? '');
  if (first === undefined || kind === undefined) return none;
  const diagnostics: Diagnostic[] = [];
  const spoiled = new Set<Entry | Node>();
  const lost = first.key.text === 'note' ? noteLinesTrap(text) : undefined;
  if (lost !== undefined) return { diagnostics: [lost], spoiled };
  visit(first.value, kind.title, first);
  visitEntries(tree, kind.keys, undefined, 1);
  return { diagnostics, spoiled };

  function visitEntries(map: MapNode, keys: Keys | undefined, every: Holds | undefined, from: number): void {
    if (map.flow) {
      const commas = commaInMap(map, text);
      diagnostics.push(...commas.diagnostics);
      for (const made of commas.made) {
        // Without a key that it needs, the map says nothing either.
        const name = 'key' in made ? made.key.text : '';
        const needed = keys !== undefined && Object.hasOwn(keys, name) && keys[name]?.required === true;
        spoiled.add(needed ? map : made);
      }
    }
    for (const entry of map.entries.slice(from)) {
      if (spoiled.has(entry)) continue;
      const { text: name } = entry.key;
      const known = keys !== undefined && Object.hasOwn(keys, name) ? keys[name] : undefined;
      visit(entry.value, known?.holds ?? every, entry);
    }
  }

  function visit(node: Node, holds: Holds | undefined, part: Entry | Node): void {
    if (node.kind === 'text') {
      if (!isSentence(holds)) return;
      const trap = cutOffTrap(node, text);
      if (trap === undefined) return;
      diagnostics.push(trap);
      if (node.text === '' && part !== first) spoiled.add(part);
    } else if (node.flow && isText(holds)) {
      const mark = node.kind === 'map' ? '{' : '[';
      const span = { start: node.span.start, end: node.span.start + 1 };
      const facts = { mark, means: meanings[mark] ?? '' };
      diagnostics.push(diagnose('mark-starts-text', span, facts, [quoteFix(text, node.span)]));
      spoiled.add(part);
    } else if (node.kind === 'list') {
      if (node.flow) {
        const commas = commaInList(node, text);
        diagnostics.push(...commas.diagnostics);
        for (const made of commas.made) spoiled.add(made);
      }
      const item = typeof holds === 'object' && 'list' in holds ? holds.list : textAlone(holds);
      for (const each of node.items) {
        if (spoiled.has(each)) continue;
        const trap = each.kind === 'map' ? colonInItem(each, item, text) : undefined;
        if (trap === undefined) {
          visit(each, item, each);
          continue;
        }
        diagnostics.push(trap);
        spoiled.add(each);
      }
    } else {
      const inner = typeof holds === 'object' && 'list' in holds ? holds.list : holds;
      if (typeof inner !== 'object' || 'words' in inner || 'list' in inner)
        visitEntries(node, undefined, undefined, 0);
      else if ('keys' in inner) visitEntries(node, inner.keys, undefined, 0);
      else visitEntries(node, undefined, inner.named, 0);
    }
  }
}

/** A list where one text is due: its items are told like texts. */
function textAlone(holds: Holds | undefined): Holds | undefined {
  return holds === 'sentence' || holds === 'markdown' || holds === 'text' ? holds : undefined;
}

/** Free words, alone or where a text may stand for the map or list around it. */
function isSentence(holds: Holds | undefined): boolean {
  if (holds === 'sentence' || holds === 'markdown') return true;
  if (typeof holds !== 'object') return false;
  if ('list' in holds) return isSentence(holds.list);
  if (!('keys' in holds) || holds.short === undefined) return false;
  return isSentence(holds.keys[holds.short]?.holds);
}

/** A text and nothing else, in which a bracket in front can only be a slip. */
function isText(holds: Holds | undefined): boolean {
  return holds === 'sentence' || holds === 'markdown' || holds === 'text' || holds === 'expression';
}

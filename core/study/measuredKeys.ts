import type { Entry, MapNode } from '../casefile/tree.ts';
import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import type { Signal } from '../signals/types.ts';
import { nearest } from '../text/nearest.ts';

/** The keys of a value that is written with its circumstances: `{value: 16.4 inHg, tool: gauge, at: brake booster port, saw: steady}`. */
const measuredKeys: readonly string[] = ['value', 'tool', 'at', 'saw'];

/** Keys beside `value` that nobody would read. */
export function strayKeys(node: MapNode, name: string): readonly Diagnostic[] {
  return node.entries
    .filter(({ key }) => !measuredKeys.includes(key.text))
    .map((entry) => unknown(entry, name));
}

/**
 * A map without `value` whose first key is nearly that: it was not meant as a set by label.
 * A signal that is a set by label may well have a label that is one letter away.
 */
export function misspeltValue(
  node: MapNode,
  name: string,
  signal: Signal | undefined,
): readonly Diagnostic[] {
  const [first] = node.entries;
  if (first === undefined || signal === undefined || signal.by === 'label' || first.key.text === 'valve')
    return [];
  const others = node.entries.slice(1);
  const isMeant = nearest(first.key.text, ['value']).length > 0;
  return isMeant && others.every(({ key }) => nearest(key.text, measuredKeys).length > 0)
    ? [unknown(first, name)]
    : [];
}

function unknown({ key }: Entry, of: string): Diagnostic {
  const close = nearest(key.text, measuredKeys);
  const fixes = close.map((word) => ({
    title: `Write \`${word}\``,
    edits: [{ span: key.span, newText: word }],
  }));
  return diagnose(
    'unknown-key',
    key.span,
    { key: key.text, of, allowed: measuredKeys, nearest: close },
    fixes,
  );
}

import type { Entry, Node } from './tree.ts';

/** An engine state is a text, or a map of texts with `state` among them. */
export function isState(node: Node): boolean {
  if (node.kind !== 'map') return node.kind === 'text';
  return node.entries.every((entry) => entry.value.kind === 'text') && node.entries.some(isStateName);
}

/** The state's name and what else is said of it; only for what `isState`. */
export function stateParts(node: Node): unknown {
  if (node.kind !== 'map') return { name: node, more: [], node };
  const name = node.entries.find(isStateName);
  return { name: name?.value, more: node.entries.filter((entry) => entry !== name), node };
}

const isStateName = (entry: Entry): boolean => entry.key.text === 'state';

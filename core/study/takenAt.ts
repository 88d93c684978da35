import type { StateNode } from '../casefile/cell.ts';
import type { TextNode } from '../casefile/tree.ts';
import { stateOf } from '../signals/states.ts';
import type { TakenAt, When } from './types.ts';

export function takenAt(node: StateNode | undefined): TakenAt | undefined {
  if (node === undefined) return undefined;
  const name = node.name.text.trim();
  const more = new Map(node.more.map((each) => [each.key.text, each.value.text.trim()]));
  return { name, known: stateOf(name), more };
}

/** As found counts as before. */
export function whenOf(node: TextNode | undefined): When {
  switch (node?.text) {
    case 'after':
    case 'known good':
    case 'freeze frame':
      return node.text;
    default:
      return 'before';
  }
}

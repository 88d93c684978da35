import { oneOf } from '../../diagnostics/row.ts';
import type { Node } from '../tree.ts';
import type { Holds } from './key.ts';

/** What a key takes, in a technician's words: "an engine state". */
export function describeHolds(holds: Holds): string {
  switch (holds) {
    case 'sentence':
    case 'markdown':
    case 'text':
      return 'a text';
    case 'name':
      return 'a name';
    case 'quantity':
      return 'a number with its unit';
    case 'expression':
      return 'an expression';
    case 'table':
      return 'a table in the lines after `|`';
    case 'state':
      return 'an engine state';
    case 'map':
      return 'entries, each `name: value` on a line of its own';
    case 'anything':
      return 'a value';
  }
  if ('words' in holds) return oneOf(holds.words.map((word) => `\`${word}\``));
  if ('list' in holds) return `${describeHolds(holds.list)}, or several as a list`;
  if ('named' in holds) return 'entries, each with a name of its own';
  return `${holds.short === undefined ? '' : 'a text or '}entries (${oneOf(Object.keys(holds.keys).map((key) => `\`${key}\``))})`;
}

/** What stands there, in a technician's words. */
export function describeNode(node: Node): string {
  switch (node.kind) {
    case 'text':
      return node.text === '' ? 'nothing' : 'a text';
    case 'list':
      return 'a list';
    case 'map':
      return 'entries with keys of their own';
  }
}

/** A short example of what a key takes; empty when there is none on one line. */
export function exampleOf(holds: Holds): string {
  if (typeof holds !== 'object') return '';
  if ('words' in holds) return holds.words[0] ?? '';
  if ('list' in holds) return exampleOf(holds.list);
  if ('named' in holds || holds.short === undefined) return '';
  return holds.keys[holds.short]?.example ?? '';
}

import type { Call, Expression } from '../../expression/tree.ts';
import { childrenOf } from './children.ts';
import { dotted, type Path } from './paths.ts';

/** What an expression reads: dotted names in the order of the text, and the functions it calls. */
export interface Reads {
  readonly paths: readonly Path[];
  readonly calls: readonly Call[];
}

const known = new WeakMap<Expression, Reads>();

/** Walked once for each expression. Iterative: depth does not matter. */
export function readsOf(expression: Expression): Reads {
  let reads = known.get(expression);
  if (reads === undefined) {
    reads = walk(expression);
    known.set(expression, reads);
  }
  return reads;
}

function walk(expression: Expression): Reads {
  const paths: Path[] = [];
  const calls: Call[] = [];
  const waiting: Expression[] = [expression];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    const path = dotted(node);
    if (path !== undefined) {
      paths.push(path);
      continue;
    }
    if (node.kind === 'call') calls.push(node);
    waiting.push(...childrenOf(node).reverse());
  }
  return { paths, calls };
}

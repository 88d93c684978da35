import type { Expression } from '../expression/tree.ts';
import type { Supply, Typed } from '../expression/typed.ts';
import type { Kind } from '../quantity/types.ts';
import type { Standing } from './standing.ts';

/** The kind that a number's place gives it: 5 °C after `within` is a difference. Undefined where the types are not known. */
export function kindAt(
  { study, index }: Standing,
  expression: Expression,
  literal: Expression,
): Kind | undefined {
  const typed = study.memo.outcomes[index]?.evaluated.get(expression)?.typed;
  if (typed === undefined) return undefined;
  const waiting: Typed[] = [typed.root];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    const { span, type } = node;
    const isThere = span.start === literal.span.start && span.end === literal.span.end;
    if (node.kind === 'literal' && isThere) return type.kind === 'one' ? type.quantity.kind : undefined;
    waiting.push(...partsOf(node));
  }
  return undefined;
}

function partsOf(node: Typed): readonly Typed[] {
  switch (node.kind) {
    case 'broken':
    case 'constant':
    case 'literal':
    case 'read':
      return [];
    case 'taken':
    case 'field':
    case 'convert':
    case 'negative':
    case 'power':
    case 'opposite':
      return [node.of];
    case 'entry':
      return [node.of, node.index];
    case 'apply':
      return node.supplies.flatMap((each: Supply) => (each.from === 'call' ? [each.value] : []));
    case 'sum':
    case 'compare':
    case 'same word':
    case 'both':
      return [node.left, node.right];
    case 'cut':
      return [node.of, node.start, node.end];
    case 'pick':
      return [node.of, node.condition];
    case 'between':
      return [node.of, node.low, node.high];
    case 'within':
      return [node.left, node.tolerance, node.right];
    case 'in range':
      return [node.of, node.range];
    case 'choice':
      return [node.condition, node.yes, node.no];
  }
}

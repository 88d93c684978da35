import type { Expression } from '../../expression/tree.ts';

/** The parts of an expression, in the order of the text. */
export function childrenOf(node: Expression): Expression[] {
  switch (node.kind) {
    case 'hole':
    case 'quantity':
    case 'text':
    case 'truth':
    case 'name':
      return [];
    case 'member':
    case 'sign':
    case 'not':
      return [node.of];
    case 'index':
      return [node.of, node.index];
    case 'call':
      return node.arguments.map((each) => each.value);
    case 'arithmetic':
    case 'comparison':
    case 'is':
    case 'logic':
      return [node.left, node.right];
    case 'cut':
      return [node.of, node.start, node.end];
    case 'where':
      return [node.of, node.condition];
    case 'between':
      return [node.of, node.low, node.high];
    case 'within':
      return [node.left, node.tolerance, node.right];
    case 'in':
      return node.high === undefined ? [node.of, node.low] : [node.of, node.low, node.high];
    case 'conditional':
      return [node.condition, node.yes, node.no];
  }
}

import type { Expression } from '../../core/expression/tree.ts';

/** A tree as nested brackets with its own words: what is grouped with what, and nothing else. */
export function spell(tree: Expression): string {
  switch (tree.kind) {
    case 'hole':
      return '?';
    case 'quantity':
      return `${tree.quantity.value}${tree.quantity.unit.symbol === '1' ? '' : tree.quantity.unit.symbol}`;
    case 'text':
      return `"${tree.text}"`;
    case 'truth':
      return tree.word;
    case 'name':
      return tree.name;
    case 'member':
      return `(. ${spell(tree.of)} ${tree.name === '' ? '?' : tree.name})`;
    case 'index':
      return `([] ${spell(tree.of)} ${spell(tree.index)})`;
    case 'call':
      return `(${[tree.name, ...tree.arguments.map((each) => (each.name === undefined ? '' : `${each.name}=`) + spell(each.value))].join(' ')})`;
    case 'sign':
      return `(${tree.sign} ${spell(tree.of)})`;
    case 'arithmetic':
      return `(${tree.operator} ${spell(tree.left)} ${spell(tree.right)})`;
    case 'cut':
      return `(from ${spell(tree.of)} ${spell(tree.start)} ${spell(tree.end)})`;
    case 'where':
      return `(where ${spell(tree.of)} ${spell(tree.condition)})`;
    case 'comparison':
      return `(${tree.relation} ${spell(tree.left)} ${spell(tree.right)})`;
    case 'is':
      return `(${tree.negated ? 'not-is' : 'is'} ${spell(tree.left)} ${spell(tree.right)})`;
    case 'between':
      return `(${tree.negated ? 'not-between' : 'between'} ${spell(tree.of)} ${spell(tree.low)} ${spell(tree.high)})`;
    case 'within':
      return `(${tree.negated ? 'not-within' : 'within'} ${spell(tree.left)} ${spell(tree.tolerance)} ${spell(tree.right)})`;
    case 'in':
      return `(${tree.negated ? 'not-in' : 'in'} ${spell(tree.of)} ${spell(tree.low)}${tree.high === undefined ? '' : ` ${spell(tree.high)}`})`;
    case 'not':
      return `(not ${spell(tree.of)})`;
    case 'logic':
      return `(${tree.operator} ${spell(tree.left)} ${spell(tree.right)})`;
    case 'conditional':
      return `(if ${spell(tree.condition)} ${spell(tree.yes)} ${spell(tree.no)})`;
  }
}

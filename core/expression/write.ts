import { formatNumber, qualifierOf } from '../quantity/format.ts';
import type { Quantity } from '../quantity/types.ts';
import { plainUnit } from '../quantity/unit.ts';
import { levels } from './levels.ts';
import type { Expression } from './tree.ts';

/** A tree as text: what is written is read back as the same tree. Holes are written `…`. */
export function writeExpression(tree: Expression): string {
  switch (tree.kind) {
    case 'hole':
      return '…';
    case 'quantity':
      return writeQuantity(tree.quantity);
    case 'text':
      return tree.text.includes('"') ? `'${tree.text}'` : `"${tree.text}"`;
    case 'truth':
      return tree.word;
    case 'name':
      return tree.name;
    case 'member':
      return `${operand(tree.of, levels.post)}.${tree.name === '' ? '…' : tree.name}`;
    case 'index':
      return `${operand(tree.of, levels.post)}[${writeExpression(tree.index)}]`;
    case 'call': {
      const each = tree.arguments.map(
        ({ name, value }) => (name === undefined ? '' : `${name} = `) + writeExpression(value),
      );
      return `${tree.name}(${each.join(', ')})`;
    }
    case 'sign':
      return `${tree.sign} ${operand(tree.of, levels.unary)}`;
    case 'arithmetic':
      return arithmetic(tree.operator, tree.left, tree.right);
    case 'cut':
      return `${operand(tree.of, levels.window)} from ${operand(tree.start, levels.sum)} to ${operand(tree.end, levels.sum)}`;
    case 'where':
      return `${operand(tree.of, levels.window)} where (${writeExpression(tree.condition)})`;
    case 'comparison':
      return `${side(tree.left)} ${tree.relation} ${side(tree.right)}`;
    case 'is':
      return `${side(tree.left)} is ${not(tree.negated)}${side(tree.right)}`;
    case 'between':
      return `${side(tree.of)} ${not(tree.negated)}between ${side(tree.low)} and ${side(tree.high)}`;
    case 'within':
      return `${side(tree.left)} ${not(tree.negated)}within ${side(tree.tolerance)} of ${side(tree.right)}`;
    case 'in': {
      const high = tree.high === undefined ? '' : ` .. ${side(tree.high)}`;
      return `${side(tree.of)} ${not(tree.negated)}in ${side(tree.low)}${high}`;
    }
    case 'not':
      return `not ${operand(tree.of, levels.not)}`;
    case 'logic': {
      const level = tree.operator === 'or' ? levels.or : levels.and;
      return `${operand(tree.left, level)} ${tree.operator} ${operand(tree.right, level + 1)}`;
    }
    case 'conditional':
      return `if ${writeExpression(tree.condition)} then ${writeExpression(tree.yes)} else ${writeExpression(tree.no)}`;
  }
}

const not = (negated: boolean): string => (negated ? 'not ' : '');
const side = (tree: Expression): string => operand(tree, levels.window);

function arithmetic(operator: '+' | '-' | '*' | '/' | '^', left: Expression, right: Expression): string {
  if (operator === '^') {
    const base = left.kind === 'quantity' && !isBareNumber(left.quantity) ? 0 : levelOfTree(left);
    const text = writeExpression(left);
    return `${base < levels.post ? `(${text})` : text} ^ ${operand(right, levels.unary)}`;
  }
  const level = operator === '+' || operator === '-' ? levels.sum : levels.term;
  return `${operand(left, level)} ${operator} ${operand(right, level + 1)}`;
}

/** A part of an expression, in brackets where it binds more loosely than its place. */
function operand(tree: Expression, level: number): string {
  const text = writeExpression(tree);
  // A point or bracket right behind a number would be read into it.
  const glued = level === levels.post && tree.kind === 'quantity';
  return glued || levelOfTree(tree) < level ? `(${text})` : text;
}

function levelOfTree(tree: Expression): number {
  switch (tree.kind) {
    case 'conditional':
      return 0;
    case 'logic':
      return tree.operator === 'or' ? levels.or : levels.and;
    case 'not':
      return levels.not;
    case 'comparison':
    case 'is':
    case 'between':
    case 'within':
    case 'in':
      return levels.compare;
    case 'cut':
    case 'where':
      return levels.window;
    case 'arithmetic':
      if (tree.operator === '^') return levels.power;
      return tree.operator === '+' || tree.operator === '-' ? levels.sum : levels.term;
    case 'sign':
      return levels.unary;
    default:
      return levels.post;
  }
}

function isBareNumber(quantity: Quantity): boolean {
  return quantity.unit === plainUnit && quantity.value >= 0;
}

function writeQuantity({ value, unit, kind, kindGiven, plusMinus }: Quantity): string {
  const number = formatNumber(value);
  const spread = plusMinus === 0 ? '' : ` ± ${formatNumber(plusMinus)}`;
  const symbol = unit === plainUnit ? '' : ` ${unit.symbol}`;
  const word = kindGiven ? qualifierOf({ dimension: unit.dimension, kind, unit }) : undefined;
  return `${number}${spread}${symbol}${word === undefined || unit.kind !== undefined ? '' : ` ${word}`}`;
}

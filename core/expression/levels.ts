import type { Mark } from './scan.ts';

/** How tightly operators bind, loosest first. */
export const levels = {
  or: 1,
  and: 2,
  not: 3,
  compare: 4,
  window: 5,
  sum: 6,
  term: 7,
  unary: 8,
  power: 9,
  post: 10,
};

/** The level of an operator; 0 for what is none. */
export function levelOf(mark: Mark): number {
  switch (mark) {
    case 'end':
    case ')':
      return 0;
    case '+':
    case '-':
      return levels.sum;
    case '*':
    case '/':
      return levels.term;
    case '<':
    case '<=':
    case '>':
    case '>=':
    case 'is':
    case 'not':
    case 'between':
    case 'within':
    case 'in':
      return levels.compare;
    case '.':
    case '[':
      return levels.post;
    case 'and':
      return levels.and;
    case 'or':
      return levels.or;
    case '^':
      return levels.power;
    case 'from':
    case 'where':
      return levels.window;
    default:
      return 0;
  }
}

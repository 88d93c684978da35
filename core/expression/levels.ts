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

export function levelOf(mark: Mark): number {
  switch (mark) {
    case 'or':
      return levels.or;
    case 'and':
      return levels.and;
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
    case 'from':
    case 'where':
      return levels.window;
    case '+':
    case '-':
      return levels.sum;
    case '*':
    case '/':
      return levels.term;
    case '^':
      return levels.power;
    case '.':
    case '[':
      return levels.post;
    default:
      return 0;
  }
}

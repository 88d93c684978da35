import { diagnose } from '../diagnostics/diagnostic.ts';
import { plainUnit } from '../quantity/unit.ts';
import type { Span } from '../text/span.ts';
import { type Cursor, deep, peek, report, take } from './cursor.ts';
import { takeIf } from './expect.ts';
import { equalityMark, reportChain, reportForeign } from './foreignMarks.ts';
import { levelOf, levels } from './levels.ts';
import { operandAfter, operation } from './parse.ts';
import { type Mark, skipSpace, wordEnd } from './scan.ts';
import { denial, type Expression, type Relation } from './tree.ts';

/** True when `not` is followed by a comparing word: `a not between …`. */
export function negatesComparison(cursor: Cursor): boolean {
  const from = skipSpace(cursor.text, cursor.markEnd);
  const word = cursor.text.slice(from, wordEnd(cursor.text, from));
  return word === 'between' || word === 'within' || word === 'in';
}

export function comparison(cursor: Cursor, mark: Mark, left: Expression, start: number): Expression {
  const foreign = cursor.foreign;
  if (foreign !== undefined && foreign.means !== 'equal' && foreign.means !== 'unequal')
    reportForeign(cursor, foreign);
  take(cursor);
  switch (mark) {
    case '<':
    case '<=':
    case '>':
    case '>=': {
      const right = operation(cursor, levels.window);
      return { kind: 'comparison', relation: mark, left, right, span: { start, end: cursor.lastEnd } };
    }
    case 'is': {
      const at = { start: cursor.lastStart, end: cursor.lastEnd };
      const negated = foreign === undefined ? takeIf(cursor, 'not') : foreign.means === 'unequal';
      const also = foreign === undefined ? comparingWord(peek(cursor)) : undefined;
      if (also !== undefined) return spokenComparison(cursor, at, also, negated, left, start);
      const right = operation(cursor, levels.window);
      if (foreign !== undefined) return equalityMark(cursor, at, negated, left, right, start);
      return { kind: 'is', negated, left, right, span: { start, end: cursor.lastEnd } };
    }
    case 'not': {
      const word = peek(cursor);
      take(cursor);
      return wordComparison(cursor, word, true, left, start);
    }
    default:
      return wordComparison(cursor, mark, false, left, start);
  }
}

type Comparing = 'between' | 'within' | 'in' | Relation;

function comparingWord(mark: Mark): Comparing | undefined {
  switch (mark) {
    case 'between':
    case 'within':
    case 'in':
    case '<':
    case '<=':
    case '>':
    case '>=':
      return mark;
    default:
      return undefined;
  }
}

/** `x is between …`, `x is not in …`, `x is > …`: as one says it, but the word alone compares. */
function spokenComparison(
  cursor: Cursor,
  is: Span,
  word: Comparing,
  negated: boolean,
  left: Expression,
  start: number,
): Expression {
  const span = { start: is.start, end: cursor.markEnd };
  const relation = word === 'between' || word === 'within' || word === 'in' ? undefined : word;
  const meant = relation === undefined || !negated ? word : denial[relation];
  const use = relation === undefined && negated ? `not ${word}` : meant;
  const written = cursor.text.slice(span.start, span.end);
  const fixes = [{ title: `Write \`${use}\``, edits: [{ span, newText: use }] }];
  report(cursor, diagnose('foreign-mark', span, { written, use: [use] }, fixes));
  take(cursor);
  if (relation === undefined) return wordComparison(cursor, word, negated, left, start);
  const right = operation(cursor, levels.window);
  return {
    kind: 'comparison',
    relation: negated ? denial[relation] : relation,
    left,
    right,
    span: { start, end: cursor.lastEnd },
  };
}

function wordComparison(
  cursor: Cursor,
  word: Mark,
  negated: boolean,
  left: Expression,
  start: number,
): Expression {
  const first = operation(cursor, levels.window);
  const depth = cursor.depth;
  let node: Expression;
  if (word === 'between') {
    const high = operandAfter(cursor, 'and', 'x between 17 inHg and 22 inHg', levels.window);
    node = { kind: 'between', negated, of: left, low: first, high, span: { start, end: cursor.lastEnd } };
  } else if (word === 'within') {
    const right = operandAfter(cursor, 'of', 'x within 0.5 inHg of y', levels.window);
    node = { kind: 'within', negated, left, tolerance: first, right, span: { start, end: cursor.lastEnd } };
  } else {
    const open = takeIf(cursor, '..');
    const high = open ? operation(cursor, levels.window) : undefined;
    const low = high === undefined ? first : withUnitOf(first, high);
    node = { kind: 'in', negated, of: left, low, high, span: { start, end: cursor.lastEnd } };
    if (!open) cursor.depth = depth;
  }
  cursor.depth = Math.max(depth, cursor.depth);
  return node;
}

/** In a range the upper end's unit serves both: `17 .. 22 inHg`. */
function withUnitOf(low: Expression, high: Expression): Expression {
  if (low.kind !== 'quantity' || high.kind !== 'quantity' || low.quantity.unit !== plainUnit) return low;
  const { unit, kind, kindGiven } = high.quantity;
  return { ...low, quantity: { ...low.quantity, unit, kind, kindGiven } };
}

/** A comparison behind a comparison is told, and read as "both". */
export function unchained(cursor: Cursor, left: Expression, start: number): Expression {
  let whole = left;
  let last = left;
  for (;;) {
    const mark = peek(cursor);
    if (levelOf(mark) !== levels.compare || (mark === 'not' && !negatesComparison(cursor))) return whole;
    const at = { start: cursor.at, end: cursor.markEnd };
    const depth = cursor.depth;
    const middle =
      last.kind === 'comparison' || last.kind === 'is' || last.kind === 'within' ? last.right : last;
    const second = comparison(cursor, mark, middle, middle.span.start);
    const reportedLater =
      whole === left && lacksUnits(last, second) && levelOf(peek(cursor)) !== levels.compare;
    if (!reportedLater) reportChain(cursor, last, second, start, at);
    whole = {
      kind: 'logic',
      operator: 'and',
      chained: reportedLater ? 'to be told' : 'told',
      left: whole,
      right: second,
      span: { start, end: cursor.lastEnd },
    };
    last = second;
    deep(cursor, Math.max(depth, cursor.depth) + 2);
  }
}

/** `500 < rpm < 900`: two limits, at least one of them a number without a unit. */
function lacksUnits(first: Expression, second: Expression): boolean {
  if (first.kind !== 'comparison' || second.kind !== 'comparison') return false;
  const isOneWay = first.relation[0] === second.relation[0];
  return isOneWay && (isBareNumber(first.left) || isBareNumber(second.right));
}

function isBareNumber(tree: Expression): boolean {
  return tree.kind === 'quantity' && tree.quantity.unit === plainUnit;
}

import { diagnose, type Fix } from '../diagnostics/diagnostic.ts';
import type { Span } from '../text/span.ts';
import { type Cursor, report } from './cursor.ts';
import type { ForeignMark } from './scan.ts';
import type { Expression, Relation } from './tree.ts';

/** Tells the word or mark that stands for the foreign one at the cursor, and offers it. */
export function reportForeign(cursor: Cursor, foreign: ForeignMark): void {
  const span = { start: cursor.at, end: cursor.at + foreign.written.length };
  const use = nativeText(foreign);
  const glued = /\w/.test(use[0] ?? '') || use.startsWith('^ ');
  const newText = glued ? spaced(cursor.text, span, use) : use;
  report(
    cursor,
    diagnose('foreign-mark', span, { written: foreign.written, use: [use] }, [
      { title: `Write \`${use}\``, edits: [{ span, newText }] },
    ]),
  );
}

function nativeText(foreign: ForeignMark): string {
  switch (foreign.means) {
    case 'square':
      return '^ 2';
    case 'cube':
      return '^ 3';
    case 'equal':
      return 'is';
    case 'unequal':
      return 'is not';
    default:
      return foreign.means;
  }
}

/** A word must not run into its neighbours. */
function spaced(text: string, span: Span, word: string): string {
  const before = span.start > 0 && !/\s/.test(text[span.start - 1] ?? '') ? ' ' : '';
  const after = span.end < text.length && !/\s/.test(text[span.end] ?? '') ? ' ' : '';
  return before + word + after;
}

/**
 * `=` and its like: texts and truths are compared with `is`, two numbers with `within`, since measured values
 * are never exactly equal. The offered tolerance is one unit of the last digit written, otherwise 1 %.
 */
export function equalityMark(
  cursor: Cursor,
  mark: Span,
  negated: boolean,
  left: Expression,
  right: Expression,
  start: number,
): Expression {
  const written = cursor.text.slice(mark.start, mark.end);
  const words = saysWords(left) || saysWords(right);
  const numbers = !words && (isNumber(left) || isNumber(right));
  const is = negated ? 'is not' : 'is';
  const within = `${negated ? 'not within' : 'within'} ${tolerance(cursor.text, right)} of`;
  const offered = words ? [is] : numbers ? [within] : [is, within];
  const use = words ? [is] : numbers ? ['within … of'] : [is, 'within … of'];
  const fixes: Fix[] = offered.map((each) => ({
    title: `Write \`${each}\``,
    edits: [{ span: mark, newText: spaced(cursor.text, mark, each) }],
  }));
  report(cursor, diagnose('foreign-mark', mark, { written, use }, fixes));
  const span = { start, end: cursor.lastEnd };
  if (words) return { kind: 'is', negated, left, right, span };
  // Its tolerance is not known, so nothing more can be said about it.
  const hole: Expression = { kind: 'hole', span: { start: mark.end, end: mark.end } };
  return { kind: 'within', negated, left, tolerance: hole, right, span };
}

function saysWords(expression: Expression): boolean {
  return expression.kind === 'text' || expression.kind === 'truth';
}

function isNumber(expression: Expression): boolean {
  return expression.kind === 'quantity' || expression.kind === 'sign' || expression.kind === 'arithmetic';
}

function tolerance(text: string, right: Expression): string {
  if (right.kind !== 'quantity') return '1 %';
  const decimals = /^[-+]?\d*\.?(\d*)/.exec(text.slice(right.span.start, right.span.end))?.[1]?.length ?? 0;
  const number = decimals === 0 ? '1' : `0.${'0'.repeat(decimals - 1)}1`;
  const symbol = right.quantity.unit.symbol;
  return symbol === '1' ? number : `${number} ${symbol}`;
}

/** `a < b < c`: the offer says the same with one word, or with `and`. */
export function reportChain(
  cursor: Cursor,
  first: Expression,
  second: Expression,
  start: number,
  mark: Span,
): void {
  const { text } = cursor;
  const span = { start, end: cursor.lastEnd };
  const a = (of: Span): string => text.slice(of.start, of.end);
  let offer: string;
  if (first.kind === 'comparison' && second.kind === 'comparison') {
    const [x, y, z] = [a(first.left.span), a(first.right.span), a(second.right.span)];
    if (rises(first.relation) && rises(second.relation)) offer = `${y} between ${x} and ${z}`;
    else if (falls(first.relation) && falls(second.relation)) offer = `${y} between ${z} and ${x}`;
    else offer = `${x} ${first.relation} ${y} and ${y} ${second.relation} ${z}`;
  } else {
    const middle = rightSide(first);
    offer = `${text.slice(start, mark.start).trimEnd()} and ${middle === undefined || middle.kind === 'hole' ? '…' : a(middle.span)} ${text.slice(mark.start, span.end)}`;
  }
  const fixes = offer.includes('…')
    ? []
    : [{ title: `Write \`${offer}\``, edits: [{ span, newText: offer }] }];
  report(cursor, diagnose('chained-comparison', span, { offer }, fixes));
}

function rises(relation: Relation): boolean {
  return relation === '<' || relation === '<=';
}

function falls(relation: Relation): boolean {
  return relation === '>' || relation === '>=';
}

function rightSide(comparison: Expression): Expression | undefined {
  switch (comparison.kind) {
    case 'comparison':
    case 'is':
    case 'within':
      return comparison.right;
    case 'logic':
      return rightSide(comparison.right);
    default:
      return undefined;
  }
}

import { diagnose, type Found } from '../diagnostics/diagnostic.ts';
import { plainUnit } from '../quantity/unit.ts';
import type { Span } from '../text/span.ts';
import {
  breakOff,
  type Cursor,
  cursorOn,
  deep,
  enter,
  leave,
  mostLong,
  peek,
  report,
  take,
  took,
} from './cursor.ts';
import { closeBracket, hole, missing, missingWord, takeWord, unexpected } from './expect.ts';
import { reportForeign } from './foreignMarks.ts';
import { levelOf, levels } from './levels.ts';
import { comparison, negatesComparison, unchained } from './parseComparison.ts';
import { operand } from './parseOperand.ts';
import { isKeyword, type Mark, skipSpace, startsOperand, wordEnd } from './scan.ts';
import type { Expression, QuantityLiteral } from './tree.ts';

/**
 * Reads an expression. It always gives a tree, with holes for what is missing, so that hover and completion work
 * while someone types; every prefix of a text is read without throwing.
 * At most `mostLong` characters and `mostDeep` levels: whoever walks the tree may recurse.
 */
export function parseExpression(text: string): Found<Expression> {
  const { length } = text;
  if (length > mostLong) {
    const facts = { length, most: mostLong };
    const { value } = unread(length);
    return { value, diagnostics: [diagnose('expression-too-long', value.span, facts)] };
  }
  if (skipSpace(text, 0) === length) {
    const { value } = unread(length);
    return { value, diagnostics: [diagnose('empty-expression', value.span, {})] };
  }
  const cursor = cursorOn(text);
  const value = expression(cursor);
  if (peek(cursor) !== 'end') unexpected(cursor);
  if (cursor.tooDeep) return { ...unread(length), diagnostics: cursor.diagnostics };
  return { value, diagnostics: cursor.diagnostics };
}

/** A hole over all of it. */
function unread(length: number): { readonly value: Expression } {
  return { value: { kind: 'hole', span: { start: 0, end: length } } };
}

/** Everything up to what cannot belong to it: the end, a closing bracket, a comma, a word such as `then`. */
export function expression(cursor: Cursor): Expression {
  if (!enter(cursor)) return missing(cursor);
  const value = startsIf(cursor) ? conditional(cursor) : operation(cursor, levels.or);
  leave(cursor);
  return value;
}

/** Looks without `peek`, which seeks operators: most expressions start with an operand. */
function startsIf(cursor: Cursor): boolean {
  const { text } = cursor;
  const at = skipSpace(text, cursor.at);
  cursor.at = at;
  const capital = text.charCodeAt(at) === 73;
  if (!capital && text.charCodeAt(at) !== 105) return false;
  if (wordEnd(text, at) !== at + 2) return false;
  if (!capital) return text.charCodeAt(at + 1) === 102;
  const written = text.slice(at, at + 2);
  if (written.toLowerCase() !== 'if' || !startsOperand(text, at + 2)) return false;
  reportForeign(cursor, { written, means: 'if' });
  return true;
}

/** An operand and the operators behind it that bind at least as tightly as `level`. */
export function operation(cursor: Cursor, level: number): Expression {
  const start = skipSpace(cursor.text, cursor.at);
  cursor.at = start;
  let left = operand(cursor, level);
  // What has been built binds no tighter than its last operator: nothing multiplies a cut series without brackets.
  let tightest = levels.post;
  for (;;) {
    const mark = peek(cursor);
    const binds = levelOf(mark);
    if (binds < level || binds > tightest || (mark === 'not' && !negatesComparison(cursor))) return left;
    tightest = binds;
    const depth = cursor.depth;
    left = behind(cursor, mark, left, start);
    deep(cursor, Math.max(depth, cursor.depth) + 1);
    if (binds === levels.compare) left = unchained(cursor, left, start);
  }
}

/** One operator with what follows it. Leaves the depth of what follows in the cursor. */
function behind(cursor: Cursor, mark: Mark, left: Expression, start: number): Expression {
  switch (mark) {
    case 'or':
    case 'and': {
      takeOperator(cursor);
      const right = operation(cursor, mark === 'or' ? levels.and : levels.not);
      return { kind: 'logic', operator: mark, left, right, span: { start, end: cursor.lastEnd } };
    }
    case '+':
    case '-':
    case '*':
    case '/': {
      takeOperator(cursor);
      const right = operation(cursor, mark === '+' || mark === '-' ? levels.term : levels.unary);
      return { kind: 'arithmetic', operator: mark, left, right, span: { start, end: cursor.lastEnd } };
    }
    case '^':
      return power(cursor, left, start);
    case '.':
      return member(cursor, left, start);
    case '[': {
      const open = cursor.at;
      take(cursor);
      const index = expression(cursor);
      closeBracket(cursor, open, ']');
      return { kind: 'index', of: left, index, span: { start, end: cursor.lastEnd } };
    }
    case 'from': {
      takeOperator(cursor);
      const from = operation(cursor, levels.sum);
      const depth = cursor.depth;
      const to = operandAfter(cursor, 'to', 'x from 2 s to 10 s', levels.sum);
      cursor.depth = Math.max(depth, cursor.depth);
      return { kind: 'cut', of: left, start: from, end: to, span: { start, end: cursor.lastEnd } };
    }
    case 'where':
      return where(cursor, left, start);
    default:
      return comparison(cursor, mark, left, start);
  }
}

function takeOperator(cursor: Cursor): void {
  if (cursor.foreign !== undefined) reportForeign(cursor, cursor.foreign);
  take(cursor);
}

function power(cursor: Cursor, left: Expression, start: number): Expression {
  const signed = cursor.text[start] === '-' || cursor.text[start] === '+';
  if (
    left.kind === 'quantity' &&
    left.span.start === start &&
    (signed || left.quantity.unit.symbol !== '1')
  ) {
    const text = cursor.text.slice(start, left.span.end);
    const offer = `(${text})`;
    const fixes = [{ title: `Write \`${offer}\``, edits: [{ span: left.span, newText: offer }] }];
    report(
      cursor,
      diagnose('needs-brackets', left.span, { text: `${text} ^`, offer: `${offer} ^ …` }, fixes),
    );
  }
  const raised = cursor.foreign?.means;
  takeOperator(cursor);
  const end = cursor.lastEnd;
  if (raised === 'square' || raised === 'cube') {
    const right = plainLiteral(raised === 'square' ? 2 : 3, { start: cursor.lastStart, end });
    cursor.depth = 1;
    return { kind: 'arithmetic', operator: '^', left, right, span: { start, end } };
  }
  if (!enter(cursor)) return missing(cursor);
  const right = operation(cursor, levels.unary);
  leave(cursor);
  return { kind: 'arithmetic', operator: '^', left, right, span: { start, end: cursor.lastEnd } };
}

function plainLiteral(value: number, span: Span): QuantityLiteral {
  return {
    kind: 'quantity',
    quantity: { value, unit: plainUnit, kind: 'none', kindGiven: false, plusMinus: 0 },
    span,
  };
}

function member(cursor: Cursor, of: Expression, start: number): Expression {
  take(cursor);
  const { text } = cursor;
  const from = skipSpace(text, cursor.at);
  const end = wordEnd(text, from);
  const word = text.slice(from, end);
  cursor.depth = 1;
  if (word === '' || isKeyword(word)) {
    const after = text.slice(of.span.start, of.span.end);
    const facts = { after: after.length > 40 ? `…${after.slice(-39)}` : after, found: word };
    if (word === '') breakOff(cursor, 'missing-name', cursor.lastStart, cursor.lastEnd, facts);
    else breakOff(cursor, 'missing-name', from, end, facts);
    const nowhere = { start: cursor.lastEnd, end: cursor.lastEnd };
    return { kind: 'member', of, name: '', nameSpan: nowhere, span: { start, end: cursor.lastEnd } };
  }
  took(cursor, from, end);
  return { kind: 'member', of, name: word, nameSpan: { start: from, end }, span: { start, end } };
}

function where(cursor: Cursor, of: Expression, start: number): Expression {
  takeOperator(cursor);
  const open = cursor.at;
  if (peek(cursor) !== '(') {
    missingWord(cursor, '(', 'x where (y > 2000 rpm)');
    const condition = operation(cursor, levels.compare);
    return { kind: 'where', of, condition, span: { start, end: cursor.lastEnd } };
  }
  take(cursor);
  const condition = expression(cursor);
  closeBracket(cursor, skipSpace(cursor.text, open), ')');
  return { kind: 'where', of, condition, span: { start, end: cursor.lastEnd } };
}

function conditional(cursor: Cursor): Expression {
  const start = cursor.at;
  const form = 'if x > 10 % then 1 else 2';
  took(cursor, start, start + 2);
  const condition = expression(cursor);
  let depth = cursor.depth;
  const yes = takeWord(cursor, 'then', form) ? expression(cursor) : hole(cursor);
  depth = Math.max(depth, cursor.depth);
  const no = takeWord(cursor, 'else', form) ? expression(cursor) : hole(cursor);
  deep(cursor, Math.max(depth, cursor.depth) + 1);
  return { kind: 'conditional', condition, yes, no, span: { start, end: cursor.lastEnd } };
}

/** The operand behind a word that a form needs; a hole when the word is missing. */
export function operandAfter(
  cursor: Cursor,
  word: 'and' | 'of' | 'to',
  form: string,
  level: number,
): Expression {
  return takeWord(cursor, word, form) ? operation(cursor, level) : hole(cursor);
}

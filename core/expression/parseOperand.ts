import { diagnose } from '../diagnostics/diagnostic.ts';
import { scanQuantity } from '../quantity/scan.ts';
import { breakOff, type Cursor, deep, enter, leave, peek, report, take, took } from './cursor.ts';
import { closeBracket, missing, unexpected } from './expect.ts';
import { reportForeign } from './foreignMarks.ts';
import { levels } from './levels.ts';
import { expression, operation } from './parse.ts';
import { foreignMarkAt, isKeyword, skipSpace, startsNumber, startsOperand, wordEnd } from './scan.ts';
import type { Argument, Expression, TruthLiteral } from './tree.ts';

/** What an operator works on, at the cursor, where no white space stands: a literal, a name, a call, brackets, or one of these behind a sign or `not`. */
export function operand(cursor: Cursor, level: number): Expression {
  const { text, at } = cursor;
  cursor.depth = 1;
  if (startsNumber(text, at)) return quantityLiteral(cursor, at);
  const end = wordEnd(text, at);
  if (end > at) return word(cursor, at, end, level);
  switch (text[at]) {
    case '(':
      return group(cursor, at);
    case '-':
    case '+':
    case '−':
      if (startsNumber(text, at + 1)) return quantityLiteral(cursor, at);
      if (text[at] === '−') return foreignOperand(cursor, at);
      took(cursor, at, at + 1);
      return signed(cursor, at, text[at] === '-' ? '-' : '+');
    case '"':
    case "'":
      return textLiteral(cursor, at);
    case '“':
    case '”':
    case '„':
    case '‘':
    case '’':
      return bookText(cursor, at);
    default:
      return foreignOperand(cursor, at);
  }
}

/** `!x` and the typographic minus, each read as what it means here. */
function foreignOperand(cursor: Cursor, at: number): Expression {
  const foreign = foreignMarkAt(cursor.text, at);
  if (foreign?.means !== 'not' && foreign?.means !== '-') return missing(cursor);
  reportForeign(cursor, foreign);
  took(cursor, at, at + foreign.written.length);
  return foreign.means === 'not' ? negation(cursor, at) : signed(cursor, at, '-');
}

function quantityLiteral(cursor: Cursor, at: number): Expression {
  const scanned = scanQuantity(cursor.text, at, cursor.amongArguments ? 'arguments' : 'expression');
  if (scanned === undefined || scanned.end <= at) return missing(cursor);
  took(cursor, at, scanned.end);
  for (const each of scanned.diagnostics) report(cursor, each);
  if (!cursor.amongArguments && cursor.text.charCodeAt(scanned.end) === 44) return spacedComma(cursor, at);
  const span = { start: at, end: scanned.end };
  if (scanned.quantity === undefined) return { kind: 'hole', span };
  return { kind: 'quantity', quantity: scanned.quantity, span };
}

/** `14, 1 V` outside of a call: a decimal comma with a space behind it. */
function spacedComma(cursor: Cursor, at: number): Expression {
  const { text } = cursor;
  const written = /^[-+−]?\d+,\s*\d+(?![\d.,])/u.exec(text.slice(at, at + 40))?.[0];
  if (written === undefined) return { kind: 'hole', span: { start: at, end: cursor.lastEnd } };
  const offer = written.replace(/,\s*/u, '.');
  const span = { start: at, end: at + written.length };
  const fix = { title: `Write ${offer}`, edits: [{ span, newText: offer }] };
  report(cursor, diagnose('decimal-comma', span, { text: written, offers: [offer] }, [fix]));
  const digits = at + written.search(/\d+$/u);
  const end = scanQuantity(text, digits, 'expression')?.end ?? span.end;
  took(cursor, at, end);
  return { kind: 'hole', span: { start: at, end } };
}

function word(cursor: Cursor, at: number, end: number, level: number): Expression {
  const { text } = cursor;
  const name = text.slice(at, end);
  if (isKeyword(name)) {
    switch (name) {
      case 'true':
      case 'false':
      case 'yes':
      case 'no':
      case 'unclear':
        took(cursor, at, end);
        return { kind: 'truth', word: name satisfies TruthLiteral['word'], span: { start: at, end } };
      case 'not':
        if (level > levels.not) return misplaced(cursor, at, 'not …');
        took(cursor, at, end);
        return negation(cursor, at);
      case 'if':
        return misplaced(cursor, at, 'if … then … else …');
      default:
        return missing(cursor);
    }
  }
  if (name.length === 3 && name.toLowerCase() === 'not' && level <= levels.not && startsOperand(text, end)) {
    reportForeign(cursor, { written: name, means: 'not' });
    took(cursor, at, end);
    return negation(cursor, at);
  }
  took(cursor, at, end);
  const open = skipSpace(text, end);
  if (text.charCodeAt(open) === 40) return call(cursor, name, at, end, open);
  return { kind: 'name', name, span: { start: at, end } };
}

/** `not` and `if` may only stand where a whole statement may; elsewhere they need brackets. */
function misplaced(cursor: Cursor, at: number, form: string): Expression {
  const value = expression(cursor);
  const text = form;
  breakOff(cursor, 'needs-brackets', at, cursor.lastEnd, { text, offer: `(${text})` }, [
    {
      title: 'Put brackets around it',
      edits: [
        { span: { start: at, end: at }, newText: '(' },
        { span: { start: cursor.lastEnd, end: cursor.lastEnd }, newText: ')' },
      ],
    },
  ]);
  return value;
}

function negation(cursor: Cursor, start: number): Expression {
  if (!enter(cursor)) return missing(cursor);
  const of = operation(cursor, levels.not);
  leave(cursor);
  deep(cursor, cursor.depth + 1);
  return { kind: 'not', of, span: { start, end: cursor.lastEnd } };
}

function signed(cursor: Cursor, start: number, sign: '+' | '-'): Expression {
  if (!enter(cursor)) return missing(cursor);
  const of = operation(cursor, levels.power);
  leave(cursor);
  deep(cursor, cursor.depth + 1);
  return { kind: 'sign', sign, of, span: { start, end: cursor.lastEnd } };
}

function group(cursor: Cursor, at: number): Expression {
  took(cursor, at, at + 1);
  const around = cursor.amongArguments;
  cursor.amongArguments = false;
  const inner = expression(cursor);
  cursor.amongArguments = around;
  closeBracket(cursor, at, ')');
  return inner;
}

function call(cursor: Cursor, name: string, at: number, end: number, open: number): Expression {
  took(cursor, open, open + 1);
  const args: Argument[] = [];
  const around = cursor.amongArguments;
  cursor.amongArguments = true;
  let depth = 0;
  if (peek(cursor) !== ')' && cursor.mark !== 'end') {
    for (;;) {
      args.push(argument(cursor));
      depth = Math.max(depth, cursor.depth);
      const mark = peek(cursor);
      if (mark !== ',' && mark !== ')' && mark !== 'end' && !cursor.tooDeep) {
        unexpected(cursor);
        skipArgument(cursor);
      }
      if (peek(cursor) !== ',') break;
      take(cursor);
    }
  }
  cursor.amongArguments = around;
  closeBracket(cursor, open, ')');
  deep(cursor, depth + 1);
  return {
    kind: 'call',
    name,
    nameSpan: { start: at, end },
    arguments: args,
    span: { start: at, end: cursor.lastEnd },
  };
}

function argument(cursor: Cursor): Argument {
  const { text } = cursor;
  const from = skipSpace(text, cursor.at);
  const end = wordEnd(text, from);
  if (end > from && !isKeyword(text.slice(from, end))) {
    const mark = skipSpace(text, end);
    const next = text.charCodeAt(mark + 1);
    // `=` alone names a parameter; `==`, `=>` and `=<` are marks of other languages.
    if (text.charCodeAt(mark) === 61 && next !== 61 && next !== 62 && next !== 60) {
      took(cursor, mark, mark + 1);
      return { name: text.slice(from, end), nameSpan: { start: from, end }, value: expression(cursor) };
    }
  }
  return { name: undefined, nameSpan: undefined, value: expression(cursor) };
}

/** Goes on to the comma or bracket that ends the argument. */
function skipArgument(cursor: Cursor): void {
  const { text } = cursor;
  let open = 0;
  let quote = '';
  let at = cursor.at;
  for (; at < text.length; at++) {
    const each = text[at] ?? '';
    if (quote !== '') {
      if (each === quote) quote = '';
    } else if (each === '"' || each === "'") quote = each;
    else if (each === '(' || each === '[') open++;
    else if ((each === ')' || each === ']') && open-- === 0) break;
    else if (each === ',' && open === 0) break;
  }
  cursor.at = at;
}

/** A text in a book's quotes, as word processors put them; the fix puts plain ones. */
function bookText(cursor: Cursor, at: number): Expression {
  const { text } = cursor;
  const length = text.slice(at + 1).search(/[“”„‘’"]/u);
  const end = length < 0 ? text.length : at + 1 + length + 1;
  const inner = text.slice(at + 1, length < 0 ? end : end - 1);
  const span = { start: at, end };
  const written = text[at] ?? '';
  took(cursor, at, end);
  report(
    cursor,
    diagnose('foreign-mark', span, { written, use: ['"'] }, [
      { title: 'Put plain quotes', edits: [{ span, newText: `"${inner}"` }] },
    ]),
  );
  return { kind: 'text', text: inner, span };
}

function textLiteral(cursor: Cursor, at: number): Expression {
  const { text } = cursor;
  const close = text.indexOf(text[at] ?? '', at + 1);
  const end = close < 0 ? text.length : close + 1;
  took(cursor, at, end);
  if (close < 0) {
    const written = text.slice(at, end).trimEnd();
    const shown = written.length > 25 ? `${written.slice(0, 24)}…` : written;
    breakOff(cursor, 'unclosed-text', at, end, { text: shown });
  }
  return { kind: 'text', text: text.slice(at + 1, close < 0 ? end : close), span: { start: at, end } };
}

import { isDigit } from '../quantity/readNumber.ts';
import { operatorWords } from '../quantity/scan.ts';

/**
 * The marks and words of the expression language, read one at a time from a text.
 * What a mark means depends on where it stands, so the parser asks: an operator here, or an operand?
 */
export type Mark =
  | 'if'
  | 'then'
  | 'else'
  | 'or'
  | 'and'
  | 'not'
  | 'is'
  | 'between'
  | 'within'
  | 'in'
  | 'of'
  | 'from'
  | 'to'
  | 'where'
  | '<'
  | '<='
  | '>'
  | '>='
  | '+'
  | '-'
  | '*'
  | '/'
  | '^'
  | '.'
  | '..'
  | '('
  | ')'
  | '['
  | ']'
  | ','
  | '='
  | 'end'
  /** A mark of another language, a word that is no operator, or a character that means nothing here. */
  | 'other';

/** The words that cannot be names, because the language uses them. */
export const keywords: ReadonlySet<string> = new Set([
  ...operatorWords,
  'true',
  'false',
  'yes',
  'no',
  'unclear',
]);

const wordMarks: ReadonlyMap<string, Mark> = new Map(operatorWords.map((word) => [word, word]));

const longestKeyword = 7;

/** True for the word of the language that stands between two offsets. */
export function isKeyword(word: string): boolean {
  return word.length <= longestKeyword && keywords.has(word);
}

/** The offset of the next character that is no white space. */
export function skipSpace(text: string, from: number): number {
  const { length } = text;
  let at = from;
  while (at < length) {
    const unit = text.charCodeAt(at);
    if (unit > 32 && unit < 0xa0) break;
    if (unit === 32 || (unit >= 9 && unit <= 13) || unit === 0xa0 || unit === 0x202f || unit === 0xfeff) at++;
    else break;
  }
  return at;
}

/**
 * The offset behind the word that starts at `from`; `from` itself when none does. A name is letters, digits and `_`.
 * Nothing is read behind the end: one NaN there makes each code of a character a fraction, which takes twice as long.
 */
export function wordEnd(text: string, from: number): number {
  const { length } = text;
  let at = from;
  while (at < length) {
    const unit = text.charCodeAt(at);
    const belongs =
      (unit >= 97 && unit <= 122) ||
      (unit >= 65 && unit <= 90) ||
      unit === 95 ||
      (unit >= 48 && unit <= 57 && at > from) ||
      (unit > 127 && isLetter(text[at] ?? ''));
    if (!belongs) break;
    at++;
  }
  return at;
}

/** The pattern takes long to build, and most texts have nothing to ask it. */
const isLetter = (character: string): boolean => /[\p{L}\p{M}]/u.test(character);

/** True where a number starts: a digit, or a point with a digit behind it. */
export function startsNumber(text: string, at: number): boolean {
  const unit = text.charCodeAt(at);
  if (unit === 46) return isDigit(text.charCodeAt(at + 1));
  return isDigit(unit);
}

/** True where, behind a space or not, something stands that an operator could work on. */
export function startsOperand(text: string, from: number): boolean {
  const at = skipSpace(text, from);
  const each = text[at] ?? '';
  if (each === '(' || each === '"' || each === "'" || startsNumber(text, at)) return true;
  return wordEnd(text, at) > at && markAt(text, at) === 'other';
}

/** The mark at an offset where no white space stands. But for `end` and `other` it is as long as its own name. */
export function markAt(text: string, at: number): Mark {
  switch (text.charCodeAt(at)) {
    case 40:
      return '(';
    case 41:
      return ')';
    case 42:
      return text.charCodeAt(at + 1) === 42 ? 'other' : '*';
    case 43:
      return '+';
    case 44:
      return ',';
    case 45:
      return '-';
    case 46:
      return text.charCodeAt(at + 1) === 46 ? '..' : '.';
    case 47:
      return '/';
    case 60:
      return less(text, at);
    case 61:
      return oneEquals(text, at) ? '=' : 'other';
    case 62:
      return text.charCodeAt(at + 1) === 61 ? '>=' : '>';
    case 91:
      return '[';
    case 93:
      return ']';
    case 94:
      return '^';
    default:
      return wordMark(text, at);
  }
}

function less(text: string, at: number): Mark {
  const next = text.charCodeAt(at + 1);
  if (next === 62) return 'other';
  return next === 61 ? '<=' : '<';
}

function oneEquals(text: string, at: number): boolean {
  const next = text.charCodeAt(at + 1);
  return next !== 61 && next !== 60 && next !== 62;
}

function wordMark(text: string, at: number): Mark {
  if (at >= text.length) return 'end';
  const end = wordEnd(text, at);
  if (end === at) return 'other';
  return wordMarks.get(text.slice(at, end)) ?? 'other';
}

/** A mark that other languages use, and the word or mark that stands for it here. */
export interface ForeignMark {
  readonly written: string;
  /** `is` for equality; the parser decides between `is` and `within` by what follows. */
  readonly means: Mark | 'equal' | 'unequal' | 'square' | 'cube';
}

/** The mark of another language at an offset, longest first. */
export function foreignMarkAt(text: string, at: number): ForeignMark | undefined {
  for (const length of [3, 2, 1]) {
    const written = text.slice(at, at + length);
    const means = written.length === length ? foreign.get(written) : undefined;
    if (means !== undefined) return { written, means };
  }
  const end = wordEnd(text, at);
  const word = text.slice(at, end);
  const lower = word.toLowerCase();
  const means = lower === word ? undefined : wordMarks.get(lower);
  return means === undefined ? undefined : { written: word, means };
}

const foreign: ReadonlyMap<string, ForeignMark['means']> = new Map([
  ['===', 'equal'],
  ['!==', 'unequal'],
  ['==', 'equal'],
  ['=', 'equal'],
  ['!=', 'unequal'],
  ['<>', 'unequal'],
  ['≠', 'unequal'],
  ['&&', 'and'],
  ['&', 'and'],
  ['||', 'or'],
  ['|', 'or'],
  ['!', 'not'],
  ['¬', 'not'],
  ['≤', '<='],
  ['⩽', '<='],
  ['=<', '<='],
  ['≥', '>='],
  ['⩾', '>='],
  ['=>', '>='],
  ['×', '*'],
  ['·', '*'],
  ['⋅', '*'],
  ['∙', '*'],
  ['÷', '/'],
  ['∕', '/'],
  ['−', '-'],
  ['–', '-'],
  ['—', '-'],
  ['**', '^'],
  ['²', 'square'],
  ['³', 'cube'],
  ['…', '..'],
]);

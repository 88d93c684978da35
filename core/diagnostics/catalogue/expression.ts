import { didYouMean, type Rows } from '../row.ts';
import { type ExpressionTypeFacts, expressionTypeRows } from './expressionTypes.ts';

/** Findings about how an expression is written, and about what its parts may be combined with. */
export type ExpressionFacts = WritingFacts & ExpressionTypeFacts;

interface WritingFacts {
  readonly 'empty-expression': Record<never, never>;
  readonly 'expression-too-long': { readonly length: number; readonly most: number };
  readonly 'expression-too-deep': { readonly most: number };
  readonly 'missing-operand': { readonly after: string; readonly before: string };
  readonly 'missing-word': { readonly word: string; readonly form: string };
  readonly 'missing-name': { readonly after: string; readonly found: string };
  readonly 'unclosed-bracket': { readonly open: string; readonly close: string };
  readonly 'unclosed-text': { readonly text: string };
  readonly 'unexpected-text': { readonly text: string; readonly meant: readonly string[] };
  readonly 'needs-brackets': { readonly text: string; readonly offer: string };
  readonly 'foreign-mark': { readonly written: string; readonly use: readonly string[] };
  readonly 'chained-comparison': { readonly offer: string };
}

export const writingRows: Rows<WritingFacts> = {
  'empty-expression': {
    severity: 'error',
    title: 'Nothing to compute',
    say: () => 'An expression is due here and nothing stands here. Write a value, a name or a comparison.',
    why: 'An empty check would neither hold nor fail.',
    wrong: 'let:\n  baro_seen: ""',
    right: 'let:\n  baro_seen: before.idle.map + gauged.vacuum',
  },
  'expression-too-long': {
    severity: 'error',
    title: 'An expression that is too long',
    say: ({ length, most }) =>
      `This expression has ${length} characters; at most ${most} are read. Split it: give its parts names under \`let\`.`,
    why: 'A case from a stranger must not be able to stall the reader, and no one can check a formula of that length by eye.',
    wrong: 'expect:\n  - a + b + c + … > 0   # many thousand characters',
    right: 'let:\n  first: a + b + c\nexpect:\n  - first > 0',
  },
  'expression-too-deep': {
    severity: 'error',
    title: 'An expression that is nested too deeply',
    say: ({ most }) =>
      `Brackets and operators are nested more than ${most} deep here. Split it: give its parts names under \`let\`.`,
    why: 'A case from a stranger must not be able to exhaust the reader, and no one can follow brackets that deep.',
    wrong: 'expect:\n  - ((((… a …)))) > 0   # hundreds of brackets',
    right: 'let:\n  inner: a + b\nexpect:\n  - inner > 0',
  },
  'missing-operand': {
    severity: 'error',
    title: 'A value is missing',
    say: ({ after, before }) => {
      const where =
        before !== '' ? `before \`${before}\`` : after !== '' ? `after \`${after}\`` : 'at the start';
      return `Something is missing ${where}: a value with its unit, a name, or an expression in brackets.`;
    },
    why: 'An operator needs something to work on.',
    wrong: 'expect:\n  - before.idle.map + < 30 inHg',
    right: 'expect:\n  - before.idle.map + gauged.vacuum < 30 inHg',
  },
  'missing-word': {
    severity: 'error',
    title: 'A word of the form is missing',
    say: ({ word, form }) => `\`${word}\` is missing here. It is written \`${form}\`.`,
    why: 'Forms of several words need all of them, or the limits cannot be told apart.',
    wrong: 'expect:\n  - ltft_b1 between -10 %, 10 %',
    right: 'expect:\n  - ltft_b1 between -10 % and 10 %',
  },
  'missing-name': {
    severity: 'error',
    title: 'A name is missing behind the point',
    say: ({ after, found }) =>
      found === ''
        ? `A name is missing after \`${after}.\`: a state, a signal or a computed name.`
        : `\`${found}\` cannot be a name here: it is a word of the language. A name is due after \`${after}.\`.`,
    why: 'What stands behind the point says which of the cell’s values is meant.',
    wrong: 'expect:\n  - before. < 14 inHg',
    right: 'expect:\n  - before.idle.map < 14 inHg',
  },
  'unclosed-bracket': {
    severity: 'error',
    title: 'A bracket that is not closed',
    say: ({ open, close }) => `This \`${open}\` is never closed. Put \`${close}\` where it ends.`,
    why: 'Without the closing bracket the end of the part is a guess.',
    wrong: 'let:\n  total: (stft_b1 + ltft_b1',
    right: 'let:\n  total: (stft_b1 + ltft_b1)',
  },
  'unclosed-text': {
    severity: 'error',
    title: 'A text that is not closed',
    say: ({ text }) => `The text ${text} has no closing quote. Put one where the text ends.`,
    why: 'Without the closing quote the rest of the line is part of the text.',
    wrong: 'let:\n  drop: wire_drop("2 AWG, 6 ft, 150 A)',
    right: 'let:\n  drop: wire_drop("2 AWG", 6 ft, 150 A)',
  },
  'unexpected-text': {
    severity: 'error',
    title: 'Something that does not belong here',
    say: ({ text, meant }) => {
      if (meant.length > 0) return `\`${text}\` does not fit here.${didYouMean(meant)}`;
      if (text === ')' || text === ']') {
        return `This \`${text}\` closes nothing: no bracket is open here. Take it out or open one.`;
      }
      if (text === ',') {
        return 'A comma separates the arguments of a function and does not fit here. A number is written with a point; two statements are joined with `and`.';
      }
      if (/^[\p{L}\d_("'[]/u.test(text)) {
        return `\`${text}\` does not fit here: two things side by side need an operator between them (\`*\` to multiply, \`and\` to ask for both).`;
      }
      return `\`${text}\` does not fit here. Take it out, or put what stands behind it in a line of its own.`;
    },
    why: 'Things side by side are never multiplied: that would turn a slip into a number.',
    wrong: 'let:\n  flow: 2 (maf)',
    right: 'let:\n  flow: 2 * (maf)',
  },
  'needs-brackets': {
    severity: 'error',
    title: 'Brackets are needed to tell what is meant',
    say: ({ text, offer }) => `\`${text}\` can be read in two ways. Put brackets: \`${offer}\`.`,
    why: 'A reader of `3 s ^ 2` cannot know whether the seconds or the whole are squared.',
    wrong: 'let:\n  area: 3 inch ^ 2',
    right: 'let:\n  area: (3 inch) ^ 2',
  },
  'foreign-mark': {
    severity: 'error',
    title: 'A mark of another language',
    say: ({ written, use }) => `\`${written}\` is not used here. Write ${useOneOf(use)}.`,
    why: 'There is one way to write each comparison, so that every case reads alike. Two measured values are never exactly equal: `within` says how close they must be.',
    wrong: 'expect:\n  - loop == closed',
    right: 'expect:\n  - loop is "closed"',
  },
  'chained-comparison': {
    severity: 'error',
    title: 'Comparisons in a chain',
    say: ({ offer }) => `Comparisons do not chain: the second would compare a yes-or-no. Write \`${offer}\`.`,
    why: 'One statement compares two things; a value between two limits has its own word.',
    wrong: 'expect:\n  - 17 inHg < vacuum < 22 inHg',
    right: 'expect:\n  - vacuum between 17 inHg and 22 inHg',
  },
};

function useOneOf(use: readonly string[]): string {
  return use.map((each) => `\`${each}\``).join(' or ');
}

export const expressionRows: Rows<ExpressionFacts> = { ...writingRows, ...expressionTypeRows };

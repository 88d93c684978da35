import { keywords } from '../../../core/expression/scan.ts';
import { allSignals } from '../../../core/signals/lookup.ts';
import { functionNames } from '../../../core/study/functions.ts';
import { anyOf, include, type Rule, wordEnd, wordStart } from './rule.ts';

/** The language's words by what they do. Together they are all of its words. */
const choiceWords = ['if', 'then', 'else'] as const;
const constantWords = ['true', 'false', 'yes', 'no', 'unclear'] as const;
const operatorWords: readonly string[] = [...keywords].filter(
  (word) => ![...choiceWords, ...constantWords].some((other) => other === word),
);

/** Behind a point a word is a member, whatever else it means. */
const free = String.raw`(?<![\p{L}\p{M}\d_.])`;
const name = String.raw`[\p{L}_][\p{L}\p{M}\d_]*`;

/** Pattern of a signal's name, whole. */
export const signalPattern = `${anyOf(allSignals().map((signal) => signal.name))}${wordEnd}`;

export const expressionRules: readonly Rule[] = [
  // A value that starts with a quotation mark is quoted as a whole, for the file's sake.
  {
    begin: String.raw`(?<=:\s|-\s)"`,
    end: '"',
    name: 'meta.quoted.diag',
    beginCaptures: { 0: { name: 'punctuation.definition.string.begin.diag' } },
    endCaptures: { 0: { name: 'punctuation.definition.string.end.diag' } },
    patterns: [
      { match: String.raw`\\"(?:[^"\\]|\\[^"])*\\"`, name: 'string.quoted.double.diag' },
      include('expression-marks'),
    ],
  },
  {
    begin: String.raw`(?<=:\s|-\s)'`,
    end: "'(?!')",
    name: 'meta.quoted.diag',
    beginCaptures: { 0: { name: 'punctuation.definition.string.begin.diag' } },
    endCaptures: { 0: { name: 'punctuation.definition.string.end.diag' } },
    patterns: [include('expression-marks')],
  },
  include('expression-marks'),
];

export const expressionMarks: readonly Rule[] = [
  { match: String.raw`"(?:[^"\\]|\\.)*"`, name: 'string.quoted.double.diag' },
  include('amounts'),
  { match: `${free}${anyOf(choiceWords)}${wordEnd}`, name: 'keyword.control.diag' },
  { match: `${free}${anyOf(operatorWords)}${wordEnd}`, name: 'keyword.operator.word.diag' },
  { match: `${free}${anyOf(constantWords)}${wordEnd}`, name: 'constant.language.diag' },
  { match: `${free}${anyOf(functionNames())}(?=\\s*\\()`, name: 'support.function.diag' },
  { match: `${free}${name}(?=\\s*\\()`, name: 'entity.name.function.diag' },
  { match: `${free}${name}(?=\\s*=(?![=<>]))`, name: 'variable.parameter.diag' },
  { match: `${wordStart}${signalPattern}`, name: 'support.variable.signal.diag' },
  { match: `${wordStart}${name}`, name: 'variable.other.diag' },
  { match: '[<>]=?', name: 'keyword.operator.comparison.diag' },
  { match: '[-+*/^]', name: 'keyword.operator.arithmetic.diag' },
  { match: '=', name: 'keyword.operator.assignment.diag' },
  { match: String.raw`\.`, name: 'punctuation.accessor.diag' },
  { match: ',', name: 'punctuation.separator.comma.diag' },
  { match: '[()]', name: 'punctuation.parenthesis.diag' },
  { match: String.raw`[\[\]]`, name: 'punctuation.bracket.diag' },
];

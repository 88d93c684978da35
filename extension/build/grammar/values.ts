import { absences } from '../../../core/quantity/parse.ts';
import { allSignals } from '../../../core/signals/lookup.ts';
import { engineStates } from '../../../core/signals/states.ts';
import { signalPattern } from './expressions.ts';
import { anyKey, block, keyScope, type Named, sortAt, type Where } from './layout.ts';
import { unitPattern } from './quantities.ts';
import { anyOf, include, type Rule, wordEnd, wordStart } from './rule.ts';

/** A word or words as a whole value. */
function listed(words: Iterable<string>, scope: string): Rule {
  return { match: `(?<![^\\s"'\\[{,])${anyOf(words)}(?=\\s*(?:$|\\s#|["',\\]}]))`, name: scope };
}

export const wordsRule = (words: Iterable<string>): Rule => listed(words, 'constant.language.diag');

export const stateRule: Rule = listed(
  engineStates.map((state) => state.name),
  'constant.language.state.diag',
);

/** What stands behind a signal's name. */
export const readingRules: readonly Rule[] = [
  listed(absences, 'constant.language.absent.diag'),
  include('amounts'),
  wordsRule(allSignals().flatMap((signal) => signal.words ?? [])),
];

const reading = (where: Where) => [sortAt('reading', where)];

/** Keys of a value that is written with its circumstances, then members by cylinder or by label. */
export const readingParts: readonly Named[] = [
  { key: 'value', scope: keyScope, content: reading },
  { key: 'tool', scope: keyScope, content: (where) => [sortAt('text', where)] },
  { key: '(?:at|saw)', scope: keyScope, content: (where) => [sortAt('sentence', where)] },
  { key: anyKey, scope: 'variable.other.member.diag', content: reading },
];

/** Entries of `values`: a signal's name or a free one. */
export const valueEntries: readonly Named[] = [
  { key: signalPattern, scope: 'support.variable.signal.diag', content: reading },
  { key: anyKey, scope: 'variable.other.reading.diag', content: reading },
];

/** `{state: cruise, gear: 4, loop: closed}` */
export const stateParts: readonly Named[] = [
  { key: 'state', scope: keyScope, content: (where) => [stateRule, sortAt('text', where)] },
  { key: anyKey, scope: 'variable.other.member.diag', content: reading },
];

const unitAtEnd: Rule = { match: `(?<=\\s)${unitPattern}(?=\\s*$)`, name: 'keyword.other.unit.diag' };
const firstColumn = (key: string, scope: string): Rule => ({
  match: `^\\s+(${key})(?=\\s|$)`,
  captures: { 1: { name: scope } },
});
const notTaken: Rule = { match: String.raw`(?<=\s)[-–](?=\s|$)`, name: 'constant.language.absent.diag' };

/** A heading row, then a signal a row; the unit stands last. */
export const tableRules: readonly Rule[] = [
  block([
    {
      match: String.raw`^\s*(reading)(?=\s)(.*)$`,
      captures: {
        1: { name: 'keyword.other.heading.diag' },
        2: {
          patterns: [
            { match: String.raw`(?<=\s)unit(?=\s*$)`, name: 'keyword.other.heading.diag' },
            { match: String.raw`\S+`, name: 'variable.other.column.diag' },
          ],
        },
      },
    },
    firstColumn(signalPattern, 'support.variable.signal.diag'),
    firstColumn(String.raw`[\p{L}_][\p{L}\p{M}\d_]*`, 'variable.other.reading.diag'),
    unitAtEnd,
    notTaken,
    include('amounts'),
    {
      match: `${wordStart}${anyOf(allSignals().flatMap((signal) => signal.words ?? []))}${wordEnd}`,
      name: 'constant.language.diag',
    },
    { match: String.raw`[^\s]+`, name: 'string.unquoted.diag' },
  ]),
];

/** Samples written out: a heading, perhaps units, numbers. */
export const rowsRules: readonly Rule[] = [
  block([{ match: String.raw`^\s*[^\d\s.+−-].*$`, name: 'variable.other.column.diag' }, include('amounts')]),
  include('text-in-braces'),
];

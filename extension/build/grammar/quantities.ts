import { length } from '../../../core/quantity/dimension.ts';
import { unitRows } from '../../../core/quantity/unitTable.ts';
import { anyOf, type Rule, wordEnd } from './rule.ts';

/** Every spelling of every unit that stands by itself, but for the `1` of plain numbers. */
const unitSpellings: readonly string[] = unitRows
  .filter((row) => row.symbol !== '1')
  .flatMap((row) => [row.symbol, ...row.also]);

const lengths = unitRows
  .filter((row) => row.dimension === length)
  .flatMap((row) => [row.symbol, ...row.also]);

/** A unit with its power: `m²`, `m^2`, `s⁻¹`; only behind a length a plain digit, `cm3`. */
const power = String.raw`(?:\^-?[1-9]|⁻?[¹²³⁴-⁹])`;
const single = `(?:${anyOf(lengths)}[23](?![\\d])|${anyOf(unitSpellings)}${power}?)`;

/** Units joined by `/` or `·` (in ASCII `.`), as long as they go. */
export const unitPattern = `${single}(?:[/·⋅.]${single})*${wordEnd}`;

const number = String.raw`[-+−]?(?:\d+(?:\.\d+)?|\.\d+)`;
/** Not inside a word or another number; `17..22` is two numbers. */
const start = String.raw`(?:(?<=\.\.)|(?<![\p{L}\d_.]))`;

/** The words that say what a pressure or a temperature is. */
const qualifiers = ['absolute', 'gauge', 'vacuum', 'difference', 'point'] as const;
const qualifier = `(?:${qualifiers.join('|')})${wordEnd}`;

/** A number with its unit, `±` and the ends of a range. */
export const amountRules: readonly Rule[] = [
  {
    match: `${start}(${number})(?![\\d\\p{L}_]|\\.\\d)(?:[ ]*(${unitPattern})(?:[ ]+(${qualifier}))?)?`,
    captures: {
      1: { name: 'constant.numeric.diag' },
      2: { name: 'keyword.other.unit.diag' },
      3: { name: 'keyword.other.qualifier.diag' },
    },
  },
  // Written without a space: `12V`.
  {
    match: `${start}(${number})(${unitPattern})`,
    captures: {
      1: { name: 'constant.numeric.diag' },
      2: { name: 'keyword.other.unit.diag' },
    },
  },
  { match: String.raw`±|\+/-`, name: 'keyword.operator.plus-minus.diag' },
  { match: String.raw`\.\.`, name: 'keyword.operator.range.diag' },
  { match: `(?<![\\p{L}\\d_])at (?:least|most)${wordEnd}`, name: 'keyword.operator.range.diag' },
];

import { didYouMean, oneOf, type Rows } from '../row.ts';

/** Findings about what the parts of an expression may be combined with: found before anything is computed. */
export interface ExpressionTypeFacts {
  readonly 'wrong-exponent': { readonly text: string; readonly takes: string };
  readonly 'wrong-operand': { readonly of: string; readonly takes: string; readonly got: string };
  readonly 'never-said': {
    readonly word: string;
    readonly among: readonly string[];
    readonly nearest: readonly string[];
  };
  readonly 'unlike-shapes': { readonly left: string; readonly right: string };
  readonly 'unlike-captures': { readonly left: string; readonly right: string };
  readonly 'quote-word': { readonly word: string };
  readonly 'wrong-argument': {
    readonly name: string;
    readonly parameter: string;
    readonly meaning: string;
    readonly takes: string;
    readonly got: string;
    readonly offers: readonly string[];
  };
  readonly 'argument-of-another': {
    readonly name: string;
    readonly called: string;
    readonly parameter: string;
    readonly meaning: string;
    readonly signature: string;
  };
  readonly 'missing-argument': {
    readonly name: string;
    readonly parameter: string;
    readonly takes: string;
    readonly signature: string;
  };
  readonly 'missing-header-value': {
    readonly name: string;
    readonly parameter: string;
    readonly header: string;
  };
  readonly 'too-many-arguments': {
    readonly name: string;
    readonly most: number;
    readonly signature: string;
  };
  readonly 'argument-twice': { readonly name: string; readonly parameter: string };
  readonly 'argument-order': { readonly name: string };
  readonly 'unknown-parameter': {
    readonly name: string;
    readonly parameter: string;
    readonly nearest: readonly string[];
    readonly has: readonly string[];
  };
  readonly 'unknown-function': { readonly name: string; readonly nearest: readonly string[] };
}

const quoted = (words: readonly string[]): string => oneOf(words.map((word) => `\`${word}\``));
const offer = (offers: readonly string[]): string => (offers.length === 0 ? '' : ` Write ${quoted(offers)}.`);

export const expressionTypeRows: Rows<ExpressionTypeFacts> = {
  'wrong-exponent': {
    severity: 'error',
    title: 'An exponent that cannot be',
    say: ({ text, takes }) => `\`${text}\` cannot be an exponent here: ${takes}.`,
    why: 'The unit of a power must be known before anything is computed.',
    wrong: 'let:\n  size: bore ^ count(compression)',
    right: 'let:\n  size: bore ^ 2',
  },
  'wrong-operand': {
    severity: 'error',
    title: 'Something that this operator does not work on',
    say: ({ of, takes, got }) => `\`${of}\` takes ${takes}, and this is ${got}.`,
    why: 'Statements join with `and`, `or` and `not`; numbers with arithmetic; words are compared with `is`.',
    wrong: 'expect:\n  - not before.idle.map',
    right: 'expect:\n  - not before.idle.map > 14 inHg',
  },
  'never-said': {
    severity: 'error',
    title: 'A text that the other side can never be',
    say: ({ word, among, nearest }) => {
      const offer = nearest.map((each) => `"${each}"`);
      const close = offer.length === 0 ? '' : ` Did you mean ${oneOf(offer)}?`;
      return `It can never be "${word}".${close} It is one of ${among.map((each) => `"${each}"`).join(', ')}.`;
    },
    why: 'A misspelt text is equal to nothing, so that the statement fails quietly and a suspect may be ruled out by a slip of the hand.',
    wrong: 'expect:\n  - charging_pattern(14.2 V) is "chargin"',
    right: 'expect:\n  - charging_pattern(14.2 V) is "charging"',
  },
  'unlike-shapes': {
    severity: 'error',
    title: 'Values by different things',
    say: ({ left, right }) => `${left} and ${right} cannot be combined member by member.`,
    why: 'Values by cylinder pair with values by cylinder, and samples with samples of one capture; a single value goes with any of them.',
    wrong: 'let:\n  each: cranked.compression / before.rpm   # by cylinder, by state',
    right: 'let:\n  each: cranked.compression / before.idle.rpm',
  },
  'unlike-captures': {
    severity: 'error',
    title: 'Samples of different moments',
    say: ({ left, right }) =>
      `These samples were taken at different moments, those of \`${left}\` and those of \`${right}\`. Bring one to the other’s times with \`resample(x, like)\` first.`,
    why: 'Sample by sample means at the same moment. Two captures do not share a clock, nor do channels of one that have a time each.',
    wrong: 'let:\n  gap: front_log.o2_b1s1 - rear_log.o2_b1s2',
    right: 'let:\n  gap: front_log.o2_b1s1 - resample(rear_log.o2_b1s2, front_log.o2_b1s1)',
  },
  'quote-word': {
    severity: 'error',
    title: 'A word without quotes',
    say: ({ word }) => `\`${word}\` is no name here. As a word, write \`"${word}"\`.`,
    why: 'Without quotes a word is the name of a value.',
    wrong: 'expect:\n  - loop is closed',
    right: 'expect:\n  - loop is "closed"',
  },
  'wrong-argument': {
    severity: 'error',
    title: 'An argument of the wrong sort',
    say: ({ name, parameter, meaning, takes, got, offers }) =>
      `\`${name}\` takes ${takes} as \`${parameter}\` (${meaning}), and got ${got}.${offer(offers)}`,
    why: 'A formula fed with the wrong sort of number gives a number too, and nobody would notice.',
    wrong: 'let:\n  air: air_per_stroke(before.idle.rpm, before.idle.maf)',
    right: 'let:\n  air: air_per_stroke(before.idle.maf, before.idle.rpm)',
  },
  'argument-of-another': {
    severity: 'warning',
    title: 'An argument that is called like another parameter',
    say: ({ name, called, parameter, meaning, signature }) =>
      `A value called \`${called}\` stands where \`${name}\` takes \`${parameter}\` (${meaning}). The order is \`${signature}\`. If it is meant, write \`${parameter} = …\`.`,
    why: 'Two numbers of one sort change places, the formula gives a number all the same, and nobody would notice.',
    wrong: 'let:\n  lambda: lambda_from_gas(tail.co, tail.co2, tail.o2_gas, tail.hc)',
    right: 'let:\n  lambda: lambda_from_gas(tail.co2, tail.co, tail.o2_gas, tail.hc)',
  },
  'missing-argument': {
    severity: 'error',
    title: 'An argument is missing',
    say: ({ name, parameter, takes, signature }) =>
      `\`${name}\` needs \`${parameter}\`: ${takes}. It is written \`${signature}\`.`,
    why: 'The formula cannot be computed without it.',
    wrong: 'let:\n  total: total_trim(before.idle.stft_b1)',
    right: 'let:\n  total: total_trim(before.idle.stft_b1, before.idle.ltft_b1)',
  },
  'missing-header-value': {
    severity: 'warning',
    title: 'The header lacks what a formula needs',
    say: ({ name, parameter, header }) =>
      `\`${name}\` needs \`${header}\`, and the case header does not give it. Write it there, or give it here: \`${parameter} = …\`.`,
    why: 'Formulas about the engine take displacement, cylinders and fuel from the header, so that they stand in one place.',
    wrong: 'let:\n  ve: volumetric_efficiency(maf, rpm)   # no displacement in the header',
    right: 'engine:\n  displacement: 2.4 L',
  },
  'too-many-arguments': {
    severity: 'error',
    title: 'Too many arguments',
    say: ({ name, most, signature }) =>
      `\`${name}\` takes ${most === 1 ? 'one argument' : `at most ${most} arguments`}: \`${signature}\`.`,
    why: 'An argument that nothing takes would be lost without a word.',
    wrong: 'let:\n  total: total_trim(stft_b1, ltft_b1, ltft_b2)',
    right: 'let:\n  total: total_trim(stft_b1, ltft_b1)',
  },
  'argument-twice': {
    severity: 'error',
    title: 'An argument given twice',
    say: ({ name, parameter }) => `\`${name}\` is given \`${parameter}\` twice. Take one of them out.`,
    why: 'Which of the two counts would be a guess.',
    wrong: 'let:\n  total: total_trim(stft_b1, stft = 2 %)',
    right: 'let:\n  total: total_trim(stft_b1, ltft = 2 %)',
  },
  'argument-order': {
    severity: 'error',
    title: 'An argument without a name behind a named one',
    say: ({ name }) =>
      `In \`${name}\` an argument without a name stands behind one with a name. Give it its name too, or put it first.`,
    why: 'Places count from the left; behind a name they are a guess.',
    wrong: 'let:\n  total: total_trim(stft = 2 %, ltft_b1)',
    right: 'let:\n  total: total_trim(stft = 2 %, ltft = ltft_b1)',
  },
  'unknown-parameter': {
    severity: 'error',
    title: 'A parameter that the function does not have',
    say: ({ name, parameter, nearest, has }) =>
      `\`${name}\` has no parameter \`${parameter}\`.${didYouMean(nearest)} It has ${quoted(has)}.`,
    why: 'A misspelt name would silently leave the argument out.',
    wrong: 'let:\n  count: switch_rate(o2.front, levle = 0.45 V)',
    right: 'let:\n  count: switch_rate(o2.front, level = 0.45 V)',
  },
  'unknown-function': {
    severity: 'error',
    title: 'A function that does not exist',
    say: ({ name, nearest }) => `There is no function \`${name}\`.${didYouMean(nearest)}`,
    why: 'Functions come from one table; `casebook explain NAME` shows each with its formula and source.',
    wrong: 'let:\n  average: avg(cranked.compression)',
    right: 'let:\n  average: mean(cranked.compression)',
  },
};

/** A word of the expression language. */
export interface LanguageWord {
  readonly words: readonly string[];
  readonly meaning: string;
  readonly example: string;
}

/** Every word that expressions keep for themselves, once, in the order in which a case meets them. */
export const languageWords: readonly LanguageWord[] = [
  {
    words: ['between'],
    meaning: 'holds where a value lies in a range; both ends belong to it',
    example: 'before.stft_b1 between -10 % and 10 %',
  },
  {
    words: ['within', 'of'],
    meaning:
      'holds where two values differ by no more than a tolerance, in units or as a share of the second',
    example: 'idle.map + idle.vacuum within 0.5 inHg of koeo.map',
  },
  {
    words: ['in'],
    meaning: 'holds where a value lies in the limits that a reference gives',
    example: 'gauged.vacuum in spec.vacuum',
  },
  {
    words: ['is'],
    meaning: 'compares words: the outcome of a test, a reading that holds a word, a name',
    example: 'smoke.result is yes',
  },
  { words: ['yes', 'no', 'unclear'], meaning: 'the outcomes of a test', example: 'pinched.result is no' },
  {
    words: ['not'],
    meaning: 'the opposite of what follows; what is too close to call stays so',
    example: 'koeo.baro not within 5 kPa of station',
  },
  { words: ['and'], meaning: 'holds where both sides hold', example: 'fast > idle and drive > fast' },
  {
    words: ['or'],
    meaning: 'holds where one side holds',
    example: 'smoke.result is yes or pinched.result is yes',
  },
  { words: ['true', 'false'], meaning: 'what always holds and what never does', example: 'true' },
  {
    words: ['if', 'then', 'else'],
    meaning: 'takes one value where a condition holds and another where it does not; undecided where that is',
    example: 'if idle.rpm > 1000 rpm then 5 % else 10 %',
  },
  {
    words: ['where'],
    meaning: 'keeps the samples of a capture in which a condition holds',
    example: 'mean(run.ect where (run.rpm > 1000 rpm))',
  },
  {
    words: ['from', 'to'],
    meaning: 'keeps the samples of a capture between two times',
    example: 'mean(run.ect from 2 min to 4 min)',
  },
];

export function languageWord(name: string): LanguageWord | undefined {
  return languageWords.find((each) => each.words.includes(name));
}

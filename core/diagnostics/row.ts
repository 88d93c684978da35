export type Severity = 'error' | 'warning' | 'info';

/**
 * One kind of finding: how it is worded and why it exists.
 * `say` tells what is wrong here and what to do about it, in a technician's words;
 * the rest is its page (`casebook explain CODE`, the hover, the reference).
 */
export interface Row<F> {
  readonly severity: Severity;
  /** The page's heading: a few words, no full stop. */
  readonly title: string;
  readonly say: (facts: F) => string;
  /** Why this is reported: one to three sentences. */
  readonly why: string;
  /** A short example that is reported, as it would stand in a case. */
  readonly wrong: string;
  /** The same, put right. */
  readonly right: string;
}

/** The rows of a family of codes, one for each of its facts. */
export type Rows<Facts> = { readonly [C in keyof Facts]: Row<Facts[C]> };

/** "a, b or c"; the empty list gives the empty string. */
export function oneOf(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} or ${words[words.length - 1]}`;
}

/** " Did you mean `a` or `b`?", or nothing when there is no candidate. */
export function didYouMean(words: readonly string[]): string {
  return words.length === 0 ? '' : ` Did you mean ${oneOf(words.map((word) => `\`${word}\``))}?`;
}

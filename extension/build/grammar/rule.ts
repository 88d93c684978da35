/** A rule of a TextMate grammar, as far as this grammar needs them. */
export interface Rule {
  readonly name?: string;
  readonly contentName?: string;
  readonly include?: string;
  readonly match?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly while?: string;
  readonly captures?: Captures;
  readonly beginCaptures?: Captures;
  readonly endCaptures?: Captures;
  readonly patterns?: readonly Rule[];
}

export type Captures = Readonly<
  Record<string, { readonly name?: string; readonly patterns?: readonly Rule[] }>
>;

export interface Grammar {
  readonly name: string;
  readonly scopeName: string;
  readonly fileTypes: readonly string[];
  readonly patterns: readonly Rule[];
  readonly repository: Readonly<Record<string, { readonly patterns: readonly Rule[] }>>;
}

/** A text as a pattern of itself. */
export function escapePattern(text: string): string {
  return text.replace(/[\\^$.*+?()[\]{}|/#-]/g, '\\$&');
}

/** Any of these texts, the longest first so that none hides another that starts like it. */
export function anyOf(texts: Iterable<string>): string {
  const sorted = [...new Set(texts)].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
  return `(?:${sorted.map(escapePattern).join('|')})`;
}

/** No letter, digit or `_` beside a word: `\b` does not know `°`. */
export const wordStart = String.raw`(?<![\p{L}\p{M}\d_])`;
export const wordEnd = String.raw`(?![\p{L}\p{M}\d_])`;

export const include = (name: string): Rule => ({ include: `#${name}` });

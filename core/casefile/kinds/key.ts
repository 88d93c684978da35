/** What a key may hold. Everything that is a text in the file is kept as its `TextNode`, whatever it means. */
export type Holds =
  | TextSort
  | 'state'
  | 'map'
  | 'anything'
  | Words
  | { readonly list: Holds }
  | Named
  | Fixed;

/**
 * The sorts of text.
 * - sentence: free words, of one or several lines. Only here is text behind ` #` taken for words that were cut off.
 * - markdown: free words with Markdown.
 * - name: letters, digits and `_`, as expressions use it.
 * - text: anything else that the author words: a path, a column's heading, a fuel, a date.
 * - quantity, expression: read by their own parsers.
 * - table: rows of words, one a line.
 */
export type TextSort = 'sentence' | 'markdown' | 'name' | 'text' | 'quantity' | 'expression' | 'table';

/** One of a list of words. */
export interface Words {
  readonly words: readonly string[];
}

/** A map whose keys are the author's own. */
export interface Named {
  readonly named: Holds;
  /** Expressions use the keys: they must be names. */
  readonly inExpressions?: true;
}

/** A map with these keys and no others. */
export interface Fixed {
  readonly keys: Keys;
  /** A text standing alone means this key. */
  readonly short?: string;
}

export type Keys = Readonly<Record<string, Key>>;

export interface Key {
  readonly holds: Holds;
  /** What it is for, in one line. */
  readonly meaning: string;
  /** A value as it would stand in a case. */
  readonly example: string;
  /** Without it the map says nothing. */
  readonly required?: true;
  /** It names something, so that nothing in quotes (`""`) is no value. */
  readonly names?: true;
  /** Keys that say the same in another way: only one of them may stand in a map. */
  readonly insteadOf?: readonly string[];
  /** The property that it is read into, where that is not the key itself in one word (`if fails` → `ifFails`). */
  readonly property?: string;
}

/** A kind of cell. */
export interface Kind {
  readonly meaning: string;
  /** What the kind's own value holds: the title, a note's Markdown, the header's format version. */
  readonly title: TextSort;
  readonly keys: Keys;
}

/** The property that a key is read into. */
export function propertyOf(name: string, key: Key): string {
  return key.property ?? name.replace(/ (.)/g, (_, letter: string) => letter.toUpperCase());
}

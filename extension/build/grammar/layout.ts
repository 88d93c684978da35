import { type Captures, include, type Rule } from './rule.ts';

/**
 * YAML's layout as rules: entries, items, blocks and braces. A region ends where the text is no longer indented
 * deeper than what began it, whatever is open inside: a half-typed line spoils nothing behind its own entry.
 */

/** The key of an entry that may be called anything. */
export const anyKey = String.raw`(?:"(?:[^"\\]|\\.)*"|'(?:[^']|'')*'|[^\s#:"'\[\]{},&*!|>%@\x60-](?:[^:#]|:(?!\s|$)|(?<!\s)#)*?)`;
const anyKeyInBraces = String.raw`(?:"(?:[^"\\]|\\.)*"|'(?:[^']|'')*'|[^\s#:"'\[\]{},&*!|>%@\x60-][^:#,\[\]{}]*?)`;

/** Keys that the format knows. */
export const keyScope = 'entity.name.tag.diag';

const colon = { name: 'punctuation.separator.key-value.diag' };
const dash = { name: 'punctuation.definition.block.sequence.item.diag' };

/** Between braces and brackets a comma ends a text, and nothing is laid out by indentation. */
export type Where = 'block' | 'braces';

/** The name of the rules for a sort of value at such a place. */
export const sortAt = (sort: string, where: Where): Rule =>
  include(where === 'block' ? sort : `${sort}-in-braces`);

export interface Named {
  /** Pattern of the key, without groups. */
  readonly key: string;
  readonly scope: string;
  readonly content: (where: Where) => readonly Rule[];
  /** Its items may stand at its own indentation. */
  readonly list?: boolean;
}

/**
 * `key: …` on a line, perhaps the first entry of an item. It reaches over all lines that are indented deeper than
 * the key: groups 1, 3, 3, 4 are together as wide as what stands before it.
 */
export function entry({ key, scope, content, list = false }: Named): Rule {
  const deeper = String.raw`\1\3\3\4(?: +\S${list ? '|-(?:\\s|$)' : ''})`;
  return {
    begin: String.raw`^( *)(?:(-)( ))?( *)(${key})(\s*:)(?=\s|$)`,
    beginCaptures: { 2: dash, 5: { name: scope }, 6: colon },
    while: String.raw`^(?=${deeper}|\s*(?:#|$))`,
    patterns: content('block'),
  };
}

/** `- …` on a line, with the lines that are indented deeper. */
export function item(content: readonly Rule[]): Rule {
  return {
    begin: String.raw`^( *)(-)(?=\s|$)`,
    beginCaptures: { 2: dash },
    while: String.raw`^(?=\1 +\S|\s*(?:#|$))`,
    patterns: content,
  };
}

/** `|` or `>` with everything behind it in its entry: no comments, no entries, no items in there. */
export function block(content: readonly Rule[], contentName?: string): Rule {
  return {
    begin: String.raw`(?<=[:\s-])([|>][-+1-9]{0,2})(?=\s*(?:\s#.*)?$)(\s+#.*)?`,
    beginCaptures: {
      1: { name: 'keyword.control.block-scalar.diag' },
      2: { name: 'comment.line.number-sign.diag' },
    },
    end: '(?!)',
    ...(contentName === undefined ? {} : { contentName }),
    patterns: content,
  };
}

/** `[…]` with these rules for what stands between the commas, further brackets among them. */
export function listInBrackets(content: readonly Rule[]): Rule {
  return {
    begin: String.raw`\[`,
    end: String.raw`\]`,
    beginCaptures: { 0: { name: 'punctuation.definition.sequence.begin.diag' } },
    endCaptures: { 0: { name: 'punctuation.definition.sequence.end.diag' } },
    patterns: [comma, include('comment'), ...content],
  };
}

/** `{…}` with these entries. */
export function mapInBraces(entries: readonly Named[]): Rule {
  return {
    begin: String.raw`\{`,
    end: String.raw`\}`,
    beginCaptures: { 0: { name: 'punctuation.definition.mapping.begin.diag' } },
    endCaptures: { 0: { name: 'punctuation.definition.mapping.end.diag' } },
    patterns: [
      comma,
      include('comment'),
      ...entries.map(
        ({ key, scope, content }): Rule => ({
          begin: String.raw`(${key === anyKey ? anyKeyInBraces : key})(\s*:)(?=\s|$)`,
          beginCaptures: { 1: { name: scope }, 2: colon },
          end: '(?=[,}])',
          patterns: content('braces'),
        }),
      ),
    ],
  };
}

const comma: Rule = { match: ',', name: 'punctuation.separator.mapping.diag' };

export const commentRule: Rule = {
  match: String.raw`(?:^|(?<=\s))#.*$`,
  name: 'comment.line.number-sign.diag',
};

/** Text in quotation marks, whatever it says. */
export const quotedRules: readonly Rule[] = [
  {
    begin: '"',
    end: '"',
    name: 'string.quoted.double.diag',
    captures: quotes(),
    patterns: [{ match: String.raw`\\.`, name: 'constant.character.escape.diag' }],
  },
  {
    begin: "'",
    end: "'(?!')",
    name: 'string.quoted.single.diag',
    captures: quotes(),
    patterns: [{ match: "''", name: 'constant.character.escape.diag' }],
  },
];

function quotes(): Captures {
  return { 0: { name: 'punctuation.definition.string.diag' } };
}

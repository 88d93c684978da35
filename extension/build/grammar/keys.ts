import type { Holds, Keys } from '../../../core/casefile/kinds/key.ts';
import { type KindName, kinds } from '../../../core/casefile/kinds/kinds.ts';
import {
  anyKey,
  entry,
  item,
  keyScope,
  listInBrackets,
  mapInBraces,
  type Named,
  sortAt,
  type Where,
} from './layout.ts';
import { anyOf, include, type Rule } from './rule.ts';
import { wordsRule } from './values.ts';

/** The entries of a cell of this kind, its title first, from the table of kinds. */
export function cellEntries(name: KindName): readonly Rule[] {
  const { title, keys } = kinds[name];
  // A caution says all that it says in its own line: that is no heading.
  const heading = name === 'caution' ? 'sentence' : 'title';
  const content = title === 'text' ? 'version' : title === 'sentence' ? heading : title;
  return [
    entry({ key: name, scope: 'keyword.control.kind.diag', content: () => [include(content)] }),
    ...namedIn(keys).map(entry),
    entry(unknownKey),
  ];
}

/** What no table knows is still an entry. */
export const unknownKey: Named = {
  key: anyKey,
  scope: 'entity.name.tag.unknown.diag',
  content: (where) => [sortAt('text', where)],
};

function namedIn(keys: Keys): readonly Named[] {
  return Object.entries(keys).map(([name, { holds }]) => ({
    key: anyOf([name]),
    scope: keyScope,
    content: (where) => contentOf(holds, where),
    list: typeof holds === 'object' && 'list' in holds,
  }));
}

function contentOf(holds: Holds, where: Where): readonly Rule[] {
  if (typeof holds === 'string') return [sortAt(sortNames[holds] ?? holds, where)];
  if ('words' in holds) return [wordsRule(holds.words), sortAt('text', where)];
  if ('list' in holds) return listContent(holds.list, where);
  if ('named' in holds) {
    const { named } = holds;
    return mapContent(
      [{ key: anyKey, scope: scopeOfNames(named), content: (inner) => contentOf(named, inner) }],
      where,
    );
  }
  const short = holds.short === undefined ? undefined : holds.keys[holds.short]?.holds;
  return [...mapContent(namedIn(holds.keys), where), ...(short === undefined ? [] : contentOf(short, where))];
}

/** Entries, laid out or between braces. */
export function mapContent(entries: readonly Named[], where: Where): readonly Rule[] {
  return [...(where === 'block' ? entries.map(entry) : []), mapInBraces(entries), include('comment')];
}

/** The first entry of an item stands on the item's own line: entries come before items. */
function listContent(holds: Holds, where: Where): readonly Rule[] {
  const brackets = listInBrackets(contentOf(holds, 'braces'));
  if (where === 'braces') return [brackets, ...contentOf(holds, where)];
  const content = contentOf(holds, where);
  const isEntry = (rule: Rule) => rule.while !== undefined;
  // An expression may hold brackets of its own.
  const before = holds === 'expression' || typeof holds !== 'string' ? [] : [brackets];
  return [...content.filter(isEntry), item(content), ...before, ...content.filter((rule) => !isEntry(rule))];
}

/** Sorts of value whose rules have another name than theirs. */
const sortNames: Readonly<Record<string, string>> = { anything: 'rows', map: 'values' };

function scopeOfNames(holds: Holds): string {
  if (holds === 'expression') return 'variable.other.computed.diag';
  return holds === 'state' ? 'variable.other.column.diag' : 'variable.other.definition.diag';
}

import { expressionMarks, expressionRules } from './expressions.ts';
import { mapContent } from './keys.ts';
import { block, commentRule, listInBrackets, quotedRules, sortAt, type Where } from './layout.ts';
import { amountRules } from './quantities.ts';
import { include, type Rule } from './rule.ts';
import {
  readingParts,
  readingRules,
  rowsRules,
  stateParts,
  stateRule,
  tableRules,
  valueEntries,
} from './values.ts';

type Repository = Readonly<Record<string, { readonly patterns: readonly Rule[] }>>;

/** The rules for each sort of value, by name; between braces they are other ones. */
export function repository(): Repository {
  const named = Object.entries(sorts).flatMap(([sort, rules]) =>
    (['block', 'braces'] as const).map(
      (where) => [sortAt(sort, where).include?.slice(1) ?? sort, { patterns: rules(where) }] as const,
    ),
  );
  return Object.fromEntries([
    ...Object.entries(parts).map(([name, patterns]) => [name, { patterns }] as const),
    ...named,
  ]);
}

const parts: Readonly<Record<string, readonly Rule[]>> = {
  comment: [commentRule],
  quoted: quotedRules,
  amounts: amountRules,
  'expression-marks': expressionMarks,
  version: [{ match: String.raw`(?<=\s)\d+`, name: 'constant.numeric.version.diag' }, include('text')],
  markdown: [
    block([
      {
        begin: String.raw`^( +)(?=\S)`,
        while: String.raw`^(?:\1|\s*$)`,
        contentName: 'meta.embedded.block.markdown',
        patterns: [{ include: 'text.html.markdown' }],
      },
    ]),
    include('sentence'),
  ],
};

const amountsIn = (where: Where): readonly Rule[] => [
  include('comment'),
  include('amounts'),
  sortAt('text', where),
];

const sorts: Readonly<Record<string, (where: Where) => readonly Rule[]>> = {
  sentence: (where) => words(where, 'meta.sentence.diag'),
  title: (where) => words(where, 'entity.name.section.diag'),
  text: (where) => words(where, 'string.unquoted.diag'),
  name: () => [
    include('comment'),
    { match: String.raw`[\p{L}\d_]+`, name: 'variable.other.definition.diag' },
  ],
  quantity: amountsIn,
  reading: (where) => [
    ...mapContent(readingParts, where),
    listInBrackets([listInBrackets([include('amounts')]), include('amounts')]),
    ...readingRules,
    ...amountsIn(where),
  ],
  values: (where) => mapContent(valueEntries, where),
  state: (where) => [...mapContent(stateParts, where), stateRule, sortAt('text', where)],
  expression: (where) => [
    ...(where === 'block' ? [block([include('expression-marks')])] : []),
    include('comment'),
    ...expressionRules,
  ],
  table: (where) => (where === 'block' ? tableRules : [sortAt('text', where)]),
  rows: (where) => (where === 'block' ? rowsRules : [sortAt('text', where)]),
};

/** Free words, set in one scope: to the end of the line, between braces to the comma. */
function words(where: Where, scope: string): readonly Rule[] {
  if (where === 'braces') {
    const text = String.raw`[^\s,\[\]{}#][^,\[\]{}#]*?(?=\s*(?:[,\[\]{}]|$)|\s#)`;
    return [include('comment'), include('quoted'), { match: text, name: scope }];
  }
  return [
    block([{ match: String.raw`\S.*$`, name: scope }]),
    include('comment'),
    include('quoted'),
    { match: String.raw`[^\s#].*?(?=\s+#|\s*$)`, name: scope },
  ];
}

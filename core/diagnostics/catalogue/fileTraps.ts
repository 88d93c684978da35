import type { Rows } from '../row.ts';

/** The traps that YAML holds for a person who writes by hand. Each has its fix as an edit. */
export interface FileTrapsFacts {
  readonly 'colon-in-text': { readonly key: string; readonly before: string };
  readonly 'mark-starts-text': { readonly mark: string; readonly means: string };
  readonly 'minus-apart': { readonly text: string; readonly instead: string };
  readonly 'text-cut-off': { readonly lost: string };
  readonly 'remark-inside-text': { readonly lost: string; readonly key: string };
  readonly 'comma-makes-key': { readonly text: string; readonly lost: string };
  readonly 'comma-splits-number': { readonly text: string; readonly instead: string };
  readonly 'comma-splits-expression': { readonly text: string };
  readonly 'dashes-missing': { readonly key: string; readonly statements: number };
  readonly 'question-mark-alone': { readonly text: string };
  readonly 'tab-indentation': { readonly text: string };
  readonly 'first-line-deeper': { readonly text: string };
  readonly 'note-lines-dropped': { readonly lines: string };
}

export const fileTrapsRows: Rows<FileTrapsFacts> = {
  'colon-in-text': {
    severity: 'error',
    title: 'A colon inside a sentence',
    say: ({ key, before }) =>
      `The colon after \`${before}\` makes a second key out of the text of \`${key}\`. Put the text in quotes.`,
    why: 'A colon followed by a space parts a key from its value.',
    wrong: 'found: At the gasket: smoke',
    right: 'found: "At the gasket: smoke"',
  },
  'mark-starts-text': {
    severity: 'error',
    title: 'A sentence that starts with a special character',
    say: ({ mark, means }) =>
      `A text that starts with \`${mark}\` is read as ${means}. Put the whole text in quotes.`,
    why: 'Some characters mean something of their own at the start of a value.',
    wrong: 'found: "Half" of it was smoke',
    right: 'found: \'"Half" of it was smoke\'',
  },
  'minus-apart': {
    severity: 'error',
    title: 'A minus that stands apart from its number',
    say: ({ text, instead }) =>
      `\`${text}\` starts a list, since a space follows the minus. Write \`${instead}\`.`,
    why: 'A minus followed by a space starts an item of a list.',
    wrong: 'stft_b1: - 3 %',
    right: 'stft_b1: -3 %',
  },
  'text-cut-off': {
    severity: 'warning',
    title: 'Text cut off by #',
    say: ({ lost }) =>
      `\`${lost}\` is not read: a \`#\` after a space starts a remark. If it belongs to the text, put the text in quotes; if it is a remark, move it to a line of its own.`,
    why: 'In a free sentence a # is more often a number than a remark.',
    wrong: 'found: Smoke at injector #3',
    right: 'found: "Smoke at injector #3"',
  },
  'remark-inside-text': {
    severity: 'error',
    title: 'A # inside a text of several lines',
    say: ({ lost, key }) =>
      `\`${lost}\` is read as a remark, and the text of \`${key}\` ends there: a \`#\` after a space starts a remark. Write the text as a block, or move the remark to a line of its own.`,
    why: 'A text that is not a block ends at its first remark. In a free sentence a # is more often a number.',
    wrong: 'found: Smoke at injector # 3\n  and at the gasket',
    right: 'found: >-\n  Smoke at injector # 3\n  and at the gasket',
  },
  'comma-makes-key': {
    severity: 'error',
    title: 'A comma inside braces that starts a new key',
    say: ({ text, lost }) =>
      `Between braces the comma ends the text, and \`${lost}\` becomes a key of its own. Put \`${text}\` in quotes.`,
    why: 'Between braces, commas part the entries.',
    wrong: 'vehicle: {description: island fleet, van 14}',
    right: 'vehicle: {description: "island fleet, van 14"}',
  },
  'comma-splits-number': {
    severity: 'error',
    title: 'A decimal comma inside brackets',
    say: ({ text, instead }) =>
      `Between brackets the comma splits \`${text}\` in two. Numbers take a point: \`${instead}\`.`,
    why: 'Between brackets, commas part the entries. Numbers are written with a point everywhere in a case.',
    wrong: 'vacuum: {value: 16,4 inHg, tool: gauge}',
    right: 'vacuum: {value: 16.4 inHg, tool: gauge}',
  },
  'comma-splits-expression': {
    severity: 'error',
    title: 'An expression split between brackets',
    say: ({ text }) =>
      `Between brackets, a comma or a bracket inside the expression splits \`${text}\`. Put the expression in quotes, or each entry on a line of its own.`,
    why: 'Between braces, commas part the entries and brackets start lists.',
    wrong: 'let: {least: min(a, b)}',
    right: 'let:\n  least: min(a, b)',
  },
  'dashes-missing': {
    severity: 'error',
    title: 'Statements without their dashes',
    say: ({ key, statements }) =>
      `Under \`${key}\` stand ${statements} statements, one below the other, and they are read as one text. Start each with \`- \`.`,
    why: 'Lines that stand below each other without a mark are one text of several lines. A list has a dash in front of each entry.',
    wrong: 'check: Idle\nexpect:\n  2 > 1\n  3 > 1',
    right: 'check: Idle\nexpect:\n  - 2 > 1\n  - 3 > 1',
  },
  'question-mark-alone': {
    severity: 'error',
    title: 'A question mark that stands alone',
    say: ({ text }) =>
      `A \`?\` followed by a space or nothing, as in \`${text}\`, starts a kind of key that cases do not use. Put the text in quotes.`,
    why: 'In YAML a lone question mark announces a long key. For what was not measured write `not taken` or `unclear`.',
    wrong: 'found: ? maybe smoke',
    right: 'found: "? maybe smoke"',
  },
  'tab-indentation': {
    severity: 'error',
    title: 'A tab at the start of a line',
    say: ({ text }) =>
      `The line \`${text}\` is set in with a tab. Use spaces: editors differ in how wide a tab is.`,
    why: 'How far a line is set in says what it belongs to, and a tab has no fixed width.',
    wrong: 'values:\n\tmap: 29.6 inHg',
    right: 'values:\n  map: 29.6 inHg',
  },
  'first-line-deeper': {
    severity: 'error',
    title: 'The first line of a text is set in deeper than the rest',
    say: ({ text }) =>
      `\`${text}\` is set in less than the first line of the text above it, so it no longer belongs to it. Start the first line at the same column.`,
    why: 'The first line of a table or of a text after `|` says where all its lines start.',
    wrong: 'table: |\n    reading  idle\n  rpm      780',
    right: 'table: |\n  reading  idle\n  rpm      780',
  },
  'note-lines-dropped': {
    severity: 'error',
    title: 'Lines of a note that are not read',
    say: ({ lines }) =>
      `In this note \`${lines}\` would be dropped as a remark. Write \`note: |\` and set the whole note in by two spaces on the lines below.`,
    why: 'Outside of a block after `|`, a line that starts with # is a remark and not part of the note.',
    wrong: 'note:\n  # What we saw\n  Smoke at the gasket.',
    right: 'note: |\n  # What we saw\n  Smoke at the gasket.',
  },
};

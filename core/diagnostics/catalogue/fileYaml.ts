import type { Rows } from '../row.ts';

/** Findings about the bytes, the size and the YAML of a case file. */
export interface FileYamlFacts {
  readonly 'not-utf8': { readonly offset: number; readonly byte: string };
  readonly 'is-utf16': { readonly order: string };
  readonly 'file-too-long': { readonly length: string; readonly most: string };
  readonly 'too-many-cells': { readonly cells: number; readonly most: number };
  readonly 'cell-too-long': { readonly length: string; readonly most: string };
  readonly 'nested-too-deep': { readonly most: number };
  readonly 'too-many-entries': { readonly entries: number; readonly most: number };
  readonly 'too-many-members': { readonly name: string; readonly members: number; readonly most: number };
  readonly 'text-too-long': { readonly length: string; readonly most: string };
  readonly 'control-character': { readonly name: string };
  readonly 'merge-conflict': { readonly marker: string };
  readonly 'separator-slip': { readonly text: string; readonly isSetIn: boolean };
  readonly 'content-on-separator': { readonly text: string };
  readonly 'content-after-end': { readonly text: string };
  readonly directive: { readonly text: string };
  readonly anchor: { readonly text: string };
  readonly alias: { readonly text: string };
  readonly tag: { readonly text: string };
  readonly 'unclosed-quote': { readonly quote: string };
  readonly 'bracket-left-open': { readonly open: string; readonly close: string };
  readonly 'missing-comma': { readonly text: string };
  readonly 'bad-indentation': { readonly text: string };
  readonly 'not-an-entry': { readonly text: string };
  readonly 'unknown-escape': { readonly written: string };
  readonly unreadable: { readonly text: string };
}

export const fileYamlRows: Rows<FileYamlFacts> = {
  'not-utf8': {
    severity: 'error',
    title: 'The file is not UTF-8',
    say: ({ offset, byte }) =>
      `The file is not UTF-8: byte ${byte} at position ${offset} belongs to no character. Save the file again with the encoding UTF-8.`,
    why: 'A case is UTF-8, so that °, Ω and ± read the same on every machine. A guess at another encoding would change units without a word.',
    wrong: 'a file saved as Latin-1 in which ° is the single byte B0',
    right: 'the same file saved as UTF-8',
  },
  'is-utf16': {
    severity: 'error',
    title: 'The file is UTF-16',
    say: ({ order }) => `The file is UTF-16 (${order}). Save it again with the encoding UTF-8.`,
    why: 'A case is UTF-8, which every editor and version control reads as text.',
    wrong: 'a file that starts with the bytes FF FE',
    right: 'the same file saved as UTF-8',
  },
  'file-too-long': {
    severity: 'error',
    title: 'The file is too long for a case',
    say: ({ length, most }) =>
      `The file has ${length} characters; a case may have ${most}. Put sampled data into a capture file beside the case.`,
    why: 'A case is read by people. The bound keeps a wrong or damaged file from stopping the editor.',
    wrong: 'a recording of an hour pasted into the case',
    right: 'capture: The hour\nfile: captures/hour.csv',
  },
  'too-many-cells': {
    severity: 'error',
    title: 'Too many cells',
    say: ({ cells, most }) =>
      `The file has ${cells} cells; a case may have ${most}. Cut it into several cases.`,
    why: 'A case is read by people. The bound keeps a wrong or damaged file from stopping the editor.',
    wrong: 'a file of 10,000 lines `---`',
    right: 'a file a case',
  },
  'cell-too-long': {
    severity: 'error',
    title: 'A cell is too long',
    say: ({ length, most }) =>
      `This cell has ${length} characters; a cell may have ${most}. Cut it into several, or put sampled data into a file.`,
    why: 'A cell is checked as a whole at every keystroke. The bound keeps that quick.',
    wrong: 'a recording pasted into `rows`',
    right: 'file: captures/idle.csv',
  },
  'nested-too-deep': {
    severity: 'error',
    title: 'Nested too deeply',
    say: ({ most }) =>
      `Lists and maps stand more than ${most} deep inside each other here. No cell needs that: take some brackets or dashes away.`,
    why: 'The bound keeps a wrong or hostile file from stopping the editor.',
    wrong: 'values: [[[[[[[[ … ]]]]]]]]',
    right: 'values:\n  map: 29.6 inHg',
  },
  'too-many-entries': {
    severity: 'error',
    title: 'Too many entries in one list or map',
    say: ({ entries, most }) =>
      `There are ${entries} entries here; at most ${most} are read. Put long data into a capture file.`,
    why: 'The bound keeps a wrong or damaged file from stopping the editor.',
    wrong: 'a list of 100,000 items',
    right: 'file: captures/idle.csv',
  },
  'too-many-members': {
    severity: 'error',
    title: 'Too many members in one value',
    say: ({ name, members, most }) =>
      `\`${name}\` has ${members} members; at most ${most} are read. Split it over several cells, or put long data into a capture.`,
    why: 'Each member is computed with all the others, so that a value of thousands would stop the editor.',
    wrong: 'values:\n  drops: {a label: 0.1 V, and 1000 more: 0.2 V}',
    right: 'values:\n  drops: {battery post to starter stud: 0.35 V, engine to body: 0.04 V}',
  },
  'text-too-long': {
    severity: 'error',
    title: 'A text is too long',
    say: ({ length, most }) =>
      `This text has ${length} characters; at most ${most} are read. Cut it into several cells.`,
    why: 'The bound keeps a wrong or damaged file from stopping the editor.',
    wrong: 'a note that holds a picture as text',
    right: 'picture: The gasket\nfile: pictures/gasket.jpg',
  },
  'control-character': {
    severity: 'error',
    title: 'A character that is not text',
    say: ({ name }) =>
      `Here stands ${name}, a character that is not text and that no editor shows. Delete it.`,
    why: 'Such characters come in with text pasted from other programs. They are invisible and make two equal-looking words differ.',
    wrong: 'found: Smoke␀at the gasket',
    right: 'found: Smoke at the gasket',
  },
  'merge-conflict': {
    severity: 'error',
    title: 'A merge conflict was left in the file',
    say: ({ marker }) =>
      `The line \`${marker}\` is left over from joining two versions of this file. Decide which lines are right, delete the others and all the marker lines.`,
    why: 'Version control writes these lines when two people changed the same place. Only a person can tell which version is true.',
    wrong: '<<<<<<< mine\n  map: 13.1 inHg\n=======\n  map: 31.1 inHg\n>>>>>>> yours',
    right: '  map: 13.1 inHg',
  },
  'separator-slip': {
    severity: 'error',
    title: 'A line that nearly separates two cells',
    say: ({ text, isSetIn }) =>
      isSetIn
        ? `\`${text}\` is set in, so it belongs to the text above and separates nothing. Between two cells stands a line \`---\` that starts at the first column.`
        : `\`${text}\` separates nothing. Between two cells stands a line of three plain dashes: \`---\`.`,
    why: 'Word processors make one long dash of three, and a fourth is soon typed. The next cell would be read as a part of this one.',
    wrong: 'note: Rain all day.\n----\nnote: Sun on the second day.',
    right: 'note: Rain all day.\n---\nnote: Sun on the second day.',
  },
  'content-on-separator': {
    severity: 'error',
    title: 'Content on the line that separates cells',
    say: ({ text }) => `\`${text}\` stands on the \`---\` line and is not read. Move it to the next line.`,
    why: 'A line `---` only separates two cells. A remark after ` #` may stand there.',
    wrong: '--- note: Rain all day',
    right: '---\nnote: Rain all day',
  },
  'content-after-end': {
    severity: 'error',
    title: 'Content after the end mark',
    say: ({ text }) =>
      `\`${text}\` stands after a line \`...\`, which ends the cell, and is not read. Delete the \`...\` line, or start a new cell with \`---\`.`,
    why: 'In YAML a line of three dots ends a document.',
    wrong: 'note: Rain\n...\nreadings: Idle',
    right: 'note: Rain\n---\nreadings: Idle',
  },
  directive: {
    severity: 'error',
    title: 'A YAML directive',
    say: ({ text }) => `\`${text}\` is an instruction to a YAML program. A case has none: delete the line.`,
    why: 'A case reads the same everywhere; nothing in it may change how it is read.',
    wrong: '%YAML 1.2\n---\ndiag: 1\ncase: Hunts at idle',
    right: 'diag: 1\ncase: Hunts at idle',
  },
  anchor: {
    severity: 'error',
    title: 'A YAML anchor',
    say: ({ text }) =>
      `\`${text}\` is a YAML anchor, which cases do not use. If it is meant as text, put the whole value in quotes; otherwise delete it.`,
    why: 'A case says every value where it stands. Nothing is repeated from elsewhere.',
    wrong: 'found: &more smoke than before',
    right: 'found: "&more smoke than before"',
  },
  alias: {
    severity: 'error',
    title: 'A YAML alias',
    say: ({ text }) =>
      `\`${text}\` is a YAML alias, which cases do not use. If it is meant as text, put the whole value in quotes; otherwise write out what it stands for.`,
    why: 'A case says every value where it stands. Nothing is repeated from elsewhere.',
    wrong: 'found: *loud*',
    right: 'found: "*loud*"',
  },
  tag: {
    severity: 'error',
    title: 'A YAML tag',
    say: ({ text }) =>
      `\`${text}\` is a YAML tag, which cases do not use. If it is meant as text, put the whole value in quotes; otherwise delete it.`,
    why: 'Every value of a case is read as the text that stands there.',
    wrong: 'found: !important smoke',
    right: 'found: "!important smoke"',
  },
  'unclosed-quote': {
    severity: 'error',
    title: 'A quote that is not closed',
    say: ({ quote }) =>
      `The text that starts with ${quote} here is never closed. Put ${quote} where it ends, or take the first one away.`,
    why: 'Everything up to the next quote is read as one text.',
    wrong: 'found: "Smoke at the gasket',
    right: 'found: "Smoke at the gasket"',
  },
  'bracket-left-open': {
    severity: 'error',
    title: 'A bracket that is not closed',
    say: ({ open, close }) => `The \`${open}\` here has no \`${close}\`. Close it on the same line.`,
    why: 'Everything up to the closing bracket is read as one list or map.',
    wrong: 'tools:\n  gauge: {description: vacuum gauge',
    right: 'tools:\n  gauge: {description: vacuum gauge}',
  },
  'missing-comma': {
    severity: 'error',
    title: 'A comma or colon is missing',
    say: ({ text }) =>
      `At \`${text}\` a comma or a colon is missing. Between brackets, entries are parted by commas and a key from its value by \`: \`; a text with a colon stands in quotes.`,
    why: 'Between brackets, commas part the entries.',
    wrong: 'compression: {1: 181 psi 2: 178 psi}',
    right: 'compression: {1: 181 psi, 2: 178 psi}',
  },
  'bad-indentation': {
    severity: 'error',
    title: 'A line starts at the wrong column',
    say: ({ text }) =>
      `\`${text}\` starts at a column where nothing else starts. Give it the same number of spaces as the lines it belongs to.`,
    why: 'How far a line is set in says what it belongs to.',
    wrong: 'values:\n  map: 29.6 inHg\n ect: 68 °F',
    right: 'values:\n  map: 29.6 inHg\n  ect: 68 °F',
  },
  'not-an-entry': {
    severity: 'error',
    title: 'A line that is no entry',
    say: ({ text }) =>
      `\`${text}\` is no entry: a line is \`key: value\` with a space after the colon, or goes on from the line above when it is set in deeper.`,
    why: 'A cell is made of keys and values.',
    wrong: 'found: Smoke at the gasket\nand none elsewhere',
    right: 'found: Smoke at the gasket\n  and none elsewhere',
  },
  'unknown-escape': {
    severity: 'error',
    title: 'A backslash that means nothing',
    say: ({ written }) =>
      `\`${written}\` means nothing between double quotes. Write \`\\\\\` for a backslash, or use single quotes.`,
    why: 'Between double quotes a backslash starts a special character.',
    wrong: 'file: "captures\\idle.csv"',
    right: 'file: captures/idle.csv',
  },
  unreadable: {
    severity: 'error',
    title: 'Not readable from here',
    say: ({ text }) =>
      `From \`${text}\` on this cell cannot be read. Write one \`key: value\` a line; put a text with special characters in quotes.`,
    why: 'The cell is kept as it is. Every other cell still works.',
    wrong: 'found: Smoke\n, much of it',
    right: 'found: Smoke, much of it',
  },
};

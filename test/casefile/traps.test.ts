import { describe, expect, it } from 'vitest';
import type { Node } from '../../core/casefile/tree.ts';
import { cellOf, codes, findings, header, mended } from './found.ts';

interface Trap {
  readonly before: string;
  readonly code: string;
  /** Line and column in the cell. */
  readonly at: string;
  readonly covers: string;
  readonly says: string;
  readonly after: string;
}

/** What is written, what is said about it where, and what the offered fix makes of it. */
const traps: readonly Trap[] = [
  {
    before:
      'check: Idle\nexpect:\n  map < 14 inHg\n  vacuum between 17 inHg and 22 inHg\n  smoke.result is yes',
    code: 'dashes-missing',
    at: '3:3',
    covers: 'map < 14 inHg\n  vacuum between 17 inHg and 22 inHg\n  smoke.result is yes',
    says: 'Under `expect` stand 3 statements, one below the other, and they are read as one text. Start each with `- `.',
    after:
      'check: Idle\nexpect:\n  - map < 14 inHg\n  - vacuum between 17 inHg and 22 inHg\n  - smoke.result is yes',
  },
  {
    before: 'repair: Gasket\ndone: Replaced.\nverify: after.map < 14 inHg\n  after.vacuum > 17 inHg',
    code: 'dashes-missing',
    at: '3:9',
    covers: 'after.map < 14 inHg\n  after.vacuum > 17 inHg',
    says: 'Under `verify` stand 2 statements, one below the other, and they are read as one text. Start each with `- `.',
    after: 'repair: Gasket\ndone: Replaced.\nverify:\n  - after.map < 14 inHg\n  - after.vacuum > 17 inHg',
  },
  {
    before: 'readings: Idle\nvalues:\nmap: 13 inHg\nrpm: 700 rpm\nstate: warm idle',
    code: 'missing-value',
    at: '2:1',
    covers: 'values',
    says: 'Nothing stands after `values`, and `map` below it is no key of the cell. Set what belongs to `values` in by two spaces.',
    after: 'readings: Idle\nvalues:\n  map: 13 inHg\n  rpm: 700 rpm\nstate: warm idle',
  },
  {
    before: 'readings: Idle\nstate:warm idle\nvalues:\n  map: 13 inHg',
    code: 'not-an-entry',
    at: '2:1',
    covers: 'state:warm idle',
    says: '`state:warm idle` is no entry: a line is `key: value` with a space after the colon, or goes on from the line above when it is set in deeper.',
    after: 'readings: Idle\nstate: warm idle\nvalues:\n  map: 13 inHg',
  },
  {
    before: 'note: # Heading\n  Some words.',
    code: 'note-lines-dropped',
    at: '1:7',
    covers: '# Heading',
    says: 'In this note `# Heading` would be dropped as a remark. Write `note: |` and set the whole note in by two spaces on the lines below.',
    after: 'note: |\n  # Heading\n  Some words.',
  },
  {
    before: 'note: # Heading\nSome words.',
    code: 'note-lines-dropped',
    at: '1:7',
    covers: '# Heading',
    says: 'In this note `# Heading` would be dropped as a remark. Write `note: |` and set the whole note in by two spaces on the lines below.',
    after: 'note: |\n  # Heading\n  Some words.',
  },
  {
    before: 'test: Loom\ndid: Wiggled the loom # 3\n  near the battery',
    code: 'remark-inside-text',
    at: '2:23',
    covers: '# 3',
    says: '`# 3` is read as a remark, and the text of `did` ends there: a `#` after a space starts a remark. Write the text as a block, or move the remark to a line of its own.',
    after: 'test: Loom\ndid: >-\n  Wiggled the loom # 3\n  near the battery',
  },
  {
    before: 'question: Why\nask: What?\nchoices:\n  - no: never',
    code: 'colon-in-text',
    at: '4:7',
    covers: ':',
    says: 'The colon after `no` makes a second key out of the text of `-`. Put the text in quotes.',
    after: 'question: Why\nask: What?\nchoices:\n  - "no: never"',
  },
  {
    before: 'question: Why\nask: What?\nhints:\n  - Know "this": that',
    code: 'colon-in-text',
    at: '4:16',
    covers: ':',
    says: 'The colon after `Know "this"` makes a second key out of the text of `-`. Put the text in quotes.',
    after: 'question: Why\nask: What?\nhints:\n  - \'Know "this": that\'',
  },
  {
    before: 'repair: Plenum\nparts:\n  - gasket, plenum: 12\n  - part: clamp',
    code: 'colon-in-text',
    at: '3:19',
    covers: ':',
    says: 'The colon after `gasket, plenum` makes a second key out of the text of `-`. Put the text in quotes.',
    after: 'repair: Plenum\nparts:\n  - "gasket, plenum: 12"\n  - part: clamp',
  },
  {
    before: 'readings: x\nvalues:\n  vacuum: {value: 16 inHg # no, at: foo}',
    code: 'bracket-left-open',
    at: '3:11',
    covers: '{',
    says: 'The `{` here has no `}`. Close it on the same line.',
    after: 'readings: x\nvalues:\n  vacuum: {value: "16 inHg # no", at: foo}',
  },
  {
    before: 'test: Rough\nfound: "C:\\path" rough',
    code: 'mark-starts-text',
    at: '2:8',
    covers: '"',
    says: 'A text that starts with `"` is read as a text in quotes that ends at the next quote. Put the whole text in quotes.',
    after: 'test: Rough\nfound: \'"C:\\path" rough\'',
  },
  {
    before: 'test: Smoke\nfound: At the gasket: smoke',
    code: 'colon-in-text',
    at: '2:21',
    covers: ':',
    says: 'The colon after `At the gasket` makes a second key out of the text of `found`. Put the text in quotes.',
    after: 'test: Smoke\nfound: "At the gasket: smoke"',
  },
  {
    before: 'test: Smoke\nfound: He said "no": nothing',
    code: 'colon-in-text',
    at: '2:20',
    covers: ':',
    says: 'The colon after `He said "no"` makes a second key out of the text of `found`. Put the text in quotes.',
    after: 'test: Smoke\nfound: \'He said "no": nothing\'',
  },
  {
    before: 'test: Smoke\nfound: Smoke came out\n  at the gasket: much of it',
    code: 'colon-in-text',
    at: '3:16',
    covers: ':',
    says: 'The colon after `Smoke came out at the gasket` makes a second key out of the text of `found`. Put the text in quotes.',
    after: 'test: Smoke\nfound: >-\n  Smoke came out\n  at the gasket: much of it',
  },
  {
    before: 'test: Smoke\nfound: "Half" of it was smoke',
    code: 'mark-starts-text',
    at: '2:8',
    covers: '"',
    says: 'A text that starts with `"` is read as a text in quotes that ends at the next quote. Put the whole text in quotes.',
    after: 'test: Smoke\nfound: \'"Half" of it was smoke\'',
  },
  {
    before: 'test: Smoke\nfound: [half] a psi',
    code: 'mark-starts-text',
    at: '2:8',
    covers: '[',
    says: 'A text that starts with `[` is read as a list. Put the whole text in quotes.',
    after: 'test: Smoke\nfound: "[half] a psi"',
  },
  {
    before: 'test: Smoke\nfound: [half a psi]',
    code: 'mark-starts-text',
    at: '2:8',
    covers: '[',
    says: 'A text that starts with `[` is read as a list. Put the whole text in quotes.',
    after: 'test: Smoke\nfound: "[half a psi]"',
  },
  {
    before: 'test: Smoke\nfound: {half a psi}',
    code: 'mark-starts-text',
    at: '2:8',
    covers: '{',
    says: 'A text that starts with `{` is read as entries between braces. Put the whole text in quotes.',
    after: 'test: Smoke\nfound: "{half a psi}"',
  },
  {
    before: 'test: Smoke\nfound: %50 of it was gone',
    code: 'mark-starts-text',
    at: '2:8',
    covers: '%',
    says: 'A text that starts with `%` is read as an instruction to the reader. Put the whole text in quotes.',
    after: 'test: Smoke\nfound: "%50 of it was gone"',
  },
  {
    before: 'test: Smoke\nfound: @ idle only',
    code: 'mark-starts-text',
    at: '2:8',
    covers: '@',
    says: 'A text that starts with `@` is read as a reserved character. Put the whole text in quotes.',
    after: 'test: Smoke\nfound: "@ idle only"',
  },
  {
    before: 'test: Smoke\nfound: `hiss` at the hose',
    code: 'mark-starts-text',
    at: '2:8',
    covers: '`',
    says: 'A text that starts with ``` is read as a reserved character. Put the whole text in quotes.',
    after: 'test: Smoke\nfound: "`hiss` at the hose"',
  },
  {
    before: 'test: Smoke\nfound: *loud* hiss',
    code: 'mark-starts-text',
    at: '2:8',
    covers: '*',
    says: 'A text that starts with `*` is read as a reference to another value. Put the whole text in quotes.',
    after: 'test: Smoke\nfound: "*loud* hiss"',
  },
  {
    before: 'test: Smoke\nfound: - nothing at all',
    code: 'mark-starts-text',
    at: '2:8',
    covers: '-',
    says: 'A text that starts with `-` is read as an item of a list. Put the whole text in quotes.',
    after: 'test: Smoke\nfound: "- nothing at all"',
  },
  {
    before: 'test: Smoke\nfound: > 200 ohm',
    code: 'mark-starts-text',
    at: '2:8',
    covers: '>',
    says: 'A text that starts with `>` is read as the start of a text on the lines below. Put the whole text in quotes.',
    after: 'test: Smoke\nfound: "> 200 ohm"',
  },
  {
    before: 'test: Smoke\nfound: | a bar',
    code: 'mark-starts-text',
    at: '2:8',
    covers: '|',
    says: 'A text that starts with `|` is read as the start of a text on the lines below. Put the whole text in quotes.',
    after: 'test: Smoke\nfound: "| a bar"',
  },
  {
    before: 'test: Smoke\nfound: #3 leaks',
    code: 'mark-starts-text',
    at: '2:8',
    covers: '#',
    says: 'A text that starts with `#` is read as a remark. Put the whole text in quotes.',
    after: 'test: Smoke\nfound: "#3 leaks"',
  },
  {
    before: 'test: Smoke\nfound: *loud',
    code: 'alias',
    at: '2:8',
    covers: '*loud',
    says: '`*loud` is a YAML alias, which cases do not use. If it is meant as text, put the whole value in quotes; otherwise write out what it stands for.',
    after: 'test: Smoke\nfound: "*loud"',
  },
  {
    before: 'test: Smoke\nfound: &more than before',
    code: 'anchor',
    at: '2:8',
    covers: '&more',
    says: '`&more` is a YAML anchor, which cases do not use. If it is meant as text, put the whole value in quotes; otherwise delete it.',
    after: 'test: Smoke\nfound: "&more than before"',
  },
  {
    before: 'test: Smoke\nfound: !no smoke',
    code: 'tag',
    at: '2:8',
    covers: '!no',
    says: '`!no` is a YAML tag, which cases do not use. If it is meant as text, put the whole value in quotes; otherwise delete it.',
    after: 'test: Smoke\nfound: "!no smoke"',
  },
  {
    before: 'test: Smoke\nfound: ? perhaps',
    code: 'question-mark-alone',
    at: '2:8',
    covers: '?',
    says: 'A `?` followed by a space or nothing, as in `? perhaps`, starts a kind of key that cases do not use. Put the text in quotes.',
    after: 'test: Smoke\nfound: "? perhaps"',
  },
  {
    before: 'readings: Idle\nvalues:\n  stft_b1: - 3 %',
    code: 'minus-apart',
    at: '3:12',
    covers: '- 3 %',
    says: '`- 3 %` starts a list, since a space follows the minus. Write `-3 %`.',
    after: 'readings: Idle\nvalues:\n  stft_b1: -3 %',
  },
  {
    before: 'test: Smoke\nfound: Smoke at injector #3',
    code: 'text-cut-off',
    at: '2:26',
    covers: '#3',
    says: '`#3` is not read: a `#` after a space starts a remark. If it belongs to the text, put the text in quotes; if it is a remark, move it to a line of its own.',
    after: 'test: Smoke\nfound: "Smoke at injector #3"',
  },
  {
    before: 'readings: Idle\nvalues: {vacuum: {value: 16,4 inHg, tool: gauge}}',
    code: 'comma-splits-number',
    at: '2:26',
    covers: '16,4 inHg',
    says: 'Between brackets the comma splits `16,4 inHg` in two. Numbers take a point: `16.4 inHg`.',
    after: 'readings: Idle\nvalues: {vacuum: {value: 16.4 inHg, tool: gauge}}',
  },
  {
    before: 'reference: Curve\nvalues:\n  maf_curve: [[0,4 V, 2 g/s]]',
    code: 'comma-splits-number',
    at: '3:16',
    covers: '0,4 V',
    says: 'Between brackets the comma splits `0,4 V` in two. Numbers take a point: `0.4 V`.',
    after: 'reference: Curve\nvalues:\n  maf_curve: [[0.4 V, 2 g/s]]',
  },
  {
    before: 'check: Least\nlet: {least: min(a, b), most: c}',
    code: 'comma-splits-expression',
    at: '2:14',
    covers: 'min(a, b)',
    says: 'Between brackets, a comma or a bracket inside the expression splits `min(a, b)`. Put the expression in quotes, or each entry on a line of its own.',
    after: 'check: Least\nlet: {least: "min(a, b)", most: c}',
  },
  {
    before: 'check: First\nlet: {first: compression[1] - 2 psi}',
    code: 'comma-splits-expression',
    at: '2:14',
    covers: 'compression[1] - 2 psi',
    says: 'Between brackets, a comma or a bracket inside the expression splits `compression[1] - 2 psi`. Put the expression in quotes, or each entry on a line of its own.',
    after: 'check: First\nlet: {first: "compression[1] - 2 psi"}',
  },
  {
    before: 'check: Least\nexpect: [min(a, b) > 2, c > 1]',
    code: 'comma-splits-expression',
    at: '2:10',
    covers: 'min(a, b) > 2',
    says: 'Between brackets, a comma or a bracket inside the expression splits `min(a, b) > 2`. Put the expression in quotes, or each entry on a line of its own.',
    after: 'check: Least\nexpect: ["min(a, b) > 2", c > 1]',
  },
  {
    before: 'readings: Idle\nvalues:\n\tmap: 29.6 inHg\n\tect: 68 °F',
    code: 'tab-indentation',
    at: '3:1',
    covers: '\t',
    says: 'The line `map: 29.6 inHg` is set in with a tab. Use spaces: editors differ in how wide a tab is.',
    after: 'readings: Idle\nvalues:\n  map: 29.6 inHg\n  ect: 68 °F',
  },
  {
    before: 'test: Smoke\ndid: Half a psi.\n\tfound: Smoke.',
    code: 'tab-indentation',
    at: '3:1',
    covers: '\t',
    says: 'The line `found: Smoke.` is set in with a tab. Use spaces: editors differ in how wide a tab is.',
    after: 'test: Smoke\ndid: Half a psi.\nfound: Smoke.',
  },
  {
    before: 'readings: Idle\ntable: |\n    reading  idle  unit\n  rpm      780   rpm',
    code: 'first-line-deeper',
    at: '4:1',
    covers: '  rpm      780   rpm',
    says: '`rpm      780   rpm` is set in less than the first line of the text above it, so it no longer belongs to it. Start the first line at the same column.',
    after: 'readings: Idle\ntable: |\n  reading  idle  unit\n  rpm      780   rpm',
  },
  {
    before: 'note:\n  # What we saw\n  Smoke at the gasket.',
    code: 'note-lines-dropped',
    at: '2:3',
    covers: '# What we saw',
    says: 'In this note `# What we saw` would be dropped as a remark. Write `note: |` and set the whole note in by two spaces on the lines below.',
    after: 'note: |\n  # What we saw\n  Smoke at the gasket.',
  },
  {
    before: 'note: Smoke\n  # at the gasket\n  and elsewhere.',
    code: 'note-lines-dropped',
    at: '2:3',
    covers: '# at the gasket',
    says: 'In this note `# at the gasket` would be dropped as a remark. Write `note: |` and set the whole note in by two spaces on the lines below.',
    after: 'note: |\n  Smoke\n  # at the gasket\n  and elsewhere.',
  },
  {
    before: 'test: Smoke\n  found: Smoke.',
    code: 'bad-indentation',
    at: '2:3',
    covers: 'found: Smoke.',
    says: '`found: Smoke.` starts at a column where nothing else starts. Give it the same number of spaces as the lines it belongs to.',
    after: 'test: Smoke\nfound: Smoke.',
  },
  {
    before: 'test: Smoke\nfound: "Smoke\nresult: yes',
    code: 'unclosed-quote',
    at: '2:8',
    covers: '"',
    says: 'The text that starts with " here is never closed. Put " where it ends, or take the first one away.',
    after: 'test: Smoke\nfound: "Smoke"\nresult: yes',
  },
  {
    before: 'picture: It\nfile: "pictures\\gasket.jpg"',
    code: 'unknown-escape',
    at: '2:16',
    covers: '\\g',
    says: '`\\g` means nothing between double quotes. Write `\\\\` for a backslash, or use single quotes.',
    after: 'picture: It\nfile: "pictures\\\\gasket.jpg"',
  },
];

/** All words of a tree in order, for comparing what was lost. */
function words(node: Node | undefined): string {
  if (node === undefined) return '';
  if (node.kind === 'text') return node.text.trim();
  if (node.kind === 'list') return node.items.map(words).join(' ');
  return node.entries.map((entry) => `${entry.key.text} ${words(entry.value)}`).join(' ');
}

const letters = (text: string): string => text.replace(/[^\p{L}\p{N}]/gu, '');

describe('one statement of several lines', () => {
  it.each([
    'a > 3 V and\n  b > 4 V',
    'a > 3 V\n  and b > 4 V',
    'before.idle.map + gauged.vacuum\n  within 0.5 inHg of koeo.map',
    'trim between -10 %\n  and 10 %',
    'max(a,\n  b) < 3 V',
    'if a > 3 V\n  then b > 4 V else c > 5 V',
  ])('lacks no dashes: %j', (statement) => {
    expect(codes(`${header}check: x\nexpect:\n  ${statement}`)).toEqual([]);
  });
});

describe('a line that nearly separates two cells', () => {
  const between = (line: string): string =>
    `${header}test: Smoke\nfound: Leak\n${line}\nnote: It rained.\nfor: teacher`;

  it.each([
    ['----', '`----` separates nothing. Between two cells stands a line of three plain dashes: `---`.'],
    ['—', '`—` separates nothing. Between two cells stands a line of three plain dashes: `---`.'],
    [
      ' ---',
      '`---` is set in, so it belongs to the text above and separates nothing. Between two cells stands a line `---` that starts at the first column.',
    ],
  ])('is told alone, and mended by three dashes: %j', (line, says) => {
    expect(findings(between(line))).toEqual([{ code: 'separator-slip', at: '6:1', covers: line, says }]);
    expect(mended(between(line), 'separator-slip')).toBe(between('---'));
    expect(codes(between('---'))).toEqual([]);
  });

  it.each([
    'note: |\n  ----\n  ---\n  —\n',
    'test: Smoke\nfound: >-\n  Above\n\n  ---\n\n  below\n',
    'test: Smoke\nfound: "Above\n\n  ----\n\n  below"\n',
    'note: A dash — and two -- and three --- in words\n',
  ])('is none in a text that keeps its lines: %j', (text) => {
    expect(codes(header + text)).toEqual([]);
  });

  it('hides nothing that stands above it', () => {
    expect(codes(`${header}test: Smoke\nresult: perhaps\nfound: Leak\n  ---\nnote: It rained.`)).toEqual([
      'unknown-word',
      'separator-slip',
    ]);
  });
});

describe('a trap of handwriting', () => {
  for (const { before, code, at, covers, says, after } of traps) {
    it(`${code}: ${JSON.stringify(before)}`, () => {
      const [line, column] = at.split(':');
      const inFile = `${Number(line) + 3}:${column}`;
      expect(findings(header + before)).toEqual([{ code, at: inFile, covers, says }]);
      expect(mended(header + before, code)).toBe(header + after);
      expect(codes(header + after)).toEqual([]);
      expect(letters(words(cellOf(after).tree))).toBe(letters(before));
    });
  }

  it('comma in the header’s braces that makes a key', () => {
    const before = 'diag: 1\ncase: A case\nvehicle: {description: island fleet, van 14, year: 2011}';
    expect(findings(before)).toEqual([
      {
        code: 'comma-makes-key',
        at: '3:24',
        covers: 'island fleet, van 14',
        says: 'Between braces the comma ends the text, and `van 14` becomes a key of its own. Put `island fleet, van 14` in quotes.',
      },
    ]);
    const after = mended(before, 'comma-makes-key');
    expect(after).toBe('diag: 1\ncase: A case\nvehicle: {description: "island fleet, van 14", year: 2011}');
    expect(codes(after)).toEqual([]);
  });

  it('content on the line that separates cells', () => {
    const before = 'diag: 1\ncase: A case\n--- # a remark may stand here\nnote: One\n--- note: Two\n';
    expect(findings(before)).toEqual([
      {
        code: 'content-on-separator',
        at: '5:5',
        covers: 'note: Two',
        says: '`note: Two` stands on the `---` line and is not read. Move it to the next line.',
      },
    ]);
    expect(mended(before, 'content-on-separator')).toBe(
      'diag: 1\ncase: A case\n--- # a remark may stand here\nnote: One\n---\nnote: Two\n',
    );
  });

  it('several in one cell are each told', () => {
    const text = 'test: Smoke\nfound: He said: no\ndid: "Half" a psi\nat: the plenum: rear';
    expect(codes(header + text)).toEqual(['colon-in-text', 'mark-starts-text', 'colon-in-text']);
  });

  it('a colon in an item is none where a key was meant, or an expression', () => {
    expect(codes(`${header}question: x\nask: y\nchoices:\n  - choise: a leak`)).toContain('unknown-key');
    expect(codes(`${header}question: x\nask: y\nchoices:\n  - choice: a leak`)).toEqual([]);
    expect(codes(`${header}check: x\nexpect:\n  - rpm > 3 rpm: idle`)).toContain('unknown-key');
    expect(codes('diag: 1\ncase: x\nobjectives:\n  - Know this: that\ncodes:\n  - P0171: lean')).toEqual([
      'colon-in-text',
      'colon-in-text',
    ]);
    expect(codes(`${header}repair: x\ndone:\n  - replaced: gasket`).sort()).toEqual([
      'colon-in-text',
      'wrong-shape',
    ]);
  });

  it('a bracket is closed before the remark, and not at a # in quotes', () => {
    const open = (value: string): string => `${header}readings: x\nvalues:\n  vacuum: ${value}`;
    for (const [before, after] of [
      ['{value: 16 inHg, at: foo # no}', '{value: 16 inHg, at: "foo # no"}'],
      ['{value: 16 inHg, at: foo # no', '{value: 16 inHg, at: foo} # no'],
      ['{value: 16 inHg, at: "port # 3"', '{value: 16 inHg, at: "port # 3"}'],
      ["{value: 16 inHg, at: 'port # 3' # no", "{value: 16 inHg, at: 'port # 3'} # no"],
      ['{value: 16 inHg, at: port#3  ', '{value: 16 inHg, at: port#3}  '],
    ] as const) {
      expect(mended(open(before), 'bracket-left-open')).toBe(open(after));
      expect(codes(open(after))).toEqual([]);
    }
    const remark = open('{value: 16 inHg, at: foo # no}');
    expect(mended(remark, 'bracket-left-open', 1)).toBe(open('{value: 16 inHg, at: foo} # no}'));
  });

  it('a remark behind a quantity, a name or a listed word is none', () => {
    const text = 'readings: Idle\nas: idle # short\nwhen: before # it\nvalues:\n  map: 13.1 inHg # gauge';
    expect(codes(header + text)).toEqual([]);
  });

  it('that split a number or an expression leaves no half of it in the cell', () => {
    const readings = cellOf(
      'readings: x\nvalues: {vacuum: {value: 16,4 inHg, tool: gauge}, map: 13.1 inHg}',
    ).cell;
    expect(words(readings?.node)).toBe('readings x values vacuum tool gauge map 13.1 inHg');
    const check = cellOf(
      'check: x\nlet: {least: min(a, b), c: d}\nexpect:\n  - {expect: max(a, b) > 2}\n  - [min(a, b), c]\n  - c > 1',
    ).cell;
    expect(check?.kind === 'check' ? [check.let, check.expect].map((each) => each?.length) : []).toEqual([
      1, 1,
    ]);
    const curve = cellOf('reference: x\nvalues:\n  curve: [[0,4 V, 2 g/s], [1 V, 3 g/s]]').cell;
    expect(words(curve?.node)).toBe('reference x values curve 1 V 3 g/s');
    expect(codes(`${header}check: x\nexpect: {expect: max(a, b) > 2}`)).toEqual(['comma-splits-expression']);
  });

  it('in a title leaves no cell, or the cell without its title', () => {
    expect(codes(`${header}note: [a]`)).toEqual(['mark-starts-text']);
    expect(codes(`${header}note: # a`)).toEqual(['mark-starts-text']);
    expect(cellOf('note: # a').cell?.title.text).toBe('');
  });

  it('a remark for whoever edits the file is no line of a note', () => {
    expect(codes(`${header}note: Smoke.\n\n# still to be checked`)).toEqual([]);
    expect(codes(`${header}note: |\n  # Heading\n  Smoke.\n# still to be checked`)).toEqual([]);
  });

  it('a pair of plain numbers is no decimal comma', () => {
    expect(codes(`${header}reference: Curve\nvalues:\n  curve: [[1,2], [3,4]]`)).toEqual([]);
  });
});

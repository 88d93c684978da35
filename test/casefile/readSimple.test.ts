import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSimple } from '../../core/casefile/readSimple.ts';
import { readYaml } from '../../core/casefile/readYaml.ts';
import { splitStream } from '../../core/casefile/stream.ts';
import { exampleCase } from './exampleCase.ts';
import { suiteStreams } from './yamlSuite.ts';

/** What the quick reader reads, the yaml package reads without complaint and as the same tree. */
function expectSame(text: string): boolean {
  const quick = readSimple(text);
  if (quick === undefined) return false;
  const slow = readYaml(text, 32);
  const context = JSON.stringify(text);
  expect({ errors: slow.errors, marks: slow.marks }, context).toEqual({ errors: [], marks: [] });
  expect(quick, context).toEqual(slow.tree);
  return true;
}

/** No separators inside a cell. */
const asCell = (text: string): string => text.replace(/^(---|\.\.\.)/gm, 'x');

describe('the quick reader', () => {
  it('reads every cell of a usual case', () => {
    for (const cell of splitStream(exampleCase).cells) expect(expectSame(cell.text), cell.text).toBe(true);
    for (const cell of splitStream(exampleCase.replaceAll('\n', '\r\n')).cells) {
      expect(expectSame(cell.text), cell.text).toBe(true);
    }
  });

  it('agrees with the yaml package on the YAML test suite', () => {
    let read = 0;
    for (const { yaml } of suiteStreams) if (expectSame(asCell(yaml))) read++;
    expect(read).toBeGreaterThan(20);
  });

  it('agrees with the yaml package on every prefix of a case', () => {
    for (const cell of splitStream(exampleCase).cells) {
      for (let end = 0; end <= cell.text.length; end += 3) expectSame(cell.text.slice(0, end));
    }
  });

  it('agrees with the yaml package on a case with something put in anywhere', () => {
    const cells = splitStream(exampleCase).cells.map((cell) => cell.text);
    const insert = fc.constantFrom(
      ...':#\n\t\r ,-?"\'[]{}|>&*!%@`\\',
      ': ',
      ' #',
      '\n\n',
      '- ',
      '\n  ',
      '\r\n',
      '\n ',
    );
    fc.assert(
      fc.property(fc.constantFrom(...cells), fc.nat(), insert, fc.nat(3), (text, at, what, remove) => {
        const place = at % (text.length + 1);
        expectSame(asCell(text.slice(0, place) + what + text.slice(place + remove)));
      }),
      { numRuns: 3000 },
    );
  });

  it('agrees with the yaml package on entries put together at random', () => {
    let read = 0;
    fc.assert(
      fc.property(entries(0), fc.constantFrom('\n', '\n', '\r\n'), fc.boolean(), (lines, ending, last) => {
        if (expectSame(asCell(lines.join(ending) + (last ? ending : '')))) read++;
      }),
      { numRuns: 10_000 },
    );
    expect(read).toBeGreaterThan(800);
  });
});

const pick = fc.constantFrom;
const word = pick(
  'a',
  'b c',
  '-1',
  '1.5 V',
  'x#y',
  "it's",
  'a:b',
  '?x',
  ':x',
  '-',
  '?',
  'é°',
  '.',
  'a\tb',
  'a, b',
  'a]',
  '~',
);
const flow = pick(
  ...[
    '[]',
    '{}',
    '[a, b]',
    '{a: b, c: 1 V}',
    '[[1, 2], [3, 4]]',
    '{a: [b]}',
    '[a b,c]',
    '{a: "b"}',
    '[-1, - 2]',
  ],
  ...[
    '[a: b]',
    '{a:b}',
    '{a: b,}',
    '[ a ]',
    '{a: ,}',
    '[a',
    '{?: b}',
    "['a',b]",
    '{a : b}',
    '{"a": b}',
    '[a]b',
    '[a,\tb]',
  ],
);
const quoted = pick(
  '"a"',
  "'a'",
  '"a: # b"',
  "'it''s'",
  '"\\n\\"x"',
  '""',
  "''",
  '"\\u00e9"',
  '"a" b',
  '"a',
  "' a '",
  '" a\t"',
);
const odd = pick(
  '',
  ' ',
  ' # c',
  '\t',
  'a # c',
  'a\t# c',
  'a: b',
  '&a',
  '*a',
  '!t x',
  '%',
  '- a',
  'a #',
  'a:',
  '"a" # c',
  '[a] # c',
  '"a"#',
);
const value = fc.oneof(
  { weight: 9, arbitrary: word },
  { weight: 2, arbitrary: flow },
  { weight: 2, arbitrary: quoted },
  odd,
);
const header = pick(
  '|',
  '>',
  '|',
  '>',
  '|',
  '>',
  '|',
  '>',
  '|-',
  '>-',
  '|+',
  '|2',
  '| # c',
  '|x',
  '>\t',
  '|#',
  '>-2',
  '|- ',
);
const body = fc.array(
  pick('x', 'x: y', ' deeper', '', '', '- z', '# no remark', '\tq', '  ', '\t', '    ', 'x '),
  { maxLength: 5 },
);
const extra = pick<readonly string[]>(
  [],
  [],
  [],
  [],
  [],
  [],
  [],
  [],
  [],
  [''],
  ['# c'],
  ['  # c'],
  ['      # c'],
  ['  '],
  ['\t'],
  ['', ''],
);

/** Lines of a map, some of them wrong. */
function entries(depth: number): fc.Arbitrary<readonly string[]> {
  return fc
    .array(entry(depth), { minLength: 1, maxLength: depth === 0 ? 4 : 3 })
    .map((parts) => parts.flat());
}

function entry(depth: number): fc.Arbitrary<readonly string[]> {
  const key = pick(
    'a',
    'b c',
    'k1',
    'x-y',
    'a,b',
    'c',
    'd',
    'e',
    'f g',
    'h',
    '"k"',
    'a ',
    '- a',
    "it's",
    'a#b',
  );
  const colon = pick(':', ':', ':', ':', ':', ':', ':', ':', ':  ', ' :', '');
  const inline = fc.tuple(key, colon, value, extra).map(([k, c, v, e]) => [`${k}${c} ${v}`, ...e]);
  const folded = fc
    .tuple(
      key,
      word,
      fc.array(pick('  on', '  and on', '', ' on', '  # c', '  a: b', '  - a', '\ton', '  on # c'), {
        maxLength: 3,
      }),
    )
    .map(([k, v, more]) => [`${k}: ${v}`, ...more]);
  const block = fc
    .tuple(key, header, pick(2, 2, 2, 2, 2, 4, 1, 0), body, extra)
    .map(([k, h, n, lines, e]) => [`${k}: ${h}`, ...lines.map((each) => ' '.repeat(n) + each), ...e]);
  if (depth >= 3) return fc.oneof(inline, block);
  const indent = pick(2, 2, 2, 2, 4, 1, 3, 0);
  const below = fc
    .tuple(key, extra, indent, fc.oneof(entries(depth + 1), items(depth + 1)))
    .map(([k, e, n, lines]) => [`${k}:`, ...e, ...lines.map((each) => ' '.repeat(n) + each)]);
  return fc.oneof({ weight: 3, arbitrary: inline }, folded, block, { weight: 2, arbitrary: below });
}

function items(depth: number): fc.Arbitrary<readonly string[]> {
  const single = fc.tuple(value, extra).map(([v, e]) => [`- ${v}`, ...e]);
  const compact = fc
    .tuple(pick('- ', '- ', '-   ', '-\n  ', '- - '), entries(depth))
    .map(([dash, lines]) => lines.map((each, index) => (index === 0 ? dash : '  ') + each));
  const block = fc
    .tuple(header, pick(2, 2, 4, 1), body)
    .map(([h, n, lines]) => [`- ${h}`, ...lines.map((each) => ' '.repeat(n) + each)]);
  return fc
    .array(fc.oneof(single, compact, block), { minLength: 1, maxLength: 3 })
    .map((parts) => parts.flat());
}

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isScalar, parseDocument, visit } from 'yaml';
import { readYaml } from '../../core/casefile/readYaml.ts';
import { type Node, sourceOffset, sourceSpan, type TextNode } from '../../core/casefile/tree.ts';
import { suiteStreams } from './yamlSuite.ts';

function textNodes(node: Node | undefined, found: TextNode[] = []): TextNode[] {
  if (node === undefined) return found;
  if (node.kind === 'text') found.push(node);
  else if (node.kind === 'list') for (const item of node.items) textNodes(item, found);
  else for (const { key, value } of node.entries) textNodes(key, textNodes(value, found) && found);
  return found;
}

/** The value of `a: …`. */
function textAfter(text: string): TextNode {
  const { tree, errors } = readYaml(text, 32);
  expect(errors, text).toEqual([]);
  const node = tree?.kind === 'map' ? tree.entries[0]?.value : undefined;
  if (node?.kind !== 'text') throw new Error('no text');
  return node;
}

/** Where a word of the decoded text stands in the file, as the file writes it. */
function written(text: string, word: string): string {
  const node = textAfter(text);
  const at = node.text.indexOf(word);
  expect(at, JSON.stringify(node.text)).toBeGreaterThanOrEqual(0);
  const { start, end } = sourceSpan(node, { start: at, end: at + word.length });
  return text.slice(start, end);
}

describe('a decoded text knows its places', () => {
  it.each([
    ['a: one two', 'two', 'two'],
    ['a: one\n  two three', 'three', 'three'],
    ['a: one\n  two', 'one two', 'one\n  two'],
    ['a: one  \r\n\r\n   two', 'two', 'two'],
    ["a: 'it''s two'", 'two', 'two'],
    ["a: 'it''s two'", "it's", "it''s"],
    ["a: 'one\n  two'", 'two', 'two'],
    ['a: "one\\ttwo"', 'two', 'two'],
    ['a: "one \\u00e9 two"', 'two', 'two'],
    ['a: "one \\u00e9"', 'é', '\\u00e9'],
    ['a: "one\\\n   two"', 'two', 'two'],
    ['a: "one  \n\n  two"', 'two', 'two'],
    ['a: |\n  one\n  two\n', 'two', 'two'],
    ['a: |\r\n  one\r\n  two\r\n', 'two', 'two'],
    ['a: |\r  one\r  two\r', 'two', 'two'],
    ['a: |2\n    one\n  two\n', '  one', '  one'],
    ['a: >\n  one\n  two\n\n  three\n', 'two', 'two'],
    ['a: >\n  one\n  two\n\n  three\n', 'three', 'three'],
    ['a: >-\n  one\n    deeper\n  three\n', 'deeper', 'deeper'],
  ])('%j: %j', (text, word, expected) => {
    expect(written(text, word)).toBe(expected);
  });

  it('offsets beyond its end stay at its end', () => {
    const node = textAfter('a: |\n  one\n\nb: 2');
    expect(node.span).toEqual({ start: 3, end: 10 });
    expect(sourceOffset(node, 99)).toBe(10);
  });

  it('each visible character of a text stands where it is said to, unless it was escaped', () => {
    for (const { id, yaml, invalid } of suiteStreams) {
      if (invalid) continue;
      for (const node of textNodes(readYaml(yaml, 32).tree)) {
        for (let i = 0; i < node.text.length; i++) {
          const unit = node.text[i] ?? '';
          const there = yaml[sourceOffset(node, i)] ?? '';
          if (/\s/.test(unit) || there === '\\' || node.style === 'double quoted') continue;
          expect(there, `${id} ${JSON.stringify(node.text)} ${i}`).toBe(unit);
        }
      }
    }
  });
});

describe('decoding gives what the yaml package gives', () => {
  function expectSame(text: string, id: string): number {
    const document = parseDocument(text, { schema: 'failsafe', uniqueKeys: false, logLevel: 'silent' });
    if (document.errors.length > 0) return 0;
    const theirs: string[] = [];
    visit(document, {
      // A key that is a list or a map is a text here.
      Pair: (_, pair) => (isScalar(pair.key) ? undefined : visit.SKIP),
      Scalar: (_, node) => {
        if (node.range) theirs.push(`${node.range[0]} ${JSON.stringify(node.source)}`);
      },
    });
    const ours = textNodes(readYaml(text, 32).tree).map(
      (node) => `${node.span.start} ${JSON.stringify(node.text)}`,
    );
    for (const each of theirs) {
      // A missing value has another place here.
      if (!each.endsWith(' ""')) expect(ours, id).toContain(each);
    }
    return theirs.length;
  }

  it('in the YAML test suite', () => {
    let compared = 0;
    for (const { id, yaml, invalid } of suiteStreams) {
      if (!invalid && !/^---|[?*]/m.test(yaml)) compared += expectSame(yaml, id);
    }
    expect(compared).toBeGreaterThan(300);
  });

  it('for random quoted and folded texts', () => {
    const piece = fc.constantFrom(
      ...[
        'a',
        'b c',
        ' ',
        '  ',
        '\n',
        '\n ',
        '\n\n',
        '\n  ',
        "''",
        '\\n',
        '\\"',
        '\\\\',
        '\\x41',
        '\\u263a',
        '\\\n',
        '\t',
        '#',
        ': ',
      ],
    );
    const style = fc.constantFrom('"', "'", '|', '>', '|-', '>-', '|+', '>+', '|1', '>2-', '');
    let compared = 0;
    fc.assert(
      fc.property(style, fc.array(piece, { maxLength: 12 }), fc.boolean(), (mark, pieces, crlf) => {
        const words = pieces.join('').replaceAll('\n', '\n ');
        const quoted = mark === '"' || mark === "'";
        const body = quoted ? `${mark}${words}${mark}` : mark === '' ? `x${words}` : `${mark}\n ${words}`;
        const text = `a: ${body}\nb: c\n`;
        compared += expectSame(crlf ? text.replaceAll('\n', '\r\n') : text, JSON.stringify(text));
      }),
      { numRuns: 4000 },
    );
    expect(compared).toBeGreaterThan(4000);
  });
});

import { describe, expect, it } from 'vitest';
import { parseExpression } from '../../core/expression/parse.ts';
import { everyParse } from '../support/everyParse.ts';
import { randomFrom, sentence } from '../support/expressionSentence.ts';
import { spell } from '../support/expressionTree.ts';

/**
 * The grammar read by a second, exhaustive recogniser: at most one tree exists for any sequence of tokens,
 * and the parser finds it, or finds fault where none exists.
 */
const tokens = [
  'a',
  'b',
  'f',
  '1',
  '2 V',
  '-3',
  '"t"',
  'yes',
  '(',
  ')',
  '(',
  ')',
  '[',
  ']',
  '.',
  ',',
  '=',
  '+',
  '-',
  '*',
  '/',
  '^',
  '<',
  '>=',
  'is',
  'not',
  'between',
  'and',
  'within',
  'of',
  'in',
  '..',
  'or',
  'from',
  'to',
  'where',
  'if',
  'then',
  'else',
] as const;

/** A sign directly before a number belongs to it only where an operand is due, so the tokens stand apart. */
const written = (sequence: readonly string[]): string => sequence.join(' ');

/** The one rule beside the grammar: a quantity with a sign or a unit is raised only in brackets. */
const raisesBareQuantity = (sequence: readonly string[]): boolean =>
  sequence.some((token, at) => /^(-3|2 V)$/.test(token) && sequence[at + 1] === '^');

/** `-3` behind an operand is a subtraction; as a token it exists only where an operand is due. */
const operandEnds = new Set(['a', 'b', 'f', '1', '2 V', '-3', '"t"', 'yes', ')', ']']);
const misplacesSign = (sequence: readonly string[]): boolean =>
  sequence.some((token, at) => token === '-3' && operandEnds.has(sequence[at - 1] ?? ''));

/** After `.` the scanner reads a name; `1 ..` and `. .` are told apart by spaces only. */
function agrees(sequence: readonly string[]): void {
  if (misplacesSign(sequence)) return;
  const trees = everyParse(sequence);
  expect(trees.length, `${written(sequence)} → ${trees.join(' | ')}`).toBeLessThan(2);
  const found = parseExpression(written(sequence));
  const [tree] = trees;
  if (tree === undefined || raisesBareQuantity(sequence)) {
    expect(found.diagnostics.length, `${written(sequence)} must not be accepted`).toBeGreaterThan(0);
  } else {
    expect(found.diagnostics, written(sequence)).toEqual([]);
  }
  if (tree !== undefined) expect(spell(found.value)).toBe(tree);
}

describe('the grammar has at most one tree for a text, and the parser finds it', () => {
  it('for every sequence of up to three tokens', () => {
    let accepted = 0;
    const distinct = [...new Set(tokens)];
    for (const a of distinct) {
      agrees([a]);
      for (const b of distinct) {
        agrees([a, b]);
        for (const c of distinct) {
          agrees([a, b, c]);
          if (everyParse([a, b, c]).length === 1) accepted++;
        }
      }
    }
    expect(accepted).toBeGreaterThan(100);
  });

  it('for sentences that the grammar makes', () => {
    const random = randomFrom(17);
    let longest = 0;
    for (let i = 0; i < 5000; i++) {
      const sequence = sentence(random, 1 + (i % 30));
      longest = Math.max(longest, sequence.length);
      agrees(sequence);
    }
    expect(longest).toBeGreaterThan(30);
  });

  it('for such sentences with a token lost, doubled or changed', () => {
    const random = randomFrom(18);
    let refused = 0;
    for (let i = 0; i < 10_000; i++) {
      const sequence = sentence(random, 1 + (i % 16));
      const place = random(sequence.length);
      const how = random(3);
      if (how === 0) sequence.splice(place, 1);
      else if (how === 1) sequence.splice(place, 0, sequence[place] ?? 'a');
      else sequence[place] = tokens[random(tokens.length)] ?? 'a';
      if (sequence.length === 0) continue;
      agrees(sequence);
      if (everyParse(sequence).length === 0) refused++;
    }
    expect(refused).toBeGreaterThan(3000);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writingRows } from '../../core/diagnostics/catalogue/expression.ts';
import { message } from '../../core/diagnostics/words.ts';
import { parseExpression } from '../../core/expression/parse.ts';
import type { Expression } from '../../core/expression/tree.ts';
import { writeExpression } from '../../core/expression/write.ts';
import { applyEdits } from '../../core/text/edits.ts';
import { frames } from '../support/expressionResult.ts';
import { randomFrom, sentence } from '../support/expressionSentence.ts';
import { spell } from '../support/expressionTree.ts';

const tree = (text: string): string => spell(parseExpression(text).value);

describe('what binds to what', () => {
  it.each([
    ['a + b * c', '(+ a (* b c))'],
    ['a - b - c', '(- (- a b) c)'],
    ['(a - b) - (c - d)', '(- (- a b) (- c d))'],
    ['-a ^ 2', '(- (^ a 2))'],
    ['a ^ -b', '(^ a (- b))'],
    ['a ^ b ^ c', '(^ a (^ b c))'],
    ['-3', '-3'],
    ['a -3', '(- a 3)'],
    ['a - -3', '(- a -3)'],
    ['a * -3 V', '(* a -3V)'],
    ['not a < b and c', '(and (not (< a b)) c)'],
    ['a or b and c', '(or a (and b c))'],
    ['x between 1 and 2 and y', '(and (between x 1 2) y)'],
    ['x not between 1 and 2', '(not-between x 1 2)'],
    ['x is not "open"', '(not-is x "open")'],
    ['x within 0.5 inHg of a + b', '(within x 0.5inHg (+ a b))'],
    ['vacuum in 17 .. 22 inHg', '(in vacuum 17inHg 22inHg)'],
    ['vacuum in 17..22 inHg', '(in vacuum 17inHg 22inHg)'],
    ['vacuum in spec.vacuum', '(in vacuum (. spec vacuum))'],
    ['log.o2 from 2 s to 10 s', '(from (. log o2) 2s 10s)'],
    ['x where (log.rpm > 2000 rpm) from 1 s to 2 s', '(from (where x (> (. log rpm) 2000rpm)) 1s 2s)'],
    ['if a > 1 then b else if c then d else e', '(if (> a 1) b (if c d e))'],
    ['compression[3] / max(compression)', '(/ ([] compression 3) (max compression))'],
    ['drops["battery post"].x', '(. ([] drops "battery post") x)'],
    ['total_trim(stft = a, ltft = -2 %)', '(total_trim stft=a ltft=-2%)'],
    ['10 g/s / 2', '(/ 10g/s 2)'],
    ['2 in 1 .. 3', '(in 2 1 3)'],
    ['min(1,2)', '(min 1 2)'],
    ['45 psi gauge', '45psi'],
    ['a\n  + b', '(+ a b)'],
  ])('%s', (text, expected) => {
    expect(parseExpression(text).diagnostics).toEqual([]);
    expect(tree(text)).toBe(expected);
  });
});

describe('every node knows its place', () => {
  it('brackets belong to the operation around them', () => {
    const text = '(a + b) * c';
    const { value } = parseExpression(text);
    expect(value.span).toEqual({ start: 0, end: 11 });
    expect(value.kind === 'arithmetic' && value.left.span).toEqual({ start: 1, end: 6 });
  });

  it('for every sentence of the grammar, parts lie inside the whole', () => {
    const random = randomFrom(5);
    let nodes = 0;
    for (let i = 0; i < 500; i++) {
      const text = sentence(random, 1 + (i % 25)).join(' ');
      walk(parseExpression(text).value, (node, parent) => {
        nodes++;
        expect(node.span.start).toBeGreaterThanOrEqual(parent.start);
        expect(node.span.end).toBeLessThanOrEqual(parent.end);
      });
    }
    expect(nodes).toBeGreaterThan(1500);
  });
});

function walk(node: Expression, visit: (node: Expression, parent: Expression['span']) => void): void {
  for (const each of Object.values(node)) {
    for (const child of Array.isArray(each)
      ? each.map((argument: { value: Expression }) => argument.value)
      : [each]) {
      if (typeof child === 'object' && child !== null && 'kind' in child && 'span' in child) {
        visit(child as Expression, node.span);
        walk(child as Expression, visit);
      }
    }
  }
}

describe('what is wrong is told once, at its place', () => {
  it.each([
    [
      'before.idle.map +',
      '                ^ missing-operand: Something is missing after `+`: a value with its unit, a name, or an expression in brackets.',
    ],
    [
      'a + < 30 inHg',
      '    ^ missing-operand: Something is missing before `<`: a value with its unit, a name, or an expression in brackets.',
    ],
    [
      'before. < 14 inHg',
      '      ^ missing-name: A name is missing after `before.`: a state, a signal or a computed name.',
    ],
    [
      'x between 1 V, 2 V',
      '             ^ missing-word: `and` is missing here. It is written `x between 17 inHg and 22 inHg`.',
    ],
    ['(a + b', '^ unclosed-bracket: This `(` is never closed. Put `)` where it ends.'],
    [
      'a + b)',
      '     ^ unexpected-text: This `)` closes nothing: no bracket is open here. Take it out or open one.',
    ],
    [
      '2 (maf)',
      '  ^ unexpected-text: `(` does not fit here: two things side by side need an operator between them (`*` to multiply, `and` to ask for both).',
    ],
    [
      'a > 3 V;',
      '       ^ unexpected-text: `;` does not fit here. Take it out, or put what stands behind it in a line of its own.',
    ],
    [
      'a is "open',
      '     ^^^^^ unclosed-text: The text "open has no closing quote. Put one where the text ends.',
    ],
    [
      '3 inch ^ 2',
      '^^^^^^ needs-brackets: `3 inch ^` can be read in two ways. Put brackets: `(3 inch) ^ …`.',
    ],
    [
      '17 inHg < vacuum < 22 inHg',
      '^^^^^^^^^^^^^^^^^^^^^^^^^^ chained-comparison: Comparisons do not chain: the second would compare a yes-or-no. Write `vacuum between 17 inHg and 22 inHg`.',
    ],
    ['loop == "closed"', '     ^^ foreign-mark: `==` is not used here. Write `is`.'],
  ])('%s', (text, frame) => {
    expect(frames(text, parseExpression(text).diagnostics)).toEqual([`${text}\n${frame}`]);
  });

  it('nothing at all', () => {
    expect(parseExpression('  ').diagnostics.map((each) => each.code)).toEqual(['empty-expression']);
  });
});

describe('marks of other languages are read as what they mean, and the fix writes it', () => {
  it.each([
    ['loop = "open"', 'loop is "open"'],
    ['loop != "open"', 'loop is not "open"'],
    ['map == 29.6 inHg', 'map within 0.1 inHg of 29.6 inHg'],
    ['iac==3', 'iac within 1 of 3'],
    ['a && b', 'a and b'],
    ['a||b', 'a or b'],
    ['a ≤ 3 V', 'a <= 3 V'],
    ['a ≥ 3 V', 'a >= 3 V'],
    ['a => 3 V', 'a >= 3 V'],
    ['a × b', 'a * b'],
    ['a ÷ b', 'a / b'],
    ['a − b', 'a - b'],
    ['a**2', 'a^2'],
    ['a²', 'a ^ 2'],
    ['!a', 'not a'],
    ['a AND b', 'a and b'],
    ['loop is “closed”', 'loop is "closed"'],
    ['1 V < x < 5 V', 'x between 1 V and 5 V'],
    ['5 V >= x >= 1 V', 'x between 1 V and 5 V'],
    ['1 V < x > 0 V', '1 V < x and x > 0 V'],
    ['3 inch ^ 2', '(3 inch) ^ 2'],
    ['a + not b', 'a + (not b)'],
  ])('%s → %s', (text, expected) => {
    const { diagnostics } = parseExpression(text);
    expect(diagnostics).toHaveLength(1);
    const edits = diagnostics[0]?.fixes[0]?.edits ?? [];
    const repaired = applyEdits(text, edits).replace(/\s+/g, ' ').trim();
    expect(repaired).toBe(expected);
    expect(parseExpression(repaired).diagnostics).toEqual([]);
  });

  it('two names may be words or numbers: both are offered', () => {
    const { diagnostics } = parseExpression('a == b');
    expect(diagnostics[0]?.fixes.map((fix) => fix.title)).toEqual(['Write `is`', 'Write `within 1 % of`']);
  });

  it('a typographic minus before a number is a sign', () => {
    expect(parseExpression('−40 °C').diagnostics).toEqual([]);
  });
});

describe('a broken expression is a tree with holes', () => {
  it.each([
    ['a + ', '(+ a ?)'],
    ['min(a, ', '(min a ?)'],
    ['min(a, , b)', '(min a ? b)'],
    ['before.', '(. before ?)'],
    ['x between 1 V and', '(between x 1V ?)'],
    ['x within', '(within x ? ?)'],
    ['if a then', '(if a ? ?)'],
    ['(a or ', '(or a ?)'],
    ['f(level = ', '(f level=?)'],
    ['x[', '([] x ?)'],
  ])('%s', (text, expected) => {
    expect(parseExpression(text).diagnostics.length).toBeGreaterThan(0);
    expect(tree(text)).toBe(expected);
  });

  it('any prefix of any sentence is read without throwing, with spans inside the text', () => {
    const random = randomFrom(7);
    let prefixes = 0;
    for (let i = 0; i < 300; i++) {
      const text = sentence(random, 1 + (i % 25)).join(' ');
      for (let end = 0; end <= text.length; end++) {
        const prefix = text.slice(0, end);
        const { value, diagnostics } = parseExpression(prefix);
        prefixes++;
        for (const span of [value.span, ...diagnostics.map((each) => each.span)]) {
          expect(span.start).toBeGreaterThanOrEqual(0);
          expect(span.end).toBeLessThanOrEqual(prefix.length);
          expect(span.start).toBeLessThanOrEqual(span.end);
        }
      }
    }
    expect(prefixes).toBeGreaterThan(5000);
  });

  it('any text at all is read without throwing, and every finding can be worded', () => {
    const alphabet = fc.constantFrom(
      ...'ab1.,+-*/^<>=!&|()[]"\' \n°µ²≤×%…',
      'and ',
      'not ',
      'if ',
      'between ',
      'psi ',
      '\u{1F527}',
      '\uD800',
    );
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: alphabet, maxLength: 40 }), fc.string({ unit: 'binary', maxLength: 40 })),
        (text) => {
          const { value, diagnostics } = parseExpression(text);
          expect(value.span.end).toBeLessThanOrEqual(text.length);
          for (const each of diagnostics) expect(message(each)).not.toMatch(/undefined|NaN|\[object/);
        },
      ),
      { numRuns: 3000, seed: 3 },
    );
  });
});

describe('the page of each finding about writing shows it, and shows it put right', () => {
  const shown = Object.entries(writingRows).filter(([code]) => !code.startsWith('expression-too-'));
  const expressionIn = (example: string): string =>
    (/(?:- |: )(.*)$/.exec(example.split('\n').at(-1) ?? '')?.[1] ?? '').replace(/^""$/, '');

  it.each(shown)('%s', (code, row) => {
    expect(parseExpression(expressionIn(row.wrong)).diagnostics.map((each) => each.code)).toEqual([code]);
    expect(parseExpression(expressionIn(row.right)).diagnostics).toEqual([]);
  });
});

describe('bounds', () => {
  const codes = (text: string): string[] => parseExpression(text).diagnostics.map((each) => each.code);

  it('100,000 nested brackets are one clear finding, at once', () => {
    const begun = performance.now();
    expect(codes(`${'('.repeat(100_000)}a${')'.repeat(100_000)}`)).toEqual(['expression-too-long']);
    expect(performance.now() - begun).toBeLessThan(50);
  });

  it.each([
    ['brackets', `${'('.repeat(2000)}a${')'.repeat(2000)}`],
    ['open brackets', '('.repeat(4900)],
    ['indices', `${'a['.repeat(2000)}1`],
    ['calls', 'f('.repeat(2400)],
    ['signs', `${'-'.repeat(4900)}a`],
    ['not', `${'not '.repeat(1200)}a`],
    ['powers', `a${' ^ a'.repeat(1200)}`],
    ['a long sum', `a${' + a'.repeat(1200)}`],
    ['a long chain of and', `a${' and a'.repeat(700)}`],
    ['members', `a${'.a'.repeat(2400)}`],
    ['cuts', `a${' from 1 to 2'.repeat(400)}`],
    ['conditions', `${'if a then '.repeat(450)}b`],
    ['comparisons', `a${' < a'.repeat(1200)}`],
    ['sums in brackets', `${'('.repeat(150)}a${' + a'.repeat(150)})${' + a)'.repeat(149)}`],
  ])('%s too deep are one finding', (_what, text) => {
    expect(codes(text)).toEqual(['expression-too-deep']);
    expect(parseExpression(text).value.kind).toBe('hole');
  });

  it('what people write is far inside them', () => {
    expect(codes(`a${' + a'.repeat(150)}`)).toEqual([]);
    expect(codes(`${'('.repeat(150)}a${')'.repeat(150)}`)).toEqual([]);
  });
});

describe('writing a tree gives a text that is read as the same tree', () => {
  it('for every sentence of the grammar', () => {
    const random = randomFrom(11);
    let same = 0;
    for (let i = 0; i < 2000; i++) {
      const text = sentence(random, 1 + (i % 30)).join(' ');
      const first = parseExpression(text);
      if (first.diagnostics.length > 0) continue;
      const again = parseExpression(writeExpression(first.value));
      expect(again.diagnostics, text).toEqual([]);
      expect(spell(again.value)).toBe(spell(first.value));
      same++;
    }
    expect(same).toBeGreaterThan(1000);
  });
});

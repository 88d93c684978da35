import { describe, expect, it } from 'vitest';
import { cannotCompute } from '../../core/expression/absent.ts';
import type { WholeFunction } from '../../core/expression/functionRow.ts';
import type { One, Value } from '../../core/expression/value.ts';
import { measured } from '../../core/quantity/amount.ts';
import { unitOf } from '../../core/quantity/unit.ts';
import { frames, printed, result } from '../support/expressionResult.ts';
import { reading } from '../support/expressionScope.ts';

function one(si: number, symbol: string): One {
  const unit = unitOf(symbol) ?? expect.fail(symbol);
  const type = { dimension: unit.dimension, kind: unit.kind ?? 'none', unit } as const;
  return { kind: 'one', type, amount: measured(si, `read ${symbol}`, si / 100) };
}

/** A row such as those of waveforms: several readings off one thing, made up. */
const gaugeRow: WholeFunction = {
  form: 'whole',
  name: 'read_gauge',
  family: 'mechanical',
  summary: 'What a gauge shows.',
  parameters: [{ name: 'pressure', takes: { what: 'quantity', unit: 'kPa' }, meaning: 'a pressure' }],
  result: {
    kind: 'fields',
    fields: [
      { name: 'opens', meaning: 'the valve opens', unit: '°BTDC' },
      { name: 'level', meaning: 'what is left', unit: 'kPa', quantityKind: 'gauge', like: 'pressure' },
      { name: 'share', meaning: 'of the whole', unit: '%' },
      { name: 'word', meaning: 'in a word', unit: 'text' },
      { name: 'lost', meaning: 'what it did not give', unit: 's' },
    ],
  },
  formula: 'none',
  range: '',
  errors: [],
  source: 'made up for this test',
  example: { expression: '', result: '' },
  evaluate: ([pressure]): Value =>
    pressure?.kind === 'one' && pressure.amount.si < 0
      ? cannotCompute('the pressure is below nothing')
      : {
          kind: 'fields',
          fields: new Map<string, One | { kind: 'words'; text: string }>([
            ['share', one(0.25, '%')],
            ['opens', one(1 / 36, '°BTDC')],
            ['level', one(6894.757293168361, 'kPa')],
            ['word', { kind: 'words', text: 'steady' }],
          ]),
        },
};

const setting = {
  names: {
    press: reading('20 psi gauge'),
    below: reading('-20 psi gauge'),
    metric: reading('100 kPa gauge'),
  },
  functions: [gaugeRow],
};
const of = (text: string) => result(text, setting);

describe('a result with several values', () => {
  it('has them in the order that its row declares, in the unit of the argument where the row says so', () => {
    expect(printed(of('read_gauge(press)').value)).toBe(
      'opens: 10.0 ± 0.1 °BTDC, level: 1.00 ± 0.01 psi, share: 25.00 ± 0.25 %, word: steady, lost: cannot compute: it has no such value',
    );
    expect(printed(of('read_gauge(metric).level').value)).toBe('6.895 ± 0.069 kPa');
  });

  it('each of them computes as any other value of its sort', () => {
    expect(printed(of('read_gauge(press).level + 1 psi').value)).toBe('2.00 ± 0.01 psi');
    expect(printed(of('read_gauge(press).share / 2').value)).toBe('12.50 ± 0.13 %');
    expect(printed(of('read_gauge(press).opens between 8 °BTDC and 12 °BTDC').value)).toBe('holds');
    expect(printed(of('read_gauge(press).word is "steady"').value)).toBe('holds');
  });

  it('the same value taken twice is one source: x − x is 0 ± 0', () => {
    expect(printed(of('read_gauge(press).level - read_gauge(press).level').value)).toBe('0 psi');
  });

  it('a value that the function left out, or has no answer for, says so', () => {
    expect(printed(of('read_gauge(press).lost').value)).toBe('cannot compute: it has no such value');
    expect(printed(of('read_gauge(below).level').value)).toBe(
      'cannot compute: the pressure is below nothing',
    );
  });

  it('a name that it does not have is told with those that it has, and the nearest', () => {
    const text = 'read_gauge(press).opnes';
    const { diagnostics } = of(text);
    expect(frames(text, diagnostics)).toEqual([
      `${text}\n                  ^^^^^ unknown-member: \`read_gauge(press)\` has no \`opnes\`. Did you mean \`opens\`? It has opens, level, share, word, lost.`,
    ]);
    expect(diagnostics[0]?.fixes[0]?.edits).toEqual([{ span: { start: 18, end: 23 }, newText: 'opens' }]);
  });

  it.each([
    ['read_gauge(press) + 1 psi', 'wrong-operand'],
    ['-read_gauge(press)', 'wrong-operand'],
    ['max(read_gauge(press))', 'wrong-argument'],
    ['read_gauge(read_gauge(press))', 'wrong-argument'],
    ['read_gauge(press)["opens"]', 'wrong-operand'],
    ['read_gauge(press) > 1 psi', 'wrong-operand'],
    ['read_gauge(press).level.level', 'unknown-member'],
    ['read_gauge(press).level > 1 s', 'dimensions-differ'],
  ])('%s: %s', (text, code) => {
    expect(of(text).diagnostics.map((each) => each.code)).toEqual([code]);
  });

  it('both branches of a choice may be such a result', () => {
    const text = 'if press > 1 psi then read_gauge(press) else read_gauge(metric)';
    expect(of(text).diagnostics.map((each) => each.code)).toEqual(['wrong-operand'].slice(1));
    expect(printed(of(`(${text}).word`).value)).toBe('steady');
  });
});

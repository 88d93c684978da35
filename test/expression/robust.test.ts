import { describe, expect, it } from 'vitest';
import { message } from '../../core/diagnostics/words.ts';
import { printed, result, type Setting } from '../support/expressionResult.ts';
import { byMember, notTaken, range, reading, samples, words } from '../support/expressionScope.ts';
import { randomFrom, sentence } from '../support/expressionSentence.ts';

const held = [
  reading('12.6 ± 0.1 V', 'volts'),
  reading('8 %'),
  reading('29.6 inHg absolute', 'b', 'barometer'),
  reading('16 inHg vacuum'),
  reading('5 psi'),
  reading('88 °C'),
  reading('10 °BTDC'),
  reading('0'),
  byMember('cylinder', { 1: '181 ± 1 psi gauge', 2: '-', 3: '0 psi gauge' }),
  byMember('state', { a: '3 V', b: '4 V' }),
  samples('log', 'V', [0, 1, 2], [0.1, Number.NaN, 0.8], 0.01),
  samples('log', 'rpm', [], []),
  samples('scope', 'V', [0, 1], [3, 4]),
  range('3 V', undefined),
  words('yes'),
  notTaken('50 psi gauge'),
];
const functions = [
  'min',
  'mean',
  'stdev',
  'count',
  'abs',
  'round',
  'sqrt',
  'lowest',
  'absolute',
  'kelvin',
  'at',
  'percentile',
  'rate',
  'first',
  'switch_rate',
  'nothing',
];

describe('whatever the grammar allows is typed and evaluated without throwing', () => {
  it('for random sentences over values of every sort', () => {
    const random = randomFrom(23);
    const kinds = new Set<string>();
    for (let i = 0; i < 20_000; i++) {
      const pick = () => held[random(held.length)] ?? held[0];
      const [a, b] = [pick(), pick()];
      if (a === undefined || b === undefined) throw new Error('values are held');
      const within: Setting = {
        names: { a, b, 'a.a': b },
        barometer: reading('29.9 ± 0.1 inHg absolute', 'b'),
      };
      const name = functions[random(functions.length)] ?? 'min';
      const text = sentence(random, 1 + random(12))
        .map((token) => (token === 'f' ? name : token === 'b' && random(4) === 0 ? 'b.a' : token))
        .join(' ');
      const { value, diagnostics, type } = result(text, within);
      expect(printed(value), text).not.toMatch(/undefined|\[object/);
      for (const each of diagnostics) expect(message(each), text).not.toMatch(/undefined|NaN|\[object/);
      const wrong = diagnostics.some((each) => each.severity === 'error');
      // Types are sound: what is well typed gives a value of its type, or says why there is none.
      if (!wrong && value.kind !== 'absent') expect([value.kind, text]).toEqual([type.kind, text]);
      if (!wrong && 'type' in value && 'quantity' in type && value.kind !== 'range') {
        expect([value.type.dimension.name, value.type.unit.symbol, value.type.kind, text]).toEqual([
          type.quantity.dimension.name,
          type.quantity.unit.symbol,
          type.quantity.kind,
          text,
        ]);
      }
      if (!wrong) kinds.add(value.kind);
    }
    expect([...kinds].sort()).toEqual(['absent', 'members', 'one', 'range', 'series', 'truth', 'words']);
  });
});

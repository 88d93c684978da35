import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromSi } from '../../core/quantity/convert.ts';
import { unitOf } from '../../core/quantity/unit.ts';
import { printed, result } from '../support/expressionResult.ts';
import { reading } from '../support/expressionScope.ts';

const under = (barometer: string, text: string) =>
  result(text, { barometer: reading(`${barometer} absolute`, 'baro', 'barometer') }).value;

/** What an expression gives in a unit, under a barometer. */
function given(barometer: string, text: string, symbol: string): number {
  const value = under(barometer, text);
  const unit = unitOf(symbol);
  if (value.kind !== 'one' || unit === undefined) throw new Error(`${text}: ${printed(value)}`);
  return fromSi(value.amount.si, unit, 'none');
}

describe('gauge, vacuum and absolute pressure by the barometer', () => {
  // Arithmetic from the definition of gauge pressure, ISO 80000-4:2019 (excess over the ambient pressure).
  it('20 inHg of vacuum under 29.92 inHg are 9.92 inHg absolute', () => {
    const sea = '29.92 inHg';
    expect(given(sea, 'absolute(20 inHg vacuum)', 'inHg')).toBeCloseTo(9.92, 9);
    expect(given(sea, 'absolute(20 inHg vacuum)', 'kPa')).toBeCloseTo(33.593, 3);
  });

  it('18 inHg of vacuum in the mountains, 24.90 inHg, are 6.90 inHg absolute', () => {
    const mountains = '24.9 inHg';
    expect(given(mountains, 'absolute(18 inHg vacuum)', 'inHg')).toBeCloseTo(6.9, 9);
    expect(given(mountains, 'absolute(18 inHg vacuum)', 'kPa')).toBeCloseTo(23.366, 3);
  });

  it('35 kPa absolute are 19.578 inHg of vacuum at the sea and 14.558 in the mountains', () => {
    expect(given('101.3 kPa', 'vacuum(35 kPa absolute)', 'inHg')).toBeCloseTo(19.578, 3);
    expect(given('84.3 kPa', 'vacuum(35 kPa absolute)', 'inHg')).toBeCloseTo(14.558, 3);
  });

  it('45 psi gauge are 411.589 kPa absolute under a standard atmosphere', () => {
    expect(given('101.325 kPa', 'absolute(45 psi gauge)', 'kPa')).toBeCloseTo(411.589, 3);
  });

  it.each(['absolute(31 inHg vacuum)', 'gauge(31 inHg vacuum)', 'vacuum(-31 inHg gauge)'])(
    '%s under 29.92 inHg does not exist',
    (text) => {
      expect(printed(under('29.92 inHg', text))).toMatch(
        /^cannot compute: .* would be less than no pressure at all$/,
      );
    },
  );

  it('any way round leads back', () => {
    const kind = fc.constantFrom('absolute', 'gauge', 'vacuum');
    const pressure = fc.integer({ min: 0, max: 400_000 });
    fc.assert(
      fc.property(kind, kind, pressure, fc.integer({ min: 60_000, max: 108_000 }), (a, b, p, baro) => {
        const back = given(`${baro} Pa`, `absolute(${b}(${a}(${p} Pa absolute)))`, 'Pa');
        expect(Math.abs(back - p)).toBeLessThan(1e-9);
      }),
    );
  });
});

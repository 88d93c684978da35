import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { halfWidthSi, quantitySi, toSi } from '../../core/quantity/convert.ts';
import {
  formatNumber,
  formatQuantity,
  formatRange,
  formatWithKind,
  otherUnit,
  round12,
} from '../../core/quantity/format.ts';
import { parseQuantity, parseReading } from '../../core/quantity/parse.ts';
import { qualifiersOf } from '../../core/quantity/scan.ts';
import type { Kind, QuantityType } from '../../core/quantity/types.ts';
import { allUnits, unitOf } from '../../core/quantity/unit.ts';

function type(symbol: string, kind: Kind = 'none'): QuantityType {
  const unit = unitOf(symbol);
  if (unit === undefined) throw new Error(`${symbol} is no unit`);
  return { dimension: unit.dimension, kind, unit };
}
const inSi = (value: number, of: QuantityType): number => toSi(value, of.unit, of.kind);

describe('numbers', () => {
  it.each([
    [0.1 + 0.2, '0.3'],
    [25, '25'],
    [26.36, '26.36'],
    [1 / 3, '0.33333'],
    [-100 / 3, '-33.333'],
    [29.9212553, '29.921'],
    [128400, '128400'],
    [1234567.89, '1234568'],
    [0.00001234, '0.00001234'],
    [0.0000001, '0.0000001'],
    [0, '0'],
    [-0, '0'],
    [1e20, '100000000000000000000'],
    [Number.NaN, 'no number'],
    [Number.POSITIVE_INFINITY, '∞'],
  ])('%s is written %s', (value, text) => {
    expect(formatNumber(value)).toBe(text);
  });
  it.each([
    [19.81234, 0.2, '19.8'],
    [19.8, 0.2828, '19.80'],
    [2513.4, 120, '2513'],
    [-0.001, 0.2, '0.0'],
    [0.123456, 0.00098, '0.12346'],
  ])('%s known to %s is written %s', (value, width, text) => {
    expect(formatNumber(value, width)).toBe(text);
  });
  it('a number of up to six digits is written as it is', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -999999, max: 999999 }),
        fc.integer({ min: 0, max: 9 }),
        (digits, places) => {
          const value = Number(`${digits}e-${places}`);
          expect(Number(formatNumber(value))).toBe(value + 0);
          expect(formatNumber(value)).not.toMatch(/e/);
        },
      ),
    );
  });
  it('any other is off by less than five parts in 100 000', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 1e20, noNaN: true }), (value) => {
        expect(Math.abs(Number(formatNumber(value)) / value - 1)).toBeLessThanOrEqual(5.001e-5);
      }),
    );
  });
  it('results are rounded to 12 significant digits', () => {
    expect(round12(0.1 + 0.2)).toBe(0.3);
    expect(round12(28.999999999999996)).toBe(29);
    expect(round12(1 / 3)).toBe(0.333333333333);
    expect(Object.is(round12(-0), 0)).toBe(true);
    expect(round12(123456789012345)).toBe(123456789012000);
  });
});

describe('quantities', () => {
  it.each([
    [19.8, 'inHg', 'vacuum', 0.2, '19.8 ± 0.2 inHg', '19.8 ± 0.2 inHg vacuum'],
    [45, 'psi', 'gauge', 0, '45 psi', '45 psi gauge'],
    [195, '°F', 'point', 2, '195 ± 2 °F', '195 ± 2 °F'],
    [9.5, '%', 'none', 1, '9.5 ± 1 %', '9.5 ± 1 %'],
    [9.54, '%', 'none', 1, '10 ± 1 %', '10 ± 1 %'],
    [13.15, 'inHg', 'absolute', 0.2, '13.15 ± 0.2 inHg', '13.15 ± 0.2 inHg absolute'],
    [18, '°F', 'difference', 0, '18 °F', '18 °F difference'],
    [25, '%', 'none', 0, '25 %', '25 %'],
    [0.98, '1', 'none', 0, '0.98', '0.98'],
    [10, '°BTDC', 'btdc', 0, '10 °BTDC', '10 °BTDC'],
  ] as const)('%s %s %s ± %s', (value, symbol, kind, width, short, full) => {
    const of = type(symbol, kind);
    expect(formatQuantity(inSi(value, of), of, width * of.unit.factor)).toBe(short);
    expect(formatWithKind(inSi(value, of), of, width * of.unit.factor)).toBe(full);
  });
  it('ranges', () => {
    const percent = type('%');
    const psi = type('psi', 'gauge');
    expect(formatRange(inSi(-10, percent), inSi(10, percent), percent)).toBe('-10 .. 10 %');
    expect(formatRange(inSi(142, psi), undefined, psi)).toBe('at least 142 psi');
    expect(formatRange(undefined, inSi(3, psi), psi)).toBe('at most 3 psi');
    // A limit of 60 .. 107 kPa on a gauge in inHg, and one to six digits as its author wrote it.
    expect(formatRange(60_000, 107_000, type('inHg', 'absolute'))).toBe('17.72 .. 31.6 inHg');
    expect(formatRange(undefined, inSi(14.6959, psi), psi)).toBe('at most 14.6959 psi');
    expect(formatRange(12_345_678.9, undefined, type('Pa', 'absolute'))).toBe('at least 12345679 Pa');
  });
});

describe('what is printed is read back', () => {
  const types = allUnits().flatMap((unit): QuantityType[] => {
    const { dimension } = unit;
    const kinds = qualifiersOf(unit);
    if (kinds.length === 0) return [{ dimension, kind: unit.kind ?? 'none', unit }];
    return kinds.map((kind) => ({ dimension, kind, unit }));
  });
  const number = fc
    .tuple(fc.integer({ min: -999999, max: 999999 }), fc.integer({ min: 0, max: 6 }))
    .map(([a, b]) => Number(`${a}e-${b}`));
  const width = fc
    .tuple(fc.integer({ min: 0, max: 99 }), fc.integer({ min: 0, max: 3 }))
    .map(([a, b]) => Number(`${a}e-${b}`));

  it('with unit, kind and half-width', () => {
    fc.assert(
      fc.property(fc.constantFrom(...types), number, width, (of, value, plusMinus) => {
        const si = inSi(value, of);
        const text = formatWithKind(si, of, plusMinus * of.unit.factor);
        const { value: back, diagnostics } = parseQuantity(text);
        expect(diagnostics).toEqual([]);
        expect(back?.unit).toBe(of.unit);
        expect(back?.kind === 'none' && of.kind === 'difference' ? 'difference' : back?.kind).toBe(of.kind);
        if (back === undefined) return;
        // Without ± the number stands as it was; with ± it is rounded to the last digit shown.
        const slack = plusMinus === 0 ? 1e-11 * (Math.abs(si) + of.unit.offset) : plusMinus * of.unit.factor;
        expect(Math.abs(quantitySi(back, of.kind) - si)).toBeLessThanOrEqual(slack);
        expect(halfWidthSi(back)).toBeCloseTo(plusMinus * of.unit.factor, 9);
      }),
      { numRuns: 1000 },
    );
  });

  it('ranges', () => {
    fc.assert(
      fc.property(fc.constantFrom('V', '%', '°F', 'rpm', '1', '°BTDC'), number, number, (symbol, a, b) => {
        const of = type(symbol, symbol === '°F' ? 'point' : symbol === '°BTDC' ? 'btdc' : 'none');
        const { value, diagnostics } = parseReading(
          formatRange(inSi(Math.min(a, b), of), inSi(Math.max(a, b), of), of),
        );
        expect(diagnostics).toEqual([]);
        expect(value).toMatchObject({
          low: { value: Math.min(a, b) + 0 },
          high: { value: Math.max(a, b) + 0 },
        });
      }),
    );
  });
});

describe('the unit of the other system', () => {
  it.each([
    ['inHg', 'kPa'],
    ['°F', '°C'],
    ['°C', '°F'],
    ['psi', 'kPa'],
    ['kPa', 'psi'],
    ['g/s', 'lb/min'],
    ['mph', 'km/h'],
    ['g', undefined],
    ['oz', 'g'],
    ['V', undefined],
    ['rpm', undefined],
  ])('%s: %s', (symbol, other) => {
    expect(otherUnit(type(symbol).unit)?.symbol).toBe(other);
  });
  it('manifold pressures go to inches of mercury', () => {
    expect(otherUnit(type('kPa').unit, 'absolute')?.symbol).toBe('inHg');
  });
  it('always is of the same dimension and another unit', () => {
    for (const unit of [...allUnits(), type('g/s').unit, type('L/h').unit]) {
      const other = otherUnit(unit);
      if (other === undefined) continue;
      expect(other.dimension).toBe(unit.dimension);
      expect(other).not.toBe(unit);
    }
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  absoluteFrom,
  fromSi,
  gaugeFrom,
  pressureChange,
  toSi,
  vacuumFrom,
} from '../../core/quantity/convert.ts';
import type { Kind, Unit } from '../../core/quantity/types.ts';
import { allUnits, unitOf } from '../../core/quantity/unit.ts';

function unit(symbol: string): Unit {
  const found = unitOf(symbol);
  if (found === undefined) throw new Error(`${symbol} is no unit`);
  return found;
}
const si = (value: number, symbol: string): number => toSi(value, unit(symbol), 'none');
const as = (value: number | undefined, symbol: string): number =>
  fromSi(value ?? Number.NaN, unit(symbol), 'none');

describe('there and back', () => {
  it('every unit returns what it was given, to the last digits', () => {
    const number = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(...allUnits()),
        number,
        fc.constantFrom<Kind>('none', 'point'),
        (of, value, kind) => {
          const back = fromSi(toSi(value, of, kind), of, kind);
          // A point loses what the offset's last digit is worth.
          const slack = Math.abs(value) * 1e-15 + (kind === 'point' ? 2e-13 : 1e-300);
          return Math.abs(back - value) <= slack;
        },
      ),
    );
  });
});

describe('gauge, vacuum and absolute pressure by the barometer', () => {
  // Arithmetic from the definition of gauge pressure, ISO 80000-4:2019 (excess over the ambient pressure).
  it('20 inHg of vacuum under 29.92 inHg are 9.92 inHg absolute', () => {
    const absolute = absoluteFrom('vacuum', si(20, 'inHg'), si(29.92, 'inHg'));
    expect(as(absolute, 'inHg')).toBeCloseTo(9.92, 9);
    expect(as(absolute, 'kPa')).toBeCloseTo(33.593, 3);
  });
  it('18 inHg of vacuum in the mountains, 24.90 inHg, are 6.90 inHg absolute', () => {
    const absolute = absoluteFrom('vacuum', si(18, 'inHg'), si(24.9, 'inHg'));
    expect(as(absolute, 'inHg')).toBeCloseTo(6.9, 9);
    expect(as(absolute, 'kPa')).toBeCloseTo(23.366, 3);
  });
  it('35 kPa absolute are 19.578 inHg of vacuum at the sea and 14.558 in the mountains', () => {
    expect(as(vacuumFrom('absolute', si(35, 'kPa'), si(101.3, 'kPa')), 'inHg')).toBeCloseTo(19.578, 3);
    expect(as(vacuumFrom('absolute', si(35, 'kPa'), si(84.3, 'kPa')), 'inHg')).toBeCloseTo(14.558, 3);
  });
  it('45 psi gauge are 411.589 kPa absolute under a standard atmosphere', () => {
    expect(as(absoluteFrom('gauge', si(45, 'psi'), 101325), 'kPa')).toBeCloseTo(411.589, 3);
  });
  it('31 inHg of vacuum under 29.92 inHg do not exist', () => {
    expect(absoluteFrom('vacuum', si(31, 'inHg'), si(29.92, 'inHg'))).toBeUndefined();
    expect(gaugeFrom('vacuum', si(31, 'inHg'), si(29.92, 'inHg'))).toBeUndefined();
    expect(vacuumFrom('gauge', -si(31, 'inHg'), si(29.92, 'inHg'))).toBeUndefined();
  });
  it('a difference and an open pressure have no zero to count from', () => {
    for (const kind of ['difference', 'open', 'none', 'point'] as const) {
      expect(absoluteFrom(kind, 1000, 101325)).toBeUndefined();
      expect(pressureChange(kind, 'absolute')).toBeUndefined();
    }
  });
  it.each([
    ['absolute', 'absolute', 1, 0],
    ['gauge', 'absolute', 1, 1],
    ['vacuum', 'absolute', -1, 1],
    ['absolute', 'gauge', 1, -1],
    ['gauge', 'gauge', 1, 0],
    ['vacuum', 'gauge', -1, 0],
    ['absolute', 'vacuum', -1, 1],
    ['gauge', 'vacuum', -1, 0],
    ['vacuum', 'vacuum', 1, 0],
  ] as const)('%s to %s: %s of itself, %s of the barometer', (from, to, own, barometer) => {
    expect(pressureChange(from, to)).toEqual({ own, barometer });
  });
  it('any way round leads back', () => {
    const kind = fc.constantFrom<'absolute' | 'gauge' | 'vacuum'>('absolute', 'gauge', 'vacuum');
    const to = { absolute: absoluteFrom, gauge: gaugeFrom, vacuum: vacuumFrom };
    fc.assert(
      fc.property(
        kind,
        kind,
        fc.integer({ min: 0, max: 400000 }),
        fc.integer({ min: 60000, max: 108000 }),
        (a, b, p, baro) => {
          const first = to[a]('absolute', p, baro);
          const second = to[b](a, first ?? Number.NaN, baro);
          return absoluteFrom(b, second ?? Number.NaN, baro) === p;
        },
      ),
    );
  });
});

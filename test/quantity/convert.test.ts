import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromSi, pressureChange, toSi } from '../../core/quantity/convert.ts';
import type { Kind } from '../../core/quantity/types.ts';
import { allUnits } from '../../core/quantity/unit.ts';

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
  it('a difference and an open pressure have no zero to count from', () => {
    for (const kind of ['difference', 'open', 'none', 'point'] as const) {
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
});

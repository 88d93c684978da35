import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exhaustAir } from '../../../core/engine/fuel/exhaustAir.ts';
import { gasPattern, gasSayings } from '../../../core/engine/fuel/gasPattern.ts';
import type { ExhaustGas } from '../../../core/engine/fuel/lambdaFromGas.ts';
import { numberOf } from '../answers.ts';
import { products, shown, thinned } from './burntGas.ts';

const fuel = { carbon: 1, hydrogen: 1.7261, oxygen: 0.0176 };
const said = (gas: ExhaustGas) => gasPattern(gas, 'E0');

/** A sound fire leaves some of everything. */
function fire(lambda: number): ExhaustGas {
  const gas = products(lambda, fuel, 3.5);
  return { ...gas, co: gas.co + 0.002, o2: gas.o2 + 0.004, hc: 60e-6 };
}

/** A share of the charge goes through unburnt: its fuel as hydrocarbons, of which an analyser sees about half, its air as oxygen. */
function misfired(lambda: number, share: number): ExhaustGas {
  const gas = fire(lambda);
  return {
    ...gas,
    co2: gas.co2 * (1 - share),
    co: gas.co * (1 - share),
    o2: gas.o2 + 0.2095 * share * 0.9,
    hc: gas.hc + (gas.co2 * share) / 12,
  };
}

describe('what exhaust gas usually means, on gas made by atom balance', () => {
  it('a fire at lambda 0.99 to 1.01 burns well', () => {
    for (const lambda of [0.99, 1, 1.01]) expect(said(fire(lambda))).toBe('burns well');
  });

  it('a fire at 0.95 and below is rich', () => {
    for (const lambda of [0.8, 0.9, 0.95]) expect(said(fire(lambda))).toBe('rich');
  });

  it('a lean fire and a leak into the pipe look the same to four gases; a lambda upstream tells them apart', () => {
    const lean = fire(1.2);
    const leaking = thinned(fire(1), 0.16);
    expect(said(lean)).toBe('lean, or air in the exhaust');
    expect(said(leaking)).toBe('lean, or air in the exhaust');
    expect(numberOf(exhaustAir(lean, 1.2, 'E0'))).toBeLessThan(0.03);
    expect(numberOf(exhaustAir(leaking, 1, 'E0'))).toBeGreaterThan(0.15);
  });

  it('a rich fire with air in the pipe shows both gases that would have burnt together', () => {
    expect(said(thinned(fire(0.9), 0.15))).toBe('air in the exhaust');
  });

  it('a misfire sends fuel and air through together, at whatever mixture', () => {
    expect(said(misfired(1, 0.06))).toBe('misfire at a normal mixture');
    expect(said(misfired(1.2, 0.15))).toBe('lean misfire');
    // Half of the fuel is not seen, which alone makes lambda look lean: that must not be taken for a lean fire.
    expect(said(misfired(1, 0.15))).toBe('misfire, mixture not clear');
    expect(said(misfired(1, 0.25))).toBe('misfire, mixture not clear');
    expect(said({ ...fire(0.85), hc: 900e-6 })).toBe('rich with unburnt fuel');
    expect(said({ ...fire(1), hc: 900e-6 })).toBe('fuel left unburnt');
  });

  it('a probe in the air is told, no burnt gas at all is refused', () => {
    expect(said(shown(0.4, 0, 20.4, 5))).toBe('mostly air');
    expect(said(shown(0, 0, 20.9, 0))).toBe('mostly air');
    expect(gasPattern(shown(0, 0, 2, 0), 'E0')).toHaveProperty(
      'noAnswer',
      expect.stringContaining('CO2 and CO are both 0'),
    );
    expect(gasPattern(shown(14, 1, 1, 0), 'E1O')).toHaveProperty(
      'noAnswer',
      expect.stringContaining('Did you mean E10'),
    );
  });

  it('every saying can be said', () => {
    const heard = new Set<unknown>();
    const share = fc.double({ min: 0, max: 0.3, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0.8, max: 1.3, noNaN: true }), share, share, (lambda, air, miss) => {
        for (const gas of [fire(lambda), misfired(lambda, miss), thinned(fire(lambda), air)])
          heard.add(said(gas));
      }),
      { numRuns: 500, seed: 7 },
    );
    heard.add(said(shown(0.4, 0, 20.4, 5))).add(said({ ...fire(1), hc: 900e-6 }));
    heard.add(said({ ...fire(0.85), hc: 900e-6 })).add(said(misfired(1, 0.06)));
    expect([...heard].sort()).toEqual(gasSayings.map(({ words }) => words).sort());
  });
});

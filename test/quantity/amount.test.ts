import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  add,
  type Correlation,
  divide,
  exact,
  halfWidth,
  linear,
  measured,
  multiply,
  power,
  scale,
  subtract,
} from '../../core/quantity/amount.ts';

const x = measured(20, 'x', 0.3);
const y = measured(30, 'y', 0.4);

describe('one source is one source', () => {
  it('x − x is 0 ± 0, x / x is 1 ± 0, x + x is 2x', () => {
    expect(subtract(x, x)).toEqual(exact(0));
    expect(divide(x, x)).toEqual(exact(1));
    expect(halfWidth(add(x, x))).toBeCloseTo(0.6, 15);
    expect(multiply(x, x).si).toBe(power(x, 2).si);
    expect(halfWidth(multiply(x, x))).toBeCloseTo(halfWidth(power(x, 2)), 12);
  });
  it('independent sources add in quadrature: 0.3 and 0.4 make 0.5', () => {
    expect(halfWidth(add(x, y))).toBeCloseTo(0.5, 15);
    expect(halfWidth(subtract(x, y))).toBeCloseTo(0.5, 15);
    expect(add(y, x).spread.map((each) => each.source)).toEqual(['x', 'y']);
  });
  it('the sum minus a part is the other part', () => {
    const back = subtract(add(x, y), y);
    expect(back.si).toBe(20);
    expect(back.spread).toEqual(x.spread);
  });
  it('exact numbers share one empty spread, and so does what they make', () => {
    const empty = exact(1).spread;
    expect(measured(1, 'z', 0).spread).toBe(empty);
    for (const made of [add, subtract, multiply, divide].map((each) => each(exact(3), exact(2))))
      expect(made.spread).toBe(empty);
    expect(power(exact(3), 2).spread).toBe(empty);
    expect(scale(exact(3), 2).spread).toBe(empty);
    expect(subtract(x, x).spread).toBe(empty);
    expect(linear(7, [[1, exact(3)]]).spread).toBe(empty);
  });
  it('sensitivities are the derivatives', () => {
    expect(halfWidth(multiply(x, exact(5)))).toBeCloseTo(1.5, 14);
    expect(halfWidth(divide(exact(600), x))).toBeCloseTo((600 / 400) * 0.3, 14);
    expect(halfWidth(power(x, -2))).toBeCloseTo((2 / 8000) * 0.3, 15);
    expect(halfWidth(power(x, 0))).toBe(0);
    expect(halfWidth(scale(x, -2))).toBeCloseTo(0.6, 15);
  });
  it('a linear combination equals its sums, whatever the order', () => {
    const part = fc.tuple(
      fc.integer({ min: -9, max: 9 }),
      fc.constantFrom('a', 'b', 'c', 'd'),
      fc.integer({ min: 0, max: 9 }),
    );
    fc.assert(
      fc.property(fc.array(part, { maxLength: 8 }), (parts) => {
        const terms = parts.map(([by, source, width]) => [by, measured(1, source, width)] as const);
        const stepwise = terms.reduce((sum, [by, amount]) => add(sum, scale(amount, by)), exact(0));
        expect(linear(stepwise.si, terms).spread).toEqual(stepwise.spread);
        expect(linear(stepwise.si, terms.toReversed()).spread).toEqual(stepwise.spread);
      }),
    );
  });
});

describe('correlated sources: JCGM 100:2008, annex H.2', () => {
  // Simultaneous measurement of resistance and reactance: the five sets of observations of table H.2,
  // and the results of table H.3 (R, X and Z with their combined standard uncertainties).
  const volts = [5.007, 4.994, 5.005, 4.99, 4.999];
  const milliamperes = [19.663, 19.639, 19.64, 19.685, 19.678];
  const radians = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];

  const mean = (of: readonly number[]): number => of.reduce((sum, each) => sum + each, 0) / of.length;
  const covariance = (a: readonly number[], b: readonly number[]): number => {
    const products = a.map((each, at) => (each - mean(a)) * ((b[at] ?? Number.NaN) - mean(b)));
    return products.reduce((sum, each) => sum + each, 0) / (a.length * (a.length - 1));
  };
  const deviation = (of: readonly number[]): number => Math.sqrt(covariance(of, of));
  const observed: Record<string, readonly number[]> = {
    V: volts,
    I: milliamperes.map((each) => each / 1000),
    phi: radians,
  };
  const correlation: Correlation = (a, b) => {
    const [first = [], second = []] = [observed[a], observed[b]];
    return covariance(first, second) / (deviation(first) * deviation(second));
  };
  const read = (name: string) => measured(mean(observed[name] ?? []), name, deviation(observed[name] ?? []));
  const V = read('V');
  const I = read('I');
  const phi = read('phi');

  it('the inputs are those of table H.2', () => {
    expect(V.si).toBeCloseTo(4.999, 6);
    expect(I.si * 1000).toBeCloseTo(19.661, 6);
    expect(phi.si).toBeCloseTo(1.04446, 8);
    expect(halfWidth(V)).toBeCloseTo(0.0032, 4);
    expect(halfWidth(I) * 1000).toBeCloseTo(0.0095, 4);
    expect(halfWidth(phi)).toBeCloseTo(0.00075, 5);
    expect(correlation('V', 'I')).toBeCloseTo(-0.36, 2);
    expect(correlation('V', 'phi')).toBeCloseTo(0.86, 2);
    expect(correlation('I', 'phi')).toBeCloseTo(-0.65, 1);
  });

  const impedance = divide(V, I);
  const resistance = multiply(impedance, linear(Math.cos(phi.si), [[-Math.sin(phi.si), phi]]));
  const reactance = multiply(impedance, linear(Math.sin(phi.si), [[Math.cos(phi.si), phi]]));

  // One unit of the last printed digit: for X the guide prints 0.295, which is what its second approach
  // gives (0.29549, the scatter of the five single results); to first order it is 0.29558.
  it.each([
    ['R', resistance, 127.732, 0.071],
    ['X', reactance, 219.847, 0.295],
    ['Z', impedance, 254.26, 0.236],
  ])('%s as published', (_, result, value, uncertainty) => {
    expect(Math.abs(result.si - value)).toBeLessThan(0.001);
    expect(Math.abs(halfWidth(result, correlation) - uncertainty)).toBeLessThan(0.001);
  });

  it('X by the guide’s second approach, which needs no correlations', () => {
    const single = volts.map((v, at) => (v / (milliamperes[at] ?? 0)) * 1000 * Math.sin(radians[at] ?? 0));
    expect(deviation(single)).toBeCloseTo(0.295, 3);
    expect(halfWidth(reactance, correlation) / deviation(single)).toBeCloseTo(1, 3);
  });

  it.each([
    [
      'R',
      resistance,
      (v: number, i: number, p: number) => [
        Math.cos(p) / i,
        (-v * Math.cos(p)) / i ** 2,
        (-v * Math.sin(p)) / i,
      ],
    ],
    [
      'X',
      reactance,
      (v: number, i: number, p: number) => [
        Math.sin(p) / i,
        (-v * Math.sin(p)) / i ** 2,
        (v * Math.cos(p)) / i,
      ],
    ],
    ['Z', impedance, (v: number, i: number) => [1 / i, -v / i ** 2, 0]],
  ])('%s is the quadratic form of equation 13 in the written-out derivatives', (_, result, derivatives) => {
    const columns = [observed.V ?? [], observed.I ?? [], observed.phi ?? []];
    const c = derivatives(V.si, I.si, phi.si);
    let variance = 0;
    for (const [i, a] of columns.entries()) {
      for (const [j, b] of columns.entries()) variance += (c[i] ?? 0) * (c[j] ?? 0) * covariance(a, b);
    }
    expect(halfWidth(result, correlation)).toBeCloseTo(Math.sqrt(variance), 10);
  });

  it('without the correlations R would come out far too uncertain', () => {
    expect(halfWidth(resistance)).toBeGreaterThan(0.15);
  });
});

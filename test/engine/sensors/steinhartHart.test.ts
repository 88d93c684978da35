import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { betaOf, betaTemperature } from '../../../core/engine/sensors/betaThermistor.ts';
import { fitCoefficients, steinhartHart, thermistorFit } from '../../../core/engine/sensors/steinhartHart.ts';
import {
  thermistorResistance,
  thermistorTemperature,
} from '../../../core/engine/sensors/thermistorTemperature.ts';
import { kelvin, numberOf, sentenceOf } from '../answers.ts';

const table = (...points: readonly (readonly [celsius: number, ohm: number])[]) => ({
  x: points.map(([celsius]) => kelvin(celsius)),
  y: points.map(([, ohm]) => ohm),
});
const celsius = (of: ReturnType<typeof steinhartHart>) => numberOf(of) - 273.15;
const guidePoints = table([0, 32640], [40, 5325], [100, 678.1]);

describe('Steinhart and Hart', () => {
  // The set widely used for 10 kΩ, published with 32650 Ω 0.0002 °C, 10000 Ω 24.9997, 3601 Ω 50.0003, 1000 Ω 87.168.
  it.each([
    [32650, 0.0002],
    [10000, 24.9997],
    [3601, 50.0003],
    [1000, 87.168],
  ])('of %f Ω is %f °C with the published set', (ohm, expected) => {
    const set = { a: 1.129148e-3, b: 2.34125e-4, c: 8.76741e-8 };
    expect(celsius(steinhartHart(ohm, set))).toBeCloseTo(expected, 3);
  });

  // A generic component guide of 2014, material type 1, times 10 kΩ; the coefficients are arithmetic.
  it('fitted through 0, 40 and 100 °C has the coefficients of the arithmetic, and meets the guide’s other points', () => {
    const fit = fitCoefficients(guidePoints);
    if (typeof fit === 'string') expect.fail(fit);
    expect(fit.a).toBeCloseTo(1.1305473e-3, 9);
    expect(fit.b).toBeCloseTo(2.3388285e-4, 10);
    expect(fit.c).toBeCloseTo(8.874376e-8, 12);
    for (const [ohm, expected] of [
      [12490, 20.004],
      [2487, 59.999],
      [1256, 79.994],
    ] as const)
      expect(celsius(thermistorFit(ohm, guidePoints))).toBeCloseTo(expected, 3);
  });

  // A temperature controller's manual, appendix A: its rows fit one curve, and its 40 °C row is a misprint.
  it('through a manual’s 0, 25 and 50 °C returns its other rows and shows up the misprint', () => {
    const points = table([0, 32128], [25, 9814], [50, 3542]);
    expect(celsius(thermistorFit(19549, points))).toBeCloseTo(10.0001, 3);
    expect(celsius(thermistorFit(12262, points))).toBeCloseTo(19.9994, 3);
    expect(celsius(thermistorFit(7908, points))).toBeCloseTo(29.9978, 3);
    expect(celsius(thermistorFit(5331, points))).toBeCloseTo(39.5272, 3);
  });

  it('fitted to more points of one curve finds that curve (least squares)', () => {
    const set = { a: 1.129148e-3, b: 2.34125e-4, c: 8.76741e-8 };
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(fc.uniqueArray(number(600, 300000), { minLength: 4, maxLength: 12 }), (ohms) => {
        const sorted = ohms.toSorted((one, other) => other - one);
        fc.pre((sorted[0] ?? 0) > 20 * (sorted.at(-1) ?? 1));
        fc.pre(sorted.every((each, at) => at === 0 || (sorted[at - 1] ?? 0) > 1.05 * each));
        const points = { x: sorted.map((ohm) => numberOf(steinhartHart(ohm, set))), y: sorted };
        for (const ohm of sorted)
          expect(
            Math.abs(numberOf(thermistorFit(ohm, points)) - numberOf(steinhartHart(ohm, set))),
          ).toBeLessThan(1e-6);
      }),
    );
  });

  it('names what is wrong', () => {
    expect(sentenceOf(thermistorFit(0, guidePoints))).toContain('a short');
    expect(sentenceOf(thermistorFit(50000, guidePoints))).toContain('outside the points');
    expect(sentenceOf(thermistorFit(5000, table([0, 32640], [40, 5325])))).toContain('at least three points');
    expect(sentenceOf(thermistorFit(5000, table([0, 5000], [40, 5000], [100, 5000])))).toContain(
      'do not differ enough',
    );
    expect(sentenceOf(thermistorFit(2060, table([0, 5896], [40, 1.175e6], [100, 177])))).toContain(
      'turns back at 1175000 Ω',
    );
    expect(sentenceOf(steinhartHart(10000, { a: -1, b: 0, c: 0 }))).toContain('powers of ten');
  });
});

describe('one constant B', () => {
  // Arithmetic with B = 3977 K and 10 kΩ: exact where B was taken, 0.71 °C off at 0 °C.
  it.each([
    [32640, 0.713],
    [3601, 49.723],
    [1070, 85.009],
    [678.1, 100.352],
    [10000, 25],
  ])('of %f Ω is %f °C', (ohm, expected) => {
    expect(celsius(betaTemperature(ohm, 3977, 10000))).toBeCloseTo(expected, 3);
  });

  // The guide prints for its material 3892 (0/50), 3937 (25/50), 3977 (25/85), 3992 K (25/100).
  it('between 25 and 100 °C of the guide’s ratios is its 3992 K, within its rounding', () => {
    expect(Math.abs(numberOf(betaOf(kelvin(25), 10000, kelvin(100), 678.1)) - 3992)).toBeLessThan(1);
  });

  it('names what is wrong', () => {
    expect(sentenceOf(betaTemperature(0, 3977, 10000))).toContain('a short');
    expect(sentenceOf(betaTemperature(1000, 0, 10000))).toContain('0 K');
    expect(sentenceOf(betaTemperature(1000, 3977, 0))).toContain('25 °C');
    expect(sentenceOf(betaOf(300, 10, 300, 20))).toContain('different temperatures');
    expect(sentenceOf(betaOf(300, 0, 310, 20))).toContain('above 0');
  });
});

describe('the resistance that a thermistor should have', () => {
  it('is the temperature’s curve read the other way, everywhere in the table', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 100, noNaN: true }), (at) => {
        const ohm = numberOf(thermistorResistance(kelvin(at), guidePoints));
        fc.pre(ohm >= 678.1 && ohm <= 32640);
        expect(celsius(thermistorTemperature(ohm, guidePoints))).toBeCloseTo(at, 6);
      }),
    );
  });

  it('names the table’s ends', () => {
    expect(sentenceOf(thermistorResistance(kelvin(130), guidePoints))).toBe(
      'A temperature of 130 °C (266 °F) is outside the table, which runs from 0 °C (32 °F) to 100 °C (212 °F); beyond its ends nothing is known.',
    );
  });
});

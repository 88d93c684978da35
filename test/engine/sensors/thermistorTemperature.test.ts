import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { engineFunctions } from '../../../core/engine/engineFunctions.ts';
import { thermistorTemperature } from '../../../core/engine/sensors/thermistorTemperature.ts';
import { result } from '../../support/expressionResult.ts';
import { curve, reading } from '../../support/expressionScope.ts';
import { kelvin, numberOf, sentenceOf } from '../answers.ts';

const table = (points: readonly (readonly [celsius: number, ohm: number])[]) => ({
  x: points.map(([celsius]) => kelvin(celsius)),
  y: points.map(([, ohm]) => ohm),
});
const celsiusAt = (ohm: number, points: ReturnType<typeof table>) =>
  numberOf(thermistorTemperature(ohm, points)) - 273.15;

/**
 * A generic component guide, "Temperature Resistance Curves", Rev C, November 2014, material type 1: °C and R/R25,
 * here of a sensor of 10 kΩ at 25 °C.
 */
const guide: readonly (readonly [number, number])[] = [
  [-40, 33.36],
  [-20, 9.681],
  [0, 3.264],
  [20, 1.249],
  [25, 1.0],
  [40, 0.5325],
  [60, 0.2487],
  [80, 0.1256],
  [100, 0.06781],
  [120, 0.03881],
];
const material = guide.map(([celsius, ratio]) => [celsius, ratio * 1e4] as const);

/** Steinhart and Hart with the widely used set for 10 kΩ: A = 1.129148e-3, B = 2.34125e-4, C = 8.76741e-8. */
const steinhart = (ohm: number) => {
  const ln = Math.log(ohm);
  return 1 / (1.129148e-3 + 2.34125e-4 * ln + 8.76741e-8 * ln ** 3);
};

describe('a thermistor’s temperature', () => {
  it.each(material)('meets the point at %i °C of its table', (celsius, ohm) => {
    expect(celsiusAt(ohm, table(material))).toBeCloseTo(celsius, 9);
  });

  it('finds each published point of the guide from its neighbours within 0.1 °C between 0 and 100 °C', () => {
    for (const [at, [celsius, ohm]] of material.entries()) {
      if (celsius < 0 || celsius > 100) continue;
      const without = table(material.filter((_, other) => other !== at));
      expect(Math.abs(celsiusAt(ohm, without) - celsius)).toBeLessThan(0.1);
    }
  });

  it('of three points 0, 40, 100 °C is within 0.1 °C of the guide’s others between', () => {
    const points = table([
      [0, 32640],
      [40, 5325],
      [100, 678.1],
    ]);
    for (const [celsius, ohm] of material) {
      if (celsius > 0 && celsius < 100) expect(Math.abs(celsiusAt(ohm, points) - celsius)).toBeLessThan(0.1);
    }
  });

  it('of two points is a sensor of one B: 0.713 °C off at 0 °C, as B = 3977 is there (arithmetic from IEC 60539-1)', () => {
    const beta = (celsius: number) => 10000 * Math.exp(3977 * (1 / kelvin(celsius) - 1 / 298.15));
    const points = table([
      [-10, beta(-10)],
      [110, beta(110)],
    ]);
    expect(celsiusAt(32640, points)).toBeCloseTo(0.713, 3);
    expect(celsiusAt(3601, points)).toBeCloseTo(49.723, 3);
    expect(celsiusAt(1070, points)).toBeCloseTo(85.009, 3);
    expect(celsiusAt(678.1, points)).toBeCloseTo(100.352, 3);
  });

  it('follows Steinhart and Hart within 0.01 °C between points 10 °C apart', () => {
    // The coefficients give 25.000 °C at 10 kΩ and 50.000 °C at 3601 Ω (published beside them).
    expect(steinhart(10000) - 273.15).toBeCloseTo(24.9997, 3);
    expect(steinhart(3601) - 273.15).toBeCloseTo(50.0003, 3);
    const ohms: number[] = [];
    for (let ln = Math.log(150000); ln > Math.log(600); ln -= 0.45) ohms.push(Math.exp(ln));
    const points = { x: ohms.map(steinhart), y: ohms };
    fc.assert(
      fc.property(fc.double({ min: 620, max: 149000, noNaN: true }), (ohm) => {
        fc.pre(ohm <= (ohms[0] ?? 0) && ohm >= (ohms.at(-1) ?? 0));
        expect(Math.abs(numberOf(thermistorTemperature(ohm, points)) - steinhart(ohm))).toBeLessThan(0.01);
      }),
    );
  });

  it('keeps a misprinted row’s harm local: 5331 Ω at 40 °C, where its neighbours say 39.53 °C', () => {
    // A temperature controller's manual, appendix A, whose other rows agree with one curve within 0.003 °C.
    const manual: readonly (readonly [number, number])[] = [
      [0, 32128],
      [10, 19549],
      [20, 12262],
      [25, 9814],
      [30, 7908],
      [40, 5331],
      [50, 3542],
    ];
    const good = manual.filter(([celsius]) => celsius !== 40);
    expect(celsiusAt(5331, table(good))).toBeCloseTo(39.53, 1);
    for (const ohm of [25000, 15000, 11000]) {
      expect(celsiusAt(ohm, table(manual))).toBeCloseTo(celsiusAt(ohm, table(good)), 9);
    }
  });

  it('falls as the resistance rises, between whatever falling points', () => {
    const steps = fc.array(fc.double({ min: 1.01, max: 8, noNaN: true }), { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(steps, fc.double({ min: 0, max: 1, noNaN: true }), (ratios, share) => {
        const ohms = [1e6];
        for (const ratio of ratios) ohms.push((ohms.at(-1) ?? 0) / ratio);
        const points = table(ohms.map((ohm, at) => [10 * at - 20, ohm]));
        const low = points.y.at(-1) ?? 0;
        const high = points.y[0] ?? 0;
        const at = low * (high / low) ** (share * 0.999);
        const here = numberOf(thermistorTemperature(at, points));
        expect(numberOf(thermistorTemperature(Math.min(at * 1.0005, high), points))).toBeLessThanOrEqual(
          here + 1e-9,
        );
      }),
    );
  });

  it('reads a sensor whose resistance rises with temperature too', () => {
    // Platinum of 100 Ω at 0 °C and 138.51 Ω at 100 °C, 119.40 Ω at 50 °C (IEC 60751).
    const platinum = table([
      [0, 100],
      [25, 109.73],
      [75, 128.99],
      [100, 138.51],
    ]);
    expect(celsiusAt(119.4, platinum)).toBeCloseTo(50, 1);
  });

  it('names what is wrong', () => {
    const points = table(material);
    expect(sentenceOf(thermistorTemperature(0, points))).toContain('a short');
    expect(sentenceOf(thermistorTemperature(400000, points))).toBe(
      'The resistance of 400000 Ω is outside the table, which runs from 388.1 Ω to 333600 Ω; beyond its ends nothing is known.',
    );
    expect(sentenceOf(thermistorTemperature(300, points))).toContain('outside the table');
    expect(sentenceOf(thermistorTemperature(100, table([[20, 100]])))).toContain('at least two points');
    expect(
      sentenceOf(
        thermistorTemperature(
          2000,
          table([
            [0, 3000],
            [20, 1000],
            [40, 2000],
          ]),
        ),
      ),
    ).toContain('turns back at 2000 Ω');
  });

  it('carries the meter’s uncertainty, and refuses a curve of something else', () => {
    const names = {
      ohms: reading('12.49 ± 0.1 kΩ'),
      'spec.ect': curve([
        ['0 °C', '32.64 kΩ'],
        ['40 °C', '5.325 kΩ'],
        ['100 °C', '678.1 Ω'],
      ]),
      'spec.maf': curve([
        ['0.4 V', '2 g/s'],
        ['2.6 V', '55 g/s'],
      ]),
    };
    const { value } = result('thermistor_temperature(ohms, spec.ect)', {
      names,
      functions: engineFunctions(),
    });
    if (value.kind !== 'one') expect.fail(value.kind);
    // dT/dR = −T²/(B·R), B about 3890 K between 0 and 40 °C: 0.1 kΩ of 12.49 kΩ is 0.18 °C.
    expect(Math.abs(value.amount.spread[0]?.by ?? 0)).toBeCloseTo(0.18, 2);
    const wrong = result('thermistor_temperature(ohms, spec.maf)', { names, functions: engineFunctions() });
    expect(wrong.diagnostics.map((each) => each.code)).toEqual(['wrong-argument']);
  });
});

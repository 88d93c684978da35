import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { absoluteLoad, airPerStroke, volumetricEfficiency } from '../../../core/engine/air/airFlow.ts';
import { inHg, kelvin, numberOf, rpm, sentenceOf } from '../answers.ts';

/** The pressure at which dry air of 25 °C has this density, Pa. */
const pressureOf = (density: number) => density * 287.05 * kelvin(25);

describe('air per stroke and absolute load', () => {
  // Arithmetic from the definitions in SAE J1979 / ISO 15031-5: g/s, rpm, cylinders, L → g a stroke, %.
  it.each([
    [3.5, 750, 4, 2.0, 0.14, 23.649],
    [100, 6000, 4, 2.0, 0.5, 84.459],
    [25, 2500, 4, 2.0, 0.3, 50.676],
    [5.7, 700, 8, 5.0, 0.12214, 16.506],
  ])('of %f g/s at %i rpm, %i cylinders, %f L', (maf, speed, cylinders, litres, grams, load) => {
    expect(numberOf(airPerStroke(maf / 1000, rpm(speed), cylinders)) * 1000).toBeCloseTo(grams, 5);
    expect(numberOf(absoluteLoad(maf / 1000, rpm(speed), litres / 1000)) * 100).toBeCloseTo(load, 3);
  });

  it('passes 100 % on a boosted engine', () => {
    expect(numberOf(absoluteLoad(0.2, rpm(6000), 0.002))).toBeCloseTo(1.68919, 5);
  });

  it('is not corrected for the barometer: the same filling of thinner air is less load', () => {
    const flow = (baro: number) => (0.85 * (baro / (287.05 * kelvin(25))) * 0.002 * rpm(2500)) / 2;
    const sea = numberOf(absoluteLoad(flow(29.92 * inHg), rpm(2500), 0.002));
    const mountain = numberOf(absoluteLoad(flow(24.9 * inHg), rpm(2500), 0.002));
    expect(mountain / sea).toBeCloseTo(24.9 / 29.92, 12);
  });

  it('is the volumetric efficiency referred to 1.184 g/L', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.6, noNaN: true }),
        fc.double({ min: 5, max: 130, noNaN: true }),
        fc.double({ min: 5e-4, max: 8e-3, noNaN: true }),
        (maf, speed, displacement) => {
          const load = numberOf(absoluteLoad(maf, speed, displacement));
          const filled = numberOf(
            volumetricEfficiency(maf, speed, pressureOf(1.184), kelvin(25), displacement),
          );
          expect(Math.abs(filled - load)).toBeLessThanOrEqual(1e-12 * load);
        },
      ),
    );
  });
});

describe('volumetric efficiency', () => {
  // Arithmetic from Heywood, chapter 2: η = 2·m / (ρ·V·N).
  it.each([
    [120, 6000, 2.0, 1.184, 1.01351],
    [3.5, 750, 2.0, 1.184, 0.23649],
    [32, 2000, 2.4, 1.2, 0.66667],
    [41.9333, 2500, 2.0, 1.184, 0.85],
  ])('of %f g/s at %i rpm, %f L, %f g/L is %f', (maf, speed, litres, density, expected) => {
    const filled = volumetricEfficiency(
      maf / 1000,
      rpm(speed),
      pressureOf(density),
      kelvin(25),
      litres / 1000,
    );
    expect(numberOf(filled)).toBeCloseTo(expected, 5);
  });

  // Pulkrabek, Engineering Fundamentals of the Internal Combustion Engine, example 2-2 (values from memory):
  // 0.00050 kg into a cylinder of 0.5 L, air of 1.181 kg/m³, six cylinders at 3600 rpm.
  it('of the textbook’s V6 is 84.7 %', () => {
    const maf = 0.0005 * 6 * (rpm(3600) / 2);
    expect(numberOf(volumetricEfficiency(maf, rpm(3600), pressureOf(1.181), kelvin(25), 0.003))).toBeCloseTo(
      0.847,
      3,
    );
  });

  it('is what speed-density turns back into flow (arithmetic: 35 kPa, 40 °C, 2.0 L, 800 rpm, 75 % make 3.8937 g/s)', () => {
    expect(numberOf(volumetricEfficiency(0.0038937, rpm(800), 35000, kelvin(40), 0.002))).toBeCloseTo(
      0.75,
      4,
    );
    expect(numberOf(volumetricEfficiency(0.057642, rpm(3000), 95000, kelvin(30), 0.0024))).toBeCloseTo(
      0.88,
      4,
    );
  });
});

describe('what cannot be computed', () => {
  it('is air for an engine that stands still', () => {
    expect(sentenceOf(airPerStroke(0.0035, 0, 4))).toBe(
      'At 0 rpm the engine draws nothing in; the speed must be above 0 rpm.',
    );
    expect(sentenceOf(absoluteLoad(0.0035, 0, 0.002))).toContain('0 rpm');
    expect(sentenceOf(volumetricEfficiency(0.0035, -10, 1e5, 300, 0.002))).toContain('-600 rpm');
  });

  it('is a flow that runs backwards, no cylinders, half a cylinder, no displacement, no pressure, no temperature', () => {
    expect(sentenceOf(airPerStroke(-0.001, 10, 4))).toBe(
      'An air flow of -1 g/s runs backwards. Check its sign and unit.',
    );
    expect(sentenceOf(airPerStroke(0.001, 10, 0))).toContain('not 0');
    expect(sentenceOf(airPerStroke(0.001, 10, 2.5))).toContain('not 2.5');
    expect(sentenceOf(absoluteLoad(0.001, 10, 0))).toContain('displacement');
    expect(sentenceOf(volumetricEfficiency(0.001, 10, 0, 300, 0.002))).toContain(
      'absolute pressure of 0 kPa',
    );
    expect(sentenceOf(volumetricEfficiency(0.001, 10, 1e5, 0, 0.002))).toContain('-273.15 °C');
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { volumetricEfficiency } from '../../../core/engine/air/airFlow.ts';
import { speedDensity } from '../../../core/engine/air/speedDensity.ts';
import { kelvin, numberOf, rpm, sentenceOf } from '../answers.ts';

describe('speed-density', () => {
  // Arithmetic from Heywood, Internal Combustion Engine Fundamentals, chapter 2: kPa, °C, rpm, efficiency, L → g/s.
  it.each([
    [35, 40, 800, 0.75, 2.0, 3.8937],
    [95, 30, 3000, 0.88, 2.4, 57.642],
  ])('of %f kPa, %i °C, %i rpm, %f, %f L', (kPa, celsius, speed, efficiency, litres, grams) => {
    const flow = speedDensity(kPa * 1000, kelvin(celsius), rpm(speed), efficiency, litres / 1000);
    // Four significant digits: the constant of dry air is 287.05 or 287.058 J/(kg·K) by source.
    expect(Math.abs((numberOf(flow) * 1000) / grams - 1)).toBeLessThan(5e-5);
  });

  it('turns volumetric efficiency back into flow', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20e3, max: 250e3, noNaN: true }),
        fc.double({ min: 250, max: 350, noNaN: true }),
        fc.double({ min: 5, max: 130, noNaN: true }),
        fc.double({ min: 0.1, max: 1.3, noNaN: true }),
        (map, iat, speed, efficiency) => {
          const flow = numberOf(speedDensity(map, iat, speed, efficiency, 0.0024));
          expect(numberOf(volumetricEfficiency(flow, speed, map, iat, 0.0024))).toBeCloseTo(efficiency, 12);
        },
      ),
    );
  });

  it('names what is wrong', () => {
    expect(sentenceOf(speedDensity(35e3, 313, 0, 0.75, 0.002))).toContain('must be above 0 rpm');
    expect(sentenceOf(speedDensity(0, 313, 13, 0.75, 0.002))).toContain('does not exist');
    expect(sentenceOf(speedDensity(35e3, 313, 13, -0.1, 0.002))).toContain('-10 %');
    expect(sentenceOf(speedDensity(35e3, 313, 13, 0.75, 0))).toContain('`engine: displacement`');
  });
});

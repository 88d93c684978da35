import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calculatedLoad } from '../../../core/engine/air/calculatedLoad.ts';
import { inHg, kelvin, numberOf, sentenceOf } from '../answers.ts';

describe('calculated load', () => {
  // Arithmetic from the definition of LOAD_PCT in SAE J1979 / ISO 15031-5: flow, peak (g/s), barometer (inHg), °C → %.
  it.each([
    [25, 100, 29.92, 25, 25.0],
    [25, 100, 24.9, 25, 30.04],
    [50, 100, 29.92, -10, 46.972],
  ])('of %f g/s with a peak of %f at %f inHg and %i °C', (maf, peak, baro, celsius, percent) => {
    const load = numberOf(calculatedLoad(maf / 1000, peak / 1000, baro * inHg, kelvin(celsius)));
    expect(load * 100).toBeCloseTo(percent, 3);
  });

  it('is 100 % at wide open throttle at any altitude: the flow falls as the barometer does', () => {
    fc.assert(
      fc.property(fc.double({ min: 15, max: 31, noNaN: true }), (baro) => {
        const flow = 0.1 * (baro / 29.92);
        expect(numberOf(calculatedLoad(flow, 0.1, baro * inHg, 298.15))).toBeCloseTo(1, 12);
      }),
    );
  });

  it('names what is wrong', () => {
    expect(sentenceOf(calculatedLoad(-0.01, 0.1, 1e5, 298))).toContain('-10 g/s runs backwards');
    expect(sentenceOf(calculatedLoad(0.01, 0, 1e5, 298))).toContain('above 0, not 0 g/s');
    expect(sentenceOf(calculatedLoad(0.01, 0.1, -5000, 298))).toContain('needs the barometer first');
    expect(sentenceOf(calculatedLoad(0.01, 0.1, 1e5, 0.1))).toContain('does not exist');
  });
});

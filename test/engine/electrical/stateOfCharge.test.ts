import { describe, expect, it } from 'vitest';
import { stateOfCharge } from '../../../core/engine/electrical/stateOfCharge.ts';
import { numberOf, sentenceOf } from '../answers.ts';

describe('a battery’s state of charge', () => {
  // The battery council's type of table for flooded batteries (values from memory).
  it.each([
    [12.65, 1],
    [12.45, 0.75],
    [12.24, 0.5],
    [12.06, 0.25],
    [11.89, 0],
  ])('of %f V is %f', (volts, share) => {
    expect(numberOf(stateOfCharge(volts, 'flooded'))).toBeCloseTo(share, 9);
  });

  it('goes straight between, full above and empty below', () => {
    expect(numberOf(stateOfCharge(12.55, 'flooded'))).toBeCloseTo(0.875, 9);
    expect(numberOf(stateOfCharge(12.8, 'Flooded'))).toBe(1);
    expect(numberOf(stateOfCharge(11.2, 'EFB'))).toBe(0);
  });

  // U.S. Army TM 5-3805-262-20, 5-142: 12.6, 12.4, 12.2, 12.0 V for 100, 75, 50, 25 %. An inverter's manual: 12.7 V full, 12.1 V half.
  it('agrees with other published tables as far as these agree with each other: 0.1 V, up to half of a charge’s quarter', () => {
    for (const [volts, share] of [
      [12.6, 1],
      [12.4, 0.75],
      [12.2, 0.5],
      [12.0, 0.25],
      [12.7, 1],
    ] as const) {
      expect(numberOf(stateOfCharge(volts - 0.1, 'flooded'))).toBeLessThan(share);
      expect(numberOf(stateOfCharge(Math.min(volts + 0.1, 13.2), 'flooded'))).toBeGreaterThanOrEqual(share);
    }
  });

  // U.S. Army, PS Magazine, TB 43-PS-665 (April 2008), page 15: 12.9 V is 95 to 100 %, 11.4 V is 0 %, after eight hours of rest.
  it('of AGM lies on a line of its own', () => {
    expect(numberOf(stateOfCharge(12.9, 'AGM'))).toBeCloseTo(1, 9);
    expect(numberOf(stateOfCharge(11.4, 'agm'))).toBe(0);
    expect(numberOf(stateOfCharge(12.15, 'AGM'))).toBeCloseTo(0.5, 9);
    expect(numberOf(stateOfCharge(13.1, 'AGM'))).toBe(1);
  });

  // Full at 12.8 to 13.0 V: U.S. Army TM 9-6115-730-24, WP 0050. The other three: common practice, without a source.
  it.each([
    [12.8, 1],
    [12.6, 0.75],
    [12.3, 0.5],
    [12.0, 0.25],
  ])('of AGM at %f V lies within 15 points of what others print: %f', (volts, share) => {
    expect(Math.abs(numberOf(stateOfCharge(volts, 'AGM')) - share)).toBeLessThanOrEqual(0.15 + 1e-9);
  });

  it('refuses what is no rested 12 V battery', () => {
    expect(sentenceOf(stateOfCharge(14.2, 'flooded'))).toContain('being charged');
    expect(sentenceOf(stateOfCharge(10.2, 'flooded'))).toContain('shorted cell');
  });

  it('says where builds have no common table, and which build is not known', () => {
    expect(sentenceOf(stateOfCharge(12.5, 'gel'))).toContain('For gel batteries there is no table');
    expect(sentenceOf(stateOfCharge(12.5, 'nickel'))).toContain('"nickel" is not known');
  });
});

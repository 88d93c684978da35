import { describe, expect, it } from 'vitest';
import { barometerByRule } from '../../../core/engine/air/barometerByRule.ts';
import { geometric, standardPressure } from '../../../core/engine/air/standardAtmosphere.ts';
import { vacuumAtAltitude } from '../../../core/engine/air/vacuumAtAltitude.ts';
import { inHg, numberOf, sentenceOf } from '../answers.ts';

const feet = 0.3048;
/** The standard barometer in inHg at feet of geopotential altitude, as the tables count. */
const standard = (at: number) => numberOf(standardPressure(geometric(at * feet))) / inHg;

describe('one inch of mercury for a thousand feet', () => {
  it('of 29.92 inHg at 3000 ft is 26.92 inHg (FAA, Pilot’s Handbook of Aeronautical Knowledge, glossary)', () => {
    expect(numberOf(barometerByRule(29.92 * inHg, 3000 * feet)) / inHg).toBeCloseTo(26.92, 10);
  });

  // The true slope, inHg over the next 1000 ft, arithmetic from U.S. Standard Atmosphere 1976.
  it.each([
    [0, 1.066],
    [3000, 0.975],
    [5000, 0.918],
    [9000, 0.811],
  ])('is really, from %i ft on, %f inHg', (from, slope) => {
    expect(standard(from) - standard(from + 1000)).toBeCloseTo(slope, 3);
  });

  it('is within 0.25 inHg up to 7000 ft and 0.7 inHg low at 10000 ft, as its page says', () => {
    const off = (at: number) => numberOf(barometerByRule(29.921 * inHg, at * feet)) / inHg - standard(at);
    for (let at = 0; at <= 7000; at += 500) expect(Math.abs(off(at))).toBeLessThan(0.25);
    expect(off(10000)).toBeCloseTo(-0.66, 2);
  });

  it('names what is wrong', () => {
    expect(sentenceOf(barometerByRule(0, 0))).toContain('sea-level figure');
    expect(sentenceOf(barometerByRule(101e3, 4000))).toContain('`standard_pressure`');
  });
});

describe('vacuum at altitude', () => {
  it('loses what the barometer loses: 19 inHg at the sea is 13.97 inHg at 5000 ft of the tables', () => {
    const here = numberOf(vacuumAtAltitude(19 * inHg, geometric(5000 * feet))) / inHg;
    // 29.921 − 24.896 inHg, the table's figures.
    expect(here).toBeCloseTo(19 - (29.921 - 24.896), 2);
  });

  it('is the vacuum itself at the sea', () => {
    expect(numberOf(vacuumAtAltitude(19 * inHg, 0))).toBeCloseTo(19 * inHg, 6);
  });

  it('names what is wrong', () => {
    expect(sentenceOf(vacuumAtAltitude(2 * inHg, 3000))).toContain('no vacuum to read');
    expect(sentenceOf(vacuumAtAltitude(-1, 0))).toContain('does not exist');
    expect(sentenceOf(vacuumAtAltitude(31 * inHg, 0))).toContain('does not exist');
    expect(sentenceOf(vacuumAtAltitude(19 * inHg, 20000))).toContain('standard atmosphere is computed from');
  });
});

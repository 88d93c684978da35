import { describe, expect, it } from 'vitest';
import {
  chargingPattern,
  crankingPattern,
  internalResistance,
  loadTestLimit,
  rippleFrequency,
  ripplePattern,
} from '../../../core/engine/electrical/charging.ts';
import { drawPattern, parkedCharge, timeParked } from '../../../core/engine/electrical/parasiticDraw.ts';
import { chargeTableWords, stateOfCharge } from '../../../core/engine/electrical/stateOfCharge.ts';
import { numberOf, rpm, sentenceOf } from '../answers.ts';

const fahrenheit = (value: number) => (value + 459.67) / 1.8;

describe('a battery under load', () => {
  it('of 12.60 V that falls to 10.35 V at 180 A has 12.5 mΩ (arithmetic)', () => {
    expect(numberOf(internalResistance(12.6, 10.35, 180)) * 1000).toBeCloseTo(12.5, 10);
    expect(sentenceOf(internalResistance(12.6, 12.7, 180))).toContain('charges the battery');
    expect(sentenceOf(internalResistance(12.6, 12.5, 0))).toContain('load of 0 A');
  });

  // The battery council's table, value from memory; 9.6 V at about 70 °F is the load test's, not cranking's.
  it.each([
    [70, 9.6],
    [90, 9.6],
    [40, 9.3],
    [35, 9.2],
    [0, 8.5],
  ])('may end a load test at %i °F with %f V', (temperature, volts) => {
    expect(numberOf(loadTestLimit(fahrenheit(temperature)))).toBeCloseTo(volts, 10);
  });

  it('outside the table is told', () => {
    expect(sentenceOf(loadTestLimit(fahrenheit(-20)))).toContain('room temperature');
    expect(sentenceOf(loadTestLimit(fahrenheit(200)))).toContain(
      'from -17.778 °C (0 °F) to 60 °C (140 °F); a battery',
    );
  });

  it('has its table printed with its source', () => {
    expect(chargeTableWords('flooded')).toBe(
      'battery council table for flooded batteries (value from memory): 12.65 V 100 %, 12.45 V 75 %, 12.24 V 50 %, 12.06 V 25 %, 11.89 V 0 %',
    );
    expect(chargeTableWords('AGM')).toBe(
      'U.S. Army, TB 43-PS-665 (April 2008), for AGM batteries after eight hours of rest: 12.9 V 100 %, 11.4 V 0 %',
    );
    expect(chargeTableWords('gel')).toHaveProperty('noAnswer', expect.stringContaining('the maker’s own'));
    expect(chargeTableWords('nuclear')).toHaveProperty('noAnswer', expect.stringContaining('is not known'));
    expect(numberOf(stateOfCharge(12.24, 'flooded'))).toBeCloseTo(0.5, 12);
  });

  // An inverter's manual, at least three hours of rest: 100 % 12.7, 70 % 12.3, 50 % 12.1, 20 % 11.7 V; rounded lists 12.6, 12.4, 12.2, 12.0.
  it('lies within a fifth of a charge of other published tables, which differ by 0.05 to 0.1 V', () => {
    for (const [volts, share] of [
      [12.7, 1],
      [12.5, 0.8],
      [12.3, 0.7],
      [12.1, 0.5],
    ] as const)
      expect(Math.abs(numberOf(stateOfCharge(volts, 'flooded')) - share)).toBeLessThan(0.21);
  });
});

describe('charging and cranking', () => {
  // Common practice: conventional charging 13.5 to 14.7 V; managed charging 12.4 to 15 V on purpose.
  it('is read as the trade reads it', () => {
    expect([12.5, 13.2, 14.2, 14.9, 15.6].map(chargingPattern)).toEqual([
      'not charging',
      'low, or held low on purpose',
      'charging',
      'high, or raised on purpose',
      'overcharging',
    ]);
    expect([10.8, 9.6, 8.4].map(crankingPattern)).toEqual(['cranks well', 'weak', 'collapses']);
    expect([0.18, 0.7, 1.6].map(ripplePattern)).toEqual(['smooth', 'raised', 'far too high']);
  });

  it('refuses what no 12 V system shows', () => {
    expect(chargingPattern(142)).toHaveProperty('noAnswer', expect.stringContaining('142 V'));
    expect(crankingPattern(24)).toHaveProperty('noAnswer', expect.stringContaining('24 V'));
    expect(ripplePattern(-1)).toHaveProperty('noAnswer', expect.stringContaining('peak to peak'));
  });

  it('ripples six times for each pair of poles: 1200 Hz of 6 pairs at 800 rpm over 2.5 (arithmetic)', () => {
    expect(numberOf(rippleFrequency(rpm(800), 2.5, 6))).toBeCloseTo(1200, 8);
    expect(sentenceOf(rippleFrequency(10, 0, 6))).toContain('ratio');
    expect(sentenceOf(rippleFrequency(10, 2, 6.5))).toContain('6.5');
  });
});

describe('a parked car', () => {
  it('takes 4.15 Ah in three days with 6 A for 20 min and 30 mA from then on (arithmetic)', () => {
    expect(numberOf(parkedCharge(6, 1200, 0.03, 72 * 3600)) / 3600).toBeCloseTo(2 + 0.03 * (72 - 1 / 3), 10);
    expect(numberOf(parkedCharge(6, 3600, 0.03, 1800))).toBeCloseTo(6 * 1800, 8);
    expect(sentenceOf(parkedCharge(-1, 1, 1, 1))).toContain('Turn the clamp round');
  });

  it('of 60 Ah lasts 33.3 days from 90 to 50 % at 30 mA (arithmetic)', () => {
    expect(numberOf(timeParked(60 * 3600, 0.03, 0.9, 0.5)) / 86400).toBeCloseTo(24 / 0.03 / 24, 8);
    expect(sentenceOf(timeParked(60 * 3600, 0, 0.9, 0.5))).toContain('never runs down');
    expect(sentenceOf(timeParked(60 * 3600, 0.03, 0.4, 0.5))).toContain('no way down');
  });

  it('is given its time to fall asleep before its draw is judged', () => {
    const draw = (amperes: number, minutes: number) => drawPattern(amperes, minutes * 60, 0.05, 45 * 60);
    expect(draw(0.03, 5)).toBe('asleep');
    expect(draw(2.1, 5)).toBe('not asleep yet');
    expect(draw(0.42, 70)).toBe('something stays awake');
    expect(draw(-0.42, 70)).toHaveProperty('noAnswer');
  });
});

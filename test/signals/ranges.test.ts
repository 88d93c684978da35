import { describe, expect, it } from 'vitest';
import { rangesOf } from '../../core/signals/ranges.ts';
import type { Form } from '../../core/signals/types.ts';

const inHg = 3386.388640341; // conventional inch of mercury, NIST SP 811 (2008) B.8

describe('the ranges of a form', () => {
  it('are numbers in SI: pressures in pascal', () => {
    const form: Form = {
      unit: 'inHg',
      kind: 'vacuum',
      physical: '0 .. 31 inHg',
      usual: [{ state: 'warm idle', range: '17 .. 22 inHg', source: 'common practice' }],
    };
    const { physical, usual, encoding, failed } = rangesOf(form);
    expect(physical?.low).toBe(0);
    expect(physical?.high).toBeCloseTo(31 * inHg, 6);
    expect(usual).toEqual([
      { state: 'warm idle', range: { low: 17 * inHg, high: 22 * inHg }, source: 'common practice' },
    ]);
    expect(encoding).toBeUndefined();
    expect(failed).toEqual([]);
  });

  it('have temperatures as points and steps as differences', () => {
    const form: Form = {
      unit: '°F',
      kind: 'point',
      encoding: { range: '-40 .. 419 °F', step: '1.8 °F', source: 'SAE J1979 $05' },
      physical: '-40 .. 302 °F',
      failed: [{ value: '-40 °F', means: 'an open circuit' }],
    };
    const { physical, encoding, failed } = rangesOf(form);
    expect(physical?.low).toBeCloseTo(233.15, 9);
    expect(physical?.high).toBeCloseTo(423.15, 9);
    expect(encoding?.high).toBeCloseTo(488.15, 9);
    expect(encoding?.step).toBeCloseTo(1, 12);
    expect(encoding?.source).toBe('SAE J1979 $05');
    expect(failed[0]?.low).toBeCloseTo(233.15, 9);
    expect(failed[0]?.high).toBe(failed[0]?.low);
    expect(failed[0]?.means).toBe('an open circuit');
  });

  it('are open where the text is: at most, at least', () => {
    const most = rangesOf({ unit: 'psi', kind: 'gauge', physical: 'at most 3 psi' }).physical;
    expect(most?.low).toBe(Number.NEGATIVE_INFINITY);
    expect(most?.high).toBeCloseTo(3 * 6894.757293168361, 6);
    const least = rangesOf({ unit: 'V', physical: 'at least 9.6 V' }).physical;
    expect(least).toEqual({ low: 9.6, high: Number.POSITIVE_INFINITY });
  });

  it('are none where the text is empty or no range', () => {
    expect(rangesOf({ unit: 'V', physical: '' }).physical).toBeUndefined();
    expect(rangesOf({ unit: 'V', physical: 'who knows' }).physical).toBeUndefined();
    expect(rangesOf({ unit: 'V', physical: 'not taken' }).physical).toBeUndefined();
    const form: Form = { unit: 'V', physical: '', usual: [{ state: 'cruise', range: '?', source: '' }] };
    expect(rangesOf(form).usual).toEqual([]);
  });

  it('are read once', () => {
    const form: Form = { unit: 'V', physical: '0 .. 5 V' };
    expect(rangesOf(form)).toBe(rangesOf(form));
    expect(rangesOf({ ...form })).not.toBe(rangesOf(form));
  });
});

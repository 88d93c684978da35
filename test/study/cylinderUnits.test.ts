import { describe, expect, it } from 'vitest';
import { codesOf, resultOf } from '../support/study.ts';

const compression = (values: string) =>
  resultOf(
    `readings: Compression\nstate: cranking\nvalues:\n  compression: {${values}}\n`,
  ).diagnostics.filter(({ code }) => code === 'cylinder-in-another-unit');

describe('the units of cylinders', () => {
  it('tells the one whose unit slipped, in the words that were written', () => {
    expect(
      compression('1: 172 psi, 2: 175 psi, 3: 168 kPa, 4: 170 psi').map(({ message }) => message),
    ).toEqual([
      '`compression[3]` is 168 kPa, which is 24.366 psi, and the others are in psi. 168 psi would stand nearer to them: is the unit right?',
    ]);
    expect(compression('1: 11.8 bar, 2: 12.0 bar, 3: 12.1 psi, 4: 11.9 bar')).toHaveLength(1);
  });

  it.each([
    ['one unit', '1: 172 psi, 2: 175 psi, 3: 68 psi, 4: 170 psi'],
    ['another gauge that reads right', '1: 172 psi, 2: 175 psi, 3: 11.7 bar, 4: 170 psi'],
    ['two and two', '1: 172 psi, 2: 175 psi, 3: 168 kPa, 4: 170 kPa'],
    ['a dead cylinder', '1: 172 psi, 2: 175 psi, 3: 0 kPa, 4: 170 psi'],
  ])('leaves alone: %s', (_, values) => {
    expect(compression(values)).toEqual([]);
  });

  it('is no matter of places with names of their own', () => {
    const drops =
      'readings: Drops\nstate: cranking\nvalues:\n  drops: {a: 0.2 V, b: 0.3 V, c: 0.1 V, d: 0.2 mV}\n';
    expect(codesOf(resultOf(drops))).not.toContain('cylinder-in-another-unit');
  });
});

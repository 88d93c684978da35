import type { ScalarFunction } from './functionRow.ts';

/** `a ^ b` of plain numbers where b is not known beforehand: a formula like any other. */
export const raise: ScalarFunction = {
  form: 'scalar',
  name: '^',
  family: 'values',
  summary: 'A plain number raised to a plain number.',
  parameters: [
    { name: 'base', takes: { what: 'quantity', unit: '1' }, meaning: 'the number' },
    { name: 'exponent', takes: { what: 'quantity', unit: '1' }, meaning: 'the exponent' },
  ],
  result: { kind: 'fixed', unit: '1' },
  formula: 'a^b',
  range: 'numbers above 0, or whole exponents',
  errors: ['A negative number has no such power.'],
  source: 'definition',
  example: { expression: '10.5 ^ 1.3', result: '21.259' },
  compute: ([base, exponent]) => {
    const power = Number(base) ** Number(exponent);
    return Number.isFinite(power)
      ? power
      : { noAnswer: 'A negative number has no such power, and 0 no negative one.' };
  },
};

import { describe, expect, it } from 'vitest';
import type { FunctionRow } from '../../core/expression/functionRow.ts';
import { seriesFunctions } from '../../core/expression/functions/series.ts';
import { valueFunctions } from '../../core/expression/functions/values.ts';
import { unitOf } from '../../core/quantity/unit.ts';
import { printed, result } from '../support/expressionResult.ts';
import { byMember, reading, samples } from '../support/expressionScope.ts';

/** What the examples of the table read: a compression test, samples of a sensor (synthetic), a barometer. */
const setting = {
  names: {
    'cranked.compression': byMember('cylinder', {
      1: '181 psi gauge',
      2: '178 psi gauge',
      3: '180 psi gauge',
      4: '179 psi gauge',
    }),
    'log.front': samples('log', 'V', [0, 1, 2, 3], [0.1, 0.8, 0.3, 0.6]),
  },
  // 20 inHg of vacuum under 29.92 inHg are 9.92 inHg absolute: arithmetic.
  barometer: reading('29.92 inHg absolute'),
};

const rows: readonly FunctionRow[] = [...valueFunctions, ...seriesFunctions];

describe('every function of values and series gives what its page shows', () => {
  for (const row of rows) {
    it(`${row.example.expression} = ${row.example.result}`, () => {
      const { value, diagnostics } = result(row.example.expression, setting);
      expect(diagnostics).toEqual([]);
      expect(printed(value)).toBe(row.example.result);
      expect(row.example.expression).toContain(`${row.name}(`);
    });
  }
});

describe('every row is documented and its units exist', () => {
  it.each(rows.map((row) => [row.name, row] as const))('%s', (_name, row) => {
    expect(row.summary).toMatch(/^[A-Z].*\.$/);
    expect(row.formula).not.toBe('');
    expect(row.source).not.toBe('');
    for (const each of row.errors) expect(each).toMatch(/^[A-Z].*\.$/);
    for (const { takes, otherwise, meaning } of row.parameters) {
      expect(meaning).not.toBe('');
      if (takes.unit !== undefined) expect(unitOf(takes.unit)).toBeDefined();
      if (otherwise !== undefined) expect(takes.what === 'text' || takes.what === 'quantity').toBe(true);
    }
    if (row.result.kind === 'fixed') expect(unitOf(row.result.unit)).toBeDefined();
  });

  it('no name stands twice', () => {
    expect(new Set(rows.map((row) => row.name)).size).toBe(rows.length);
  });
});

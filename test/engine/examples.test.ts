import { describe, expect, it } from 'vitest';
import { message } from '../../core/diagnostics/words.ts';
import { engineFunctions } from '../../core/engine/engineFunctions.ts';
import type { FunctionRow } from '../../core/expression/functionRow.ts';
import { fromSi } from '../../core/quantity/convert.ts';
import { unitOf } from '../../core/quantity/unit.ts';
import { checkCase } from '../../core/rules/checkCase.ts';

/*
 * Every example of the functions' pages, typed into a case as a reader would type it:
 * what it needs stands in a reference, the expression in a check.
 */

/** The result of an example as a case computes it, in the unit and with the decimals of the printed one. */
function recomputed({ example }: FunctionRow): string {
  const given =
    example.given === undefined
      ? ''
      : `---\nreference: What the example is given\nas: spec\nsource: made for the example\nvalues:\n  ${example.given}\n`;
  const studied = checkCase(
    `diag: 1\ncase: An example\n${given}---\ncheck: The example\nlet:\n  answer: |\n    ${example.expression}\n`,
  );
  const errors = studied.findings.filter(({ diagnostic }) => diagnostic.severity === 'error');
  expect(errors.map(({ diagnostic }) => message(diagnostic))).toEqual([]);
  const value = studied.computed.find(({ fullName }) => fullName === 'answer')?.value;
  switch (value?.kind) {
    case 'words':
      return value.text;
    case 'one': {
      const [, digits = '', symbol = '1'] = /^([+-]?\d+(?:\.\d+)?)(?: (\S+))?$/.exec(example.result) ?? [];
      const unit = unitOf(symbol);
      expect(unit?.dimension, example.result).toBe(value.type.dimension);
      if (unit === undefined) return '';
      // Only a temperature's unit has an offset, and only where it is a point.
      const shown = fromSi(value.amount.si, unit, value.type.kind);
      const text = shown.toFixed(digits.split('.')[1]?.length ?? 0);
      return symbol === '1' ? text : `${text} ${symbol}`;
    }
    default:
      return value?.kind === 'absent' ? value.why : `no value: ${value?.kind}`;
  }
}

describe('the worked examples', () => {
  const built = engineFunctions().filter(({ example }) => !/(?<!spec)\.[a-z]/.test(example.expression));

  it('are those of every function that needs no capture', () => {
    const others = engineFunctions()
      .filter((row) => !built.includes(row))
      .map(({ name }) => name);
    // Those of captures have tests of their own, on synthetic signals.
    expect(others.sort()).toEqual([
      'crank_angle',
      'cranking_speed',
      'hump_balance',
      'intake_balance',
      'relative_compression',
      'valve_events',
    ]);
  });

  it.each(built.map((row) => [row.example.expression, row.example.result, row] as const))(
    '%s is %s',
    (_, result, row) => {
      expect(recomputed(row)).toBe(result);
    },
  );
});

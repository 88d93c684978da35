import { describe, expect, it } from 'vitest';
import { message } from '../../core/diagnostics/words.ts';
import { checkCase } from '../../core/rules/checkCase.ts';

/** The findings of a lambda computed from gas readings; the gases are synthetic. */
function found(expression: string): readonly string[] {
  const text = `diag: 1
case: Gas
engine:
  fuel: E0
---
readings: Tailpipe
as: g
state: warm idle
values:
  co2: 14.8 %
  co: 0.5 %
  o2_gas: 0.6 %
  hc: 120 ppm
---
check: Lambda
let:
  lambda: ${expression}
`;
  return checkCase(text).findings.flatMap(({ diagnostic }) =>
    diagnostic.code === 'argument-of-another' ? [message(diagnostic)] : [],
  );
}

describe('values that are called like another parameter', () => {
  it('are warned of: the formula would give a number all the same', () => {
    expect(found('lambda_from_gas(g.co, g.co2, g.o2_gas, g.hc)')).toEqual([
      'A value called `co` stands where `lambda_from_gas` takes `co2` (carbon dioxide, dry). The order is `lambda_from_gas(co2, co, o2, hc, [nox], [fuel])`. If it is meant, write `co2 = …`.',
      'A value called `co2` stands where `lambda_from_gas` takes `co` (carbon monoxide, dry). The order is `lambda_from_gas(co2, co, o2, hc, [nox], [fuel])`. If it is meant, write `co = …`.',
    ]);
  });

  it('are not, in their order or where the parameter is named', () => {
    expect(found('lambda_from_gas(g.co2, g.co, g.o2_gas, g.hc)')).toEqual([]);
    expect(found('lambda_from_gas(co2 = g.co, co = g.co2, o2 = g.o2_gas, hc = g.hc)')).toEqual([]);
  });
});

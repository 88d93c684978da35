import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { caseResult } from '../../core/study/results.ts';

const resultOf = (expectation: string) =>
  caseResult(
    checkCase(`diag: 1
case: A van that hunts
---
readings: Warm idle
as: idle
state: warm idle
values:
  battery: 14.1 V
---
check: Does it charge?
expect:
  - ${expectation}
`),
    'van.diag',
  );

describe('an expression that was misread has no verdict, however much of it could be read', () => {
  it.each([
    ['idle.battery > 13.5 V idle.battery', 'unexpected-text'],
    ['(idle.battery > 13.5 V', 'unclosed-bracket'],
    ['idle.battery > 13.5 V;', 'unexpected-text'],
    ['idle.battery ≥ 13.5 V', 'foreign-mark'],
  ])('%s', (expectation, code) => {
    const { expectations, diagnostics } = resultOf(expectation);
    expect(expectations.map((each) => each.verdict)).toEqual(['cannot compute']);
    expect(diagnostics.map((each) => each.code)).toContain(code);
  });

  it('the same, written well, has one', () => {
    const { expectations, diagnostics } = resultOf('idle.battery >= 13.5 V');
    expect(expectations.map((each) => each.verdict)).toEqual(['holds']);
    expect(diagnostics).toEqual([]);
  });
});

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

describe('a value that is written with its circumstances', () => {
  const codesFor = (value: string): readonly string[] =>
    caseResult(
      checkCase(
        `diag: 1\ncase: One\nengine:\n  cylinders: 4\n---\nreadings: One\nstate: warm idle\nvalues:\n  ${value}\n`,
      ),
      'one.diag',
    ).diagnostics.map(({ code, message }) => `${code}: ${message}`);

  it('is not taken for a set by label when `value` is misspelt', () => {
    expect(codesFor('vacuum: {vlaue: 19 inHg, at: booster hose}')).toEqual([
      'unknown-key: `vlaue` is no key of `vacuum`. Did you mean `value`?',
    ]);
  });

  it('says which other key nobody would read', () => {
    expect(codesFor('vacuum: {value: 19 inHg, ta: booster hose}')).toEqual([
      'unknown-key: `ta` is no key of `vacuum`. Did you mean `at`?',
    ]);
    expect(codesFor('vacuum: {value: 19 inHg, where: booster hose}')).toEqual([
      'unknown-key: `where` is no key of `vacuum`. It may have `value`, `tool`, `at` or `saw`.',
    ]);
  });

  it('leaves sets by label and by cylinder alone', () => {
    expect(codesFor('drops: {valve: 0.1 V}')).toEqual([]);
    expect(codesFor('vacuum: {booster: 19 inHg, plenum: 19.2 inHg}')).toEqual([]);
    expect(codesFor('compression: {1: 175 psi, 2: 176 psi, 3: 174 psi, 4: 175 psi}')).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { caseResult } from '../../core/study/results.ts';
import { samples } from '../support/samples.ts';

const header = 'diag: 1\ncase: A\n---\n';
const codesOf = (text: string): string[] => checkCase(text).findings.map(({ diagnostic }) => diagnostic.code);

/** Entries whose one necessary value is not there yet, or is of another shape. */
const rows: readonly (readonly [text: string, codes: readonly string[]])[] = [
  ['check: A\nexpect:\n  - expect:\n', ['missing-value']],
  ['check: A\nexpect:\n  - expect:\n    if fails: Look again.\n  - 2 > 1\n', ['missing-value']],
  ['check: A\nexpect:\n  - expect:\n      - 1 > 0\n  - 2 > 1\n', ['wrong-shape']],
  ['check: A\nexpect:\n  expect:\n', ['missing-value']],
  ['repair: A\ndone: B\nverify:\n  - verify:\n  - 2 > 1\n', ['missing-value']],
  ['suspects: A\nconsider:\n  - name:\n  - name: leak\n', ['missing-value']],
  ['chart: A\nkind: compare\nplot:\n  - plot:\n', ['missing-value']],
  ['chart: A\nkind: cylinders\nplot: compression\nmark:\n  - mark:\n', ['missing-value']],
];

describe('a half-typed entry', () => {
  it.each(rows)('%j is told and left out', (text, codes) => {
    expect(codesOf(header + text)).toEqual(expect.arrayContaining([...codes]));
  });

  it('of the header is left out too', () => {
    expect(codesOf('diag: 1\ncase: A\ncodes:\n  - code:\n  - P0171\n')).toContain('missing-value');
  });

  it('leaves the other entries of its list standing', () => {
    const { expectations } = caseResult(
      checkCase(`${header}check: A\nexpect:\n  - expect:\n  - 2 > 1\n`),
      'case.diag',
    );
    expect(expectations.map(({ text, verdict }) => [text, verdict])).toEqual([['2 > 1', 'holds']]);
  });

  it('anywhere in a sample is told, and every other cell is read', () => {
    let tried = 0;
    for (const [name, text] of samples) {
      const cells = checkCase(text).file.cells.length;
      for (const { 0: line, index } of text.matchAll(/^ *- [a-z ]+:(?= \S.*$)/gm)) {
        const end = text.indexOf('\n', index);
        const study = checkCase(text.slice(0, index) + line + text.slice(end));
        expect(study.file.cells.length, name).toBe(cells);
        expect(
          study.findings.filter(({ diagnostic }) => diagnostic.severity === 'error').length,
          `${name}: ${line}`,
        ).toBeGreaterThan(0);
        tried++;
      }
    }
    expect(tried).toBeGreaterThan(50);
  });
});

import { describe, expect, it } from 'vitest';
import type { Code } from '../../core/diagnostics/diagnostic.ts';
import { catalogue } from '../../core/diagnostics/rows.ts';
import { allRules } from '../../core/rules/allRules.ts';
import { findingsOf } from '../support/annotated.ts';

/*
 * The page of each rule shows what is wrong and what is right. Both are parts of a case: what stands before `# …` belongs
 * into the header, what stands behind it into a readings cell. Here they are put into one, and the rule looks at them.
 */

/** Their examples are parts of captures, of recorded answers, or of the header alone in several ways: `spec/` has them whole. */
const elsewhere: ReadonlySet<string> = new Set([
  'rear-copies-front',
  'obd-code-not-listed',
  'obd-code-not-stored',
  'vin-differs',
  'header-impossible',
  'instruments-differ',
  'unknown-fuel',
]);

/** Not of readings, but of another cell that the example shows whole. */
const isWholeCell = /^suspects:/;

function caseOf(example: string): string {
  const parts = example.split('# …\n');
  const isHeader = parts.length > 1 || /^(vehicle|engine|site|codes):/.test(example);
  const header = isHeader ? (parts[0] ?? '').trimEnd() : '';
  const cell = parts.length > 1 ? parts[1] : isHeader ? '' : example;
  const more = [
    ...(/^engine:/m.test(header) ? [] : ['engine:\n  cylinders: 4\n']),
    'tools:\n  scan:\n    description: generic scan data\n',
  ];
  const head = `diag: 1\ncase: An example\n${header === '' ? '' : `${header}\n`}${more.join('')}`;
  const first = isWholeCell.test(example) ? '' : 'readings: One\n';
  return cell === '' ? head : `${head}---\n${first}${cell}\n`;
}

const shown = allRules.map(({ code }) => code).filter((code) => !elsewhere.has(code));

describe.each(shown)('the page of %s', (code: Code) => {
  const said = (example: string): boolean =>
    findingsOf(caseOf(example)).some((line) => line.includes(` ${code}:`));

  it('has an example that the rule speaks of', () => {
    expect(said(catalogue[code].wrong), caseOf(catalogue[code].wrong)).toBe(true);
  });

  it('has it put right', () => {
    expect(said(catalogue[code].right), caseOf(catalogue[code].right)).toBe(false);
  });
});

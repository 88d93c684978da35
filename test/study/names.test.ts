import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { caseResult } from '../../core/study/results.ts';
import { annotated, findingsOf } from '../support/annotated.ts';

const check = (source: string): void => {
  const { text, marks } = annotated(source);
  expect(findingsOf(text, marks)).toEqual(marks);
};

describe('names', () => {
  it('offers the nearest name for one that nothing has', () => {
    check(`
diag: 1
case: Names
---
readings: Idle
as: before
state: warm idle
values:
  map: 13.1 inHg
---
check: A slip of the hand
expect:
  - before.mpa < 14 inHg
           ^^^ unknown-member: \`before\` has no \`mpa\`, and it is no signal. Did you mean \`map\`? It has map.
  - befor.map < 14 inHg
    ^^^^^ unknown-name: No reading, capture or computed name is called \`befor\`, and it is no signal. Did you mean \`before\`?
  - before < 14 inHg
    ^^^^^^ not-a-value: \`before\` names a group of values, not one. Add a point and one of: map.
`);
  });

  it('offers the cell’s own computed names, no signal where none can be, and nothing that cannot be written', () => {
    const offers = (text: string): readonly string[] =>
      checkCase(text).findings.flatMap(({ diagnostic }) =>
        diagnostic.code === 'unknown-name' || diagnostic.code === 'unknown-member'
          ? diagnostic.facts.nearest
          : [],
      );
    const header = 'diag: 1\ncase: Names\nengine:\n  cylinders: 4\n---\n';
    expect(offers(`${header}check: A\nlet:\n  total: 1\nexpect:\n  - tota > 0\n`)).toEqual(['total']);
    expect(offers(`${header}check: A\nexpect:\n  - engine.injector_flow > 0 cc/min\n`)).toEqual([]);
    expect(offers(`${header}check: A\nlet:\n  'tot"l': 1\nexpect:\n  - totl > 0\n`)).not.toContain('tot"l');
  });

  it('asks which one when several cells have a name', () => {
    check(`
diag: 1
case: Names
---
readings: Before
as: before
state: warm idle
values:
  ltft_b1: 2 %
---
readings: After
as: after
when: after
state: warm idle
values:
  ltft_b1: 1 %
---
check: Which
expect:
  - ltft_b1 between -5 % and 5 %
    ^^^^^^^ ambiguous-name: \`ltft_b1\` is in several cells. Say which one: before.ltft_b1 or after.ltft_b1.
`);
  });

  it('names every member of a circle', () => {
    check(`
diag: 1
case: Names
---
check: Round and round
let:
  a: b + 1 %
     ^^^^^^^ cycle: \`a\` → \`b\` → \`a\`: these are computed from each other, so none can be computed. Break the circle at one of them.
  b: a - 1 %
     ^^^^^^^ cycle
`);
  });

  it('keeps signals and words of the language free', () => {
    check(`
diag: 1
case: Names
---
readings: Before
as: map
    ^^^ shadowed-name
state: warm idle
values:
  rpm: 700 rpm
---
readings: After
as: before
state: warm idle
values:
  rpm: 700 rpm
---
readings: Again
as: before
    ^^^^^^ duplicate-name: \`before\` is already the name of cell 3. Each name may stand for one thing only.
state: warm idle
values:
  rpm: 700 rpm
---
check: Computed
let:
  map: 1 + 1
  ^^^ shadowed-name
`);
  });

  it('lists the tools when a reading names none of them', () => {
    check(`
diag: 1
case: Names
tools:
  gauge:
    description: vacuum gauge
---
readings: Idle
state: warm idle
tool: guage
      ^^^^^ unknown-tool: No tool in the header is called \`guage\`. Did you mean \`gauge\`? Listed: gauge.
values:
  rpm: 700 rpm
`);
  });

  it('of a cell that could not be read are nobody else’s mistake', () => {
    const text = `diag: 1
case: A tab
tools: {gauge: {description: vacuum gauge}}
---
readings: Key on
as: koeo
state: key on engine off
values:
\tmap: 29.6 inHg
---
check: Barometer
let:
  half: koeo.map / 2
expect:
  - koeo.map > 28 inHg
  - koeo.idle.nothing > 1
`;
    const { diagnostics, expectations } = caseResult(checkCase(text), 'case.diag');
    expect(diagnostics.map((each) => each.code)).toEqual(['tab-indentation']);
    expect(expectations.map((each) => [each.verdict, each.why])).toEqual([
      ['cannot compute', 'its cell could not be read'],
      ['cannot compute', 'its cell could not be read'],
    ]);
    const header = text
      .replace('case: A tab', 'case: A: tab')
      .replace('\tmap', '  map')
      .replace('state:', 'tool: gauge\nstate:');
    expect(caseResult(checkCase(header), 'case.diag').diagnostics.map((each) => each.code)).not.toContain(
      'unknown-tool',
    );
  });
});

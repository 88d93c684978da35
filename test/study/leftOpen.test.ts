import { describe, expect, it } from 'vitest';
import { resultOf } from '../support/study.ts';

const suspectsOf = (pattern: string): string => `suspects: Lean
consider:
  - name: leak
    predicts: shape.pattern.pattern is "same grams"
  - name: weak pump
    predicts: shape.pattern.pattern is "${pattern}"
`;

const loads = (trims: string): string => `readings: Loads
as: loads
states:
  fast: 2500 rpm no load
  drive: cruise
table: |
  reading   fast   drive   unit
  ltft_b1   ${trims}   %
  maf       8.6    14.2    g/s
---
check: Shape
as: shape
let:
  pattern: trim_pattern(loads.ltft_b1, loads.maf)
---
`;

describe('what readings leave open', () => {
  it('rules out no suspect whose pattern is one of those that fit', () => {
    // 0.52 and 0.43 g/s are one amount within 2 % of trim, and 6 % and 3 % one share; neither grows with the load.
    const { suspects, expectations } = resultOf(`${loads('6 3')}${suspectsOf('rises with load')}`);
    expect(suspects.map((each) => each.standing)).toEqual(['not tested', 'ruled out']);
    expect(expectations.map((each) => each.verdict)).toEqual(['too close to call', 'fails']);
  });

  it('rules out what fits none of the readings', () => {
    const { suspects } = resultOf(`${loads('3 25')}${suspectsOf('rises with load')}`);
    expect(suspects.map((each) => each.standing)).toEqual(['ruled out', 'still possible']);
  });

  it('rules out nothing by a word that cannot be read', () => {
    const { suspects, values, diagnostics } = resultOf(`readings: Leakage
as: leak
state: key off
values:
  leakdown_from: tailpipe
---
suspects: It leaks
consider:
  - name: burnt exhaust valve
    predicts: leak.leakdown_from is "exhaust"
`);
    expect(diagnostics).toEqual([
      expect.objectContaining({ message: expect.stringContaining('`exhaust`?') }),
    ]);
    expect(values['leak.leakdown_from']).toMatchObject({ value: null, status: 'cannot compute' });
    expect(suspects.map((each) => each.standing)).toEqual(['not tested']);
  });
});

describe('what the header holds', () => {
  it('is nothing to measure next', () => {
    const { next, suspects } = resultOf(`${loads('+6 g/s')}${suspectsOf('rises with load')}`);
    expect(suspects.map((each) => each.standing)).toEqual(['not tested', 'not tested']);
    expect(next).toBeUndefined();
  });
});

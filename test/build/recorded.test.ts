import { describe, expect, it } from 'vitest';
import { type CheckedCase, differences, recordOf } from '../../extension/build/recorded.ts';

const checked: CheckedCase = {
  file: 'samples/van-14.diag',
  expectations: [
    { cell: 8, part: 'expect', text: 'idle < 10 %', verdict: 'fails' },
    { cell: 12, part: 'verify', text: 'after.ltft_b1 < 5 %', verdict: 'holds' },
  ],
  suspects: [{ name: 'air past the meter', standing: 'still possible' }],
  diagnostics: [{ code: 'unit-slip', severity: 'error', line: 21, column: 8 }],
};
const recorded = recordOf([checked]);

describe('the record of a sample', () => {
  it('is a line for each verdict, suspect and finding', () => {
    expect(recorded).toEqual({
      'samples/van-14.diag': [
        'cell 8, expect "idle < 10 %": fails',
        'cell 12, verify "after.ltft_b1 < 5 %": holds',
        'suspect "air past the meter": still possible',
        '21:8 error unit-slip',
      ],
    });
  });

  it('does not differ from itself', () => {
    expect(differences(recorded, recordOf([checked]))).toEqual([]);
  });

  it('tells a verdict that changed', () => {
    const [first, second] = checked.expectations;
    if (first === undefined || second === undefined) throw new Error('two expectations are given above');
    const now = { ...checked, expectations: [first, { ...second, verdict: 'fails' }] };
    expect(differences(recorded, recordOf([now]))).toEqual([
      'samples/van-14.diag no longer gives: cell 12, verify "after.ltft_b1 < 5 %": holds',
      'samples/van-14.diag now gives: cell 12, verify "after.ltft_b1 < 5 %": fails',
    ]);
  });

  it('tells a finding that comes twice where it came once', () => {
    const now = { ...checked, diagnostics: [...checked.diagnostics, ...checked.diagnostics] };
    expect(differences(recorded, recordOf([now]))).toEqual([
      'samples/van-14.diag now gives: 21:8 error unit-slip',
    ]);
  });

  it('tells a sample without a record, and a record without its sample', () => {
    const other = recordOf([{ ...checked, file: 'samples/van-7.diag' }]);
    expect(differences(recorded, other)).toEqual([
      'samples/van-14.diag is recorded and was not checked.',
      'samples/van-7.diag has no record.',
    ]);
  });
});

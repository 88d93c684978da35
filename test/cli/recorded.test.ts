import { describe, expect, it } from 'vitest';
import type { CaseResult } from '../../core/study/results.ts';
import { type CaseRecord, differences, parseRecord, recordOf } from '../../extension/cli/recorded.ts';

const result = (verdict: 'holds' | 'fails', line = 21): CaseResult => ({
  file: 'van14.diag',
  title: 'Hunts at idle',
  values: {},
  expectations: [
    {
      cell: 8,
      part: 'expect',
      title: 'Trims',
      text: 'idle < 10 %',
      verdict,
      value: 25,
      from: [],
      line: 95,
      column: 13,
    },
  ],
  suspects: [{ name: 'weak fuel', standing: 'ruled out', by: [] }],
  diagnostics: [
    { code: 'unit-slip', severity: 'error', message: 'm', line, column: 8, endLine: line, endColumn: 16 },
  ],
});

describe('a record of cases', () => {
  it('is readable', () => {
    expect(recordOf([result('fails')])).toEqual({
      'van14.diag': [
        'cell 8, expect "idle < 10 %": fails',
        'suspect "weak fuel": ruled out',
        '21:8 error unit-slip',
      ],
    });
  });

  it('equals itself after it was written and read', () => {
    const kept = parseRecord(JSON.stringify(recordOf([result('fails')])));
    expect(kept && differences(kept, recordOf([result('fails')]))).toEqual([]);
  });

  it('tells what changed in sentences', () => {
    expect(differences(recordOf([result('fails')]), recordOf([result('holds', 22)]))).toEqual([
      'van14.diag no longer gives: cell 8, expect "idle < 10 %": fails',
      'van14.diag no longer gives: 21:8 error unit-slip',
      'van14.diag now gives: cell 8, expect "idle < 10 %": holds',
      'van14.diag now gives: 22:8 error unit-slip',
    ]);
  });

  it('tells of cases that came or went, whatever they are called', () => {
    const found = JSON.parse('{"__proto__": ["x"], "constructor": []}') as CaseRecord;
    expect(differences({ 'a.diag': [] }, found)).toEqual([
      '__proto__ has no record.',
      'a.diag is recorded and was not checked.',
      'constructor has no record.',
    ]);
  });

  it.each(['', '[]', 'null', '"x"', '{"a.diag": "holds"}', '{"a.diag": [1]}'])('is not %s', (text) => {
    expect(parseRecord(text)).toBeUndefined();
  });
});

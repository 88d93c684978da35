import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { caseWith, filesOf, resultOf, said, samplesOf, studied, timesOf } from './caseFiles.ts';

const log = 'Time (s),O2 B1S1 [V],MAP (kPa)\n0,0.1,30\n0.5,0.8,31\n1.0,---,32.5\n1.5,0.3,30\n';
const channels = 'channels:\n  front: {column: "O2 B1S1 [V]", signal: o2_b1s1}\n  map: MAP (kPa)\n';

describe('a capture from a file', () => {
  it('gives its channels as series that checks can use', () => {
    const study = studied(
      log,
      channels,
      '---\ncheck: Swing\nlet:\n  high: max(log.front)\n  mean: mean(log.map)\n',
    );
    expect(said(study)).toEqual([]);
    expect(timesOf(study, 'log.front')).toEqual([0, 0.5, 1, 1.5]);
    expect(samplesOf(study, 'log.front')).toEqual([0.1, 0.8, Number.NaN, 0.3]);
    const { values } = resultOf(study);
    expect(values['log.map']).toEqual({
      series: { samples: 4, from: 0, to: 1.5, min: 30, max: 32.5, mean: 30.875 },
      unit: 'kPa',
      kind: 'absolute',
    });
    expect(values.high).toMatchObject({ value: 0.8, unit: 'V' });
    expect(values.mean).toMatchObject({ value: 30.875, unit: 'kPa' });
  });

  it('is studied anew when the file’s content changes, and then only what reads from it', () => {
    const more =
      '---\ncheck: Swing\nlet:\n  high: max(log.front)\nexpect:\n  - high > 0.5 V\n---\ncheck: Other\nexpect:\n  - 1 < 2\n';
    const text = caseWith(channels, more);
    const files = filesOf({ 'log.csv': log });
    const first = checkCase(text, undefined, files);
    expect(checkCase(text, first, files).memo.fresh).toBe(0);
    const lower = filesOf({ 'log.csv': log.replace('0.8', '0.4') });
    const second = checkCase(text, first, lower);
    expect(second.memo.fresh).toBe(2);
    expect(second.expectations.map((each) => each.truth.verdict)).toEqual(['fails', 'holds']);
    expect(JSON.stringify(resultOf(second))).toBe(
      JSON.stringify(resultOf(checkCase(text, undefined, lower))),
    );
  });

  it('is read once: a change of its cell that leaves the samples alone computes nothing anew', () => {
    const more = '---\ncheck: Swing\nlet:\n  high: max(log.front)\n';
    const files = filesOf({ 'log.csv': log });
    const text = caseWith(channels, more);
    const first = checkCase(text, undefined, files);
    const renamed = checkCase(text.replace('capture: Log', 'capture: Log of the drive'), first, files);
    expect(renamed.memo.fresh).toBe(0);
    expect(renamed.readings[0]?.value).toBe(first.readings[0]?.value);
  });
});

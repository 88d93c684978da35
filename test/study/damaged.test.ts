import { describe, expect, it } from 'vitest';
import { damagedCases } from '../support/damagedCases.ts';
import { sampleFiles } from '../support/samples.ts';
import { expectSound, expectSoundReport } from '../support/soundCase.ts';

describe('a damaged case', () => {
  it('is checked, worded and shown without a fault of the program', { timeout: 120_000 }, () => {
    const codes = new Set<string>();
    let at = 0;
    for (const text of damagedCases(20, 120)) {
      const study = expectSound(text, sampleFiles);
      if (at++ % 12 === 0) expectSoundReport(study);
      for (const { diagnostic } of study.findings) codes.add(diagnostic.code);
    }
    // The damage reaches far: most of what can be wrong in a file is found somewhere.
    expect(codes.size).toBeGreaterThan(50);
  });
});

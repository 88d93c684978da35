import { describe, expect, it } from 'vitest';
import { expectSound, expectSoundReport } from '../support/soundCase.ts';
import { calls, caseOver, operations } from './matrix.ts';

/** How many stand in one case. */
const many = 60;

/** Every so manieth of all, so that the test takes seconds; which ones it is does not change. */
function* some(all: Iterable<string>, step: number): Generator<string> {
  let at = 0;
  for (const each of all) if (at++ % step === 0) yield each;
}

/** Checks all, and tells the verdicts that came out and the codes of what was found. */
function checked(all: Iterable<string>): { readonly count: number; readonly told: ReadonlySet<string> } {
  const told = new Set<string>();
  const batch: string[] = [];
  let count = 0;
  const flush = (): void => {
    if (batch.length === 0) return;
    const study = expectSound(caseOver(batch));
    if (count % (many * 10) === 0) expectSoundReport(study);
    // The values themselves are sound: what is found is found in the statements.
    const own = study.file.cells.length - 1;
    for (const { truth } of study.expectations) told.add(truth.verdict);
    for (const { cell, diagnostic } of study.findings) if (cell === own) told.add(diagnostic.code);
    count += batch.length;
    batch.length = 0;
  };
  for (const each of all) {
    batch.push(each);
    if (batch.length === many) flush();
  }
  flush();
  return { count, told };
}

const verdicts = ['holds', 'fails', 'too close to call', 'not measured', 'cannot compute'];

describe('whatever stands beside an operator or in a function gives a value or a finding', () => {
  it('every operator between values of every sort', { timeout: 60_000 }, () => {
    const { count, told } = checked(some(operations(), 23));
    expect(count).toBeGreaterThan(2500);
    expect([...told]).toEqual(
      expect.arrayContaining([...verdicts, 'wrong-operand', 'dimensions-differ', 'unlike-captures']),
    );
  });

  it('every function with arguments of every sort, number and order', { timeout: 60_000 }, () => {
    const { count, told } = checked(some(calls(), 23));
    expect(count).toBeGreaterThan(2500);
    expect([...told]).toEqual(
      expect.arrayContaining(['cannot compute', 'wrong-argument', 'missing-argument', 'too-many-arguments']),
    );
  });
});

import { describe, expect, it } from 'vitest';
import { allFunctions } from '../../core/study/functions.ts';
import { caseResult } from '../../core/study/results.ts';
import { study } from '../../core/study/study.ts';

const text = (strokes: string) =>
  `diag: 1\ncase: A moped\nengine:\n  cylinders: 1\n${strokes}---\ncheck: Sums\nlet:\n  duty: injector_duty(3 ms, 6000 rpm)\n  speed: piston_speed(6000 rpm, 40 mm)\nexpect:\n  - duty < 80 %\n`;
const told = (of: ReturnType<typeof study>) => caseResult(of, 'moped.diag');

const two = '  strokes: 2\n';
const why =
  '`injector_duty` is for four strokes, two turns of the crank for a cycle, and `engine: strokes` says 2';

describe('a formula of the four-stroke cycle', () => {
  it('has no answer for an engine whose header says two strokes', () => {
    const { values, expectations } = told(study(text(two)));
    expect(values.duty).toMatchObject({ value: null, status: 'cannot compute', why });
    expect(expectations[0]).toMatchObject({ verdict: 'cannot compute', why });
    // What counts no cycle stays: 2 · 40 mm · 100/s.
    expect(values.speed).toMatchObject({ value: 8, unit: 'm/s' });
  });

  it.each(['', '  strokes: 4\n'])('has one where the header says four, or nothing: %j', (strokes) => {
    // Once in two turns, 20 ms: 3/20.
    expect(told(study(text(strokes))).values.duty).toMatchObject({ value: 15, unit: '%' });
  });

  it('follows the header when it is changed', () => {
    for (const [before, after] of [
      ['', two],
      [two, ''],
      [two, '  strokes: 4\n'],
    ] as const) {
      const again = told(study(text(after), study(text(before))));
      expect(again).toEqual(told(study(text(after))));
    }
  });

  it('is every one that says of itself that it is four-stroke', () => {
    const rows = allFunctions();
    const words = ({ summary, range, source }: (typeof rows)[number]) => `${summary} ${range} ${source}`;
    // An order is counted by the turn, and the next cylinder is the next, whatever the cycle.
    const ofAnyCycle = ['order_frequency', 'fires_after'];
    for (const row of rows) {
      const isSaid = /four-stroke|two turns/.test(words(row)) && !ofAnyCycle.includes(row.name);
      if (isSaid) expect(row.fourStroke, row.name).toBe(true);
    }
    for (const name of ofAnyCycle)
      expect(rows.find((row) => row.name === name)?.fourStroke, name).toBeUndefined();
  });
});

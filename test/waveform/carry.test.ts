import { describe, expect, it } from 'vitest';
import { waveformFunctions } from '../../core/waveform/waveformFunctions.ts';
import { printed, result } from '../support/expressionResult.ts';
import { samples } from '../support/expressionScope.ts';

const names = { 'log.v': samples('log', 'V', [0, 1, 2, 2.5, 4, 6, 7], [0, 4, 4, 0, 0, 4, 0]) };
const said = (text: string) => printed(result(text, { names, functions: waveformFunctions() }).value);

describe('how sure a number is that is read off samples', () => {
  // By hand at 1.5 and 2.5 V: above from 0.375 to 2.3125 s of 4.375 s, and from 0.625 to 2.1875 s of 4.625 s.
  it('is half of what the reading moves when its level moves by its ±', () => {
    const half = (100 * (1.9375 / 4.375 - 1.5625 / 4.625)) / 2;
    expect(said('duty(log.v, 2 ± 0.5 V)')).toBe(`38.9 ± ${half.toFixed(1)} %`);
  });

  // By hand: above 1 V for half of the time, above 3 V from 0.75 to 2.125 s of 4.75 s; -1 V is never crossed.
  it('is told from one side where the other has no answer', () => {
    const one = 100 * (0.5 - 1.375 / 4.75);
    expect(said('duty(log.v, 1 ± 2 V)')).toBe(`50 ± ${one.toFixed(0)} %`);
  });

  it('is not known where neither side has one, and then there is no number', () => {
    expect(said('duty(log.v, 2 ± 3 V)')).toBe(
      'cannot compute: there is no answer when what it is read off is higher by its ±, nor when it is lower',
    );
  });
});

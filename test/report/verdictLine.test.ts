import { describe, expect, it } from 'vitest';
import { measuredWords } from '../../core/report/verdictLine.ts';
import { result, truth } from '../support/expressionResult.ts';
import { byMember, range, reading } from '../support/expressionScope.ts';

const names = {
  battery: reading('14.1 V'),
  low: reading('12.4 V'),
  rail: reading('45 psi gauge'),
  drops: byMember('label', { 'post to stud': '0.35 V', 'stud to case': '0.05 V' }),
  'spec.rail': range(undefined, '50 psi gauge'),
};

describe('a verdict as a sentence is true, denied or not', () => {
  it.each([
    ['battery < 13.5 V', 'fails', '14.1 V, 0.6 V above the limit of 13.5 V'],
    ['not battery < 13.5 V', 'holds', '14.1 V, 0.6 V above the limit of 13.5 V'],
    ['not low < 13.5 V', 'fails', '12.4 V, 1.1 V below the limit of 13.5 V'],
    ['not battery between 13.5 V and 15 V', 'fails', '14.1 V, 0.6 V inside 13.5 .. 15 V'],
    ['battery not between 13.5 V and 15 V', 'fails', '14.1 V, 0.6 V inside 13.5 .. 15 V'],
    ['not low between 13.5 V and 15 V', 'holds', '12.4 V, 1.1 V outside 13.5 .. 15 V'],
    ['not battery not between 13.5 V and 15 V', 'holds', '14.1 V, 0.6 V inside 13.5 .. 15 V'],
    ['not battery within 0.5 V of 14 V', 'fails', '14.1 V, 0.4 V inside 0.5 V of 14 V'],
    ['not low in 13.5 .. 15 V', 'holds', '12.4 V, 1.1 V outside 13.5 .. 15 V'],
    ['rail not in spec.rail', 'fails', '45 psi, 5 psi below the limit of 50 psi'],
    ['not drops < 0.2 V', 'holds', 'post to stud: 0.35 V, 0.15 V above the limit of 0.2 V'],
    ['battery / 7 < 2.5 V', 'holds', '2.0143 V, 0.4857 V below the limit of 2.5 V'],
    ['not battery <= 14.1 V', 'fails', '14.1 V, at the limit of 14.1 V'],
  ])('%s', (text, verdict, sentence) => {
    const found = truth(result(text, { names }));
    expect(found.verdict).toBe(verdict);
    expect(measuredWords(found)).toBe(sentence);
  });
});

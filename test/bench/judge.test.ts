import { describe, expect, it } from 'vitest';
import { judge, median } from './judge.ts';

const subject = { name: 'casebook', rounds: [2, 20, 2.2] };

describe('judge', () => {
  it('takes ratios within a round, so that a slow round does not count', () => {
    const [, peer] = judge([subject, { name: 'peer', rounds: [1, 10, 1] }], [{ to: 'peer', atMost: 2 }]);
    expect(peer).toEqual({ name: 'peer', cost: 1, ratio: 2, bound: 'at most 2 ×', verdict: 'ok' });
  });

  it('says when a cost is over its bound', () => {
    const [, peer] = judge([subject, { name: 'peer', rounds: [1, 10, 1] }], [{ to: 'peer', atMost: 1.9 }]);
    expect(peer?.verdict).toBe('over');
  });

  it('says when a rate is under its bound', () => {
    const rounds = [20, 200, 22];
    const [, ten] = judge([subject, { name: 'peer', rounds }], [{ to: 'peer', atLeastTheRate: 10 }]);
    const [, eleven] = judge([subject, { name: 'peer', rounds }], [{ to: 'peer', atLeastTheRate: 11 }]);
    expect([ten?.verdict, eleven?.verdict]).toEqual(['ok', 'over']);
  });

  it('counts what could not be measured as over', () => {
    const [, peer] = judge([subject, { name: 'peer', rounds: [] }], [{ to: 'peer', atMost: 2 }]);
    expect(peer?.verdict).toBe('over');
  });

  it('refuses a bound to a name that nobody has', () => {
    expect(() => judge([subject], [{ to: 'nobody', atMost: 1 }])).toThrow('nobody');
  });
});

describe('median', () => {
  it('is the middle, or the mean of the two middle ones', () => {
    expect([median([3, 1, 2]), median([4, 1, 2, 3]), median([])]).toEqual([2, 2.5, Number.NaN]);
  });
});

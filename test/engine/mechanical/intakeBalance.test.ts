import { describe, expect, it } from 'vitest';
import { intakeRows } from '../../../core/engine/mechanical/intakeRows.ts';
import type { Members } from '../../../core/expression/value.ts';
import { halfWidth } from '../../../core/quantity/amount.ts';
import { printed, result } from '../../support/expressionResult.ts';
import { samples, words } from '../../support/expressionScope.ts';
import { type Manifold, manifold } from '../../support/signal/manifold.ts';
import { disturbed, type Signal } from '../../support/signal/signal.ts';

const base: Manifold = { order: [1, 3, 4, 2], rpm: 780, mean: 36, seconds: 3, perSecond: 2000 };

function setting(of: Partial<Manifold>, noise = 0.1, vacuum = false) {
  const all = { ...base, ...of };
  const { pressure, sync } = manifold(all);
  const noisy = disturbed(pressure, { noise }, 1);
  const turned = vacuum ? { ...noisy, samples: noisy.samples.map((each) => 101.3 - each) } : noisy;
  const held = (like: string, { time, samples: values }: Signal) =>
    samples('idle', like, [...time], [...values]);
  return {
    names: {
      'idle.map': held(vacuum ? 'kPa vacuum' : 'kPa absolute', turned),
      'idle.sync': held('V', sync),
      'idle.front': held('V', noisy),
      'flat.map': samples('flat', 'kPa absolute', [0, 1, 2, 3], [36, 36, 36, 36]),
      'none.map': samples('none', 'kPa absolute', [], []),
    },
    header: { 'engine.firing_order': words(all.order.join('-')) },
    functions: intakeRows,
  };
}

function balance(of: Partial<Manifold>, noise?: number, vacuum?: boolean): Members {
  const { value, diagnostics } = result('intake_balance(idle.map, idle.sync)', setting(of, noise, vacuum));
  expect(diagnostics).toEqual([]);
  return value.kind === 'members' ? value : expect.fail(printed(value));
}

const share = (of: Members, cylinder: number) => {
  const member = of.members.get(String(cylinder));
  return member !== undefined && 'si' in member ? member : expect.fail(`no cylinder ${cylinder}`);
};

describe('intake balance from manifold pressure', () => {
  it('of an even engine is 100 % each', () => {
    for (const cylinder of base.order) expect(share(balance({}), cylinder).si).toBeCloseTo(1, 1);
  });

  const grid = [1, 3, 4, 2].flatMap((weak) => [0.9, 0.7, 0.4].map((draws) => [weak, draws] as const));
  it.each(grid)('cylinder %i that draws %d is found, within the ± that is told', (weak, draws) => {
    const found = balance({ draws: { [weak]: draws } });
    const mean = (3 + draws) / 4;
    for (const cylinder of base.order) {
      const { si } = share(found, cylinder);
      const truth = (cylinder === weak ? draws : 1) / mean;
      expect(Math.abs(si - truth)).toBeLessThan(halfWidth(share(found, cylinder)));
      if (cylinder !== weak) expect(si).toBeGreaterThan(share(found, weak).si);
    }
  });

  it('is the same of a vacuum, and while cranking', () => {
    expect(share(balance({ draws: { 3: 0.7 } }, 0.1, true), 3).si).toBeCloseTo(0.7 / 0.925, 1);
    expect(share(balance({ draws: { 3: 0.7 }, rpm: 220, mean: 88 }, 0.3), 3).si).toBeCloseTo(0.7 / 0.925, 1);
  });

  it.each([
    [3, [1, 2, 3], 2],
    [6, [1, 5, 3, 6, 2, 4], 6],
    [8, [1, 8, 4, 3, 6, 5, 7, 2], 5],
  ])('of %i cylinders names the one that draws least', (count, order, weak) => {
    const found = balance({ order, draws: { [weak]: 0.6 } });
    const truth = 0.6 / ((count - 0.4) / count);
    for (const cylinder of order) {
      if (cylinder !== weak) expect(share(found, cylinder).si).toBeGreaterThan(share(found, weak).si);
    }
    expect(Math.abs(share(found, weak).si - truth)).toBeLessThan(halfWidth(share(found, weak)));
  });

  it('without a sync channel gives the pulls in their order', () => {
    const { value, type } = result('intake_balance(idle.map)', setting({ draws: { 3: 0.5 } }));
    expect(type).toMatchObject({ by: 'label' });
    if (value.kind !== 'members') expect.fail(printed(value));
    expect([...value.members.keys()]).toEqual(['hump 1', 'hump 2', 'hump 3', 'hump 4']);
  });

  it.each([
    ['intake_balance(flat.map)', /does not change/],
    ['intake_balance(none.map)', /no samples/],
    ['intake_balance(idle.map, idle.map)', /./],
    ['intake_balance(idle.map from 0 s to 0.1 s)', /./],
    ['intake_balance(idle.map, firing_order = "1-3")', /does not name every cylinder once/],
  ])('%s cannot be computed, with a reason', (text, why) => {
    const said = printed(result(text, setting({})).value);
    expect(said).toMatch(/^cannot compute: .{15,}/);
    expect(said).toMatch(why);
  });

  it('a voltage is no manifold pressure', () => {
    expect(result('intake_balance(idle.front)', setting({})).diagnostics.map((each) => each.code)).toEqual([
      'wrong-argument',
    ]);
  });

  it('the example of the reference is what a cylinder that draws too little gives', () => {
    const [row] = intakeRows;
    const { value } = result(row?.example.expression ?? '', setting({ draws: { 3: 0.7 } }));
    expect(printed(value)).toBe(row?.example.result);
  });
});

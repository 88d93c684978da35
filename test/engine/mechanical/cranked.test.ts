import { describe, expect, it } from 'vitest';
import { crankingRows } from '../../../core/engine/mechanical/crankingRows.ts';
import type { Value } from '../../../core/expression/value.ts';
import { halfWidth } from '../../../core/quantity/amount.ts';
import { printed, result } from '../../support/expressionResult.ts';
import { type Held, reading, samples, words } from '../../support/expressionScope.ts';
import { type Cranking, cranking } from '../../support/signal/cranking.ts';
import { type Disturbance, disturbed, type Signal } from '../../support/signal/signal.ts';

const four = [1, 3, 4, 2];
const base: Cranking = { order: four, seconds: 4, perSecond: 1000 };

const held = (like: string, { time, samples: values }: Signal): Held =>
  samples('cranked', like, [...time], [...values]);

/** A case that holds a capture of cranking; all of it synthetic. */
function setting(of: Partial<Cranking>, by: Disturbance = {}, firing = '1-3-4-2') {
  const { current, battery, sync } = cranking({ ...base, ...of });
  return {
    names: {
      'cranked.current': held('A', disturbed(current, by, 1)),
      'cranked.battery': held('V', disturbed(battery, { ...by, noise: (by.noise ?? 0) / 100 }, 2)),
      'cranked.sync': held('V', disturbed(sync, { noise: 0.05 }, 3)),
      'other.sync': samples('other', 'V', [0, 1], [0, 5]),
      'flat.current': samples('flat', 'A', [0, 1, 2, 3], [5, 5, 5, 5]),
      'single.current': samples('single', 'A', [0], [5]),
      'none.current': samples('none', 'A', [], []),
      'log.stft': samples('log', '%', [0, 1, 2], [1, 2, 3]),
    },
    header: { 'engine.firing_order': words(firing), 'engine.cylinders': reading(String(four.length)) },
    functions: crankingRows,
  };
}

function shares(value: Value): Record<string, number> {
  if (value.kind !== 'members') expect.fail(printed(value));
  return Object.fromEntries(
    [...value.members].map(([name, each]) => [name, 'si' in each ? 100 * each.si : Number.NaN]),
  );
}

const relative = 'relative_compression(cranked.current, cranked.sync)';

describe('relative compression from starter current', () => {
  it('of an even engine is even', () => {
    for (const each of Object.values(shares(result(relative, setting({})).value)))
      expect(each).toBeGreaterThan(97);
  });

  // Down to nothing: the truth is what the generator lets each cylinder keep.
  const grid = [1, 2, 3, 4].flatMap((weak) =>
    [0.9, 0.75, 0.6, 0.3, 0].map((keeps) => [weak, keeps] as const),
  );
  it.each(grid)(
    'cylinder %i that keeps %d of its compression is found, and how weak it is',
    (weak, keeps) => {
      const { value, diagnostics } = result(relative, setting({ keeps: { [weak]: keeps } }, { noise: 4 }));
      expect(diagnostics).toEqual([]);
      for (const [name, each] of Object.entries(shares(value))) {
        if (Number(name) === weak) expect(Math.abs(each - 100 * keeps)).toBeLessThan(6);
        else expect(each).toBeGreaterThan(93);
      }
    },
  );

  it('is the same from the dips of the battery', () => {
    const found = shares(
      result(
        'relative_compression(cranked.battery, cranked.sync)',
        setting({ keeps: { 4: 0.7 } }, { noise: 2 }),
      ).value,
    );
    expect(Math.abs((found['4'] ?? 0) - 70)).toBeLessThan(5);
    expect(Math.min(found['1'] ?? 0, found['2'] ?? 0, found['3'] ?? 0)).toBeGreaterThan(95);
  });

  it.each([
    [3, '1-2-3', 2],
    [5, '1-2-4-5-3', 4],
    [6, '1-5-3-6-2-4', 6],
    [8, '1-8-4-3-6-5-7-2', 7],
  ])('of %i cylinders firing %s, with number %i at 70 %', (_, text, weak) => {
    const order = text.split('-').map(Number);
    const found = shares(
      result(relative, setting({ order, keeps: { [weak]: 0.7 } }, { noise: 2 }, text)).value,
    );
    const { [weak]: own, ...others } = found;
    expect(Math.abs((own ?? 0) - 70)).toBeLessThan(5);
    for (const each of Object.values(others)) expect(each).toBeGreaterThan(94);
  });

  it('keeps its cylinders when cranking is uneven and samples drop out', () => {
    const uneven = setting(
      { keeps: { 2: 0.6 }, unsteady: 0.12 },
      { noise: 5, dropouts: 0.05, step: 1, drift: 3 },
    );
    const found = shares(result(relative, uneven).value);
    expect(Math.min(...Object.values(found))).toBe(found['2']);
    expect(Math.abs((found['2'] ?? 0) - 60)).toBeLessThan(6);
  });

  it('is not surer than it is right: the truth lies within its ±', () => {
    for (const [weak, keeps] of grid) {
      const { value } = result(`${relative}[${weak}]`, setting({ keeps: { [weak]: keeps } }, { noise: 4 }));
      if (value.kind !== 'one') expect.fail(printed(value));
      expect(Math.abs(value.amount.si - keeps)).toBeLessThan(halfWidth(value.amount));
    }
  });

  it('says how far it scatters from cycle to cycle: more in more noise', () => {
    const widths = [0.5, 60].map((noise) => {
      const { value } = result(`${relative}[3]`, setting({ keeps: { 3: 0.7 }, seconds: 6 }, { noise }));
      return value.kind === 'one' ? halfWidth(value.amount) : expect.fail(printed(value));
    });
    expect(widths[0]).toBeGreaterThan(0);
    expect(widths[1]).toBeGreaterThan(2 * (widths[0] ?? 0));
  });

  it('the sync may mark another cylinder than the first', () => {
    const of = setting({ sync: 4, keeps: { 3: 0.5 } });
    const found = shares(
      result('relative_compression(cranked.current, cranked.sync, cylinder = 4)', of).value,
    );
    expect(Math.min(...Object.values(found))).toBe(found['3']);
  });

  it('without a sync channel gives the humps in their order, and no cylinder', () => {
    const { value, type } = result('relative_compression(cranked.current)', setting({ keeps: { 3: 0.5 } }));
    expect(type).toMatchObject({ kind: 'members', by: 'label' });
    expect(Object.keys(shares(value))).toEqual(['hump 1', 'hump 2', 'hump 3', 'hump 4']);
    expect(Object.values(shares(value)).filter((each) => each < 75)).toHaveLength(1);
  });

  it('a spark at every turn cannot tell a cylinder from the one a turn later', () => {
    expect(printed(result(relative, setting({ wasted: true })).value)).toMatch(
      /^cannot compute: the sync channel marks every turn/,
    );
  });

  it.each([
    ['relative_compression(flat.current)', /does not change/],
    ['relative_compression(single.current)', /./],
    ['relative_compression(none.current)', /no samples/],
    ['relative_compression(cranked.sync)', /./],
    ['relative_compression(cranked.current from 1 s to 1.3 s)', /./],
    ['relative_compression(cranked.current, firing_order = "1-3-3-2")', /does not name every cylinder once/],
    ['relative_compression(cranked.current, cranked.sync, cylinder = 7)', /has no cylinder 7/],
  ])('%s cannot be computed, with a reason', (text, why) => {
    const said = printed(result(text, setting({})).value);
    expect(said).toMatch(/^cannot compute: .{15,}/);
    expect(said).toMatch(why);
  });

  it.each(['relative_compression(log.stft)', 'relative_compression(cranked.current, other.sync)'])(
    '%s does not go together',
    (text) => {
      expect(result(text, setting({})).diagnostics.map((each) => each.code)).toEqual(['wrong-argument']);
    },
  );
});

describe('the humps themselves', () => {
  it('against their mean: even ones are 100 %, and the mean of all is', () => {
    const found = Object.values(
      shares(result('hump_balance(cranked.current, cranked.sync)', setting({ keeps: { 3: 0.7 } })).value),
    );
    expect(found.reduce((sum, each) => sum + each, 0) / 4).toBeCloseTo(100, 6);
  });

  it('make a weak cylinder look weaker than it is, and the next one stronger', () => {
    const found = shares(
      result('hump_balance(cranked.current, cranked.sync)', setting({ keeps: { 3: 0.7 } })).value,
    );
    expect((found['3'] ?? 0) / (found['1'] ?? 0)).toBeLessThan(0.68);
    expect(found['4']).toBeGreaterThan(found['2'] ?? 0);
  });
});

describe('cranking speed', () => {
  it.each([four, [1, 2, 3], [1, 5, 3, 6, 2, 4]])(
    'of cylinders firing %i %i %i … is that of the crank',
    (...order) => {
      const { rpm, current } = cranking({ ...base, order, seconds: 5 });
      const of = {
        names: { 'cranked.current': held('A', disturbed(current, { noise: 3 }, 1)) },
        header: { 'engine.cylinders': reading(String(order.length)) },
        functions: crankingRows,
      };
      const { value } = result('cranking_speed(cranked.current)', of);
      if (value.kind !== 'one') expect.fail(printed(value));
      expect(Math.abs(60 * value.amount.si - rpm)).toBeLessThan(0.02 * rpm);
      expect(halfWidth(value.amount)).toBeGreaterThan(0);
    },
  );
});

describe('the examples of the reference', () => {
  it.each(crankingRows.map(({ example }) => [example.expression, example.result] as const))(
    '%s is %s',
    (expression, shown) => {
      const of = setting({ keeps: { 4: 0.7 }, seconds: 5 });
      expect(printed(result(expression, of).value)).toBe(shown);
    },
  );
});

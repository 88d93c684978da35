import { describe, expect, it } from 'vitest';
import { engineFunctions } from '../../../core/engine/engineFunctions.ts';
import { inCylinderRows } from '../../../core/engine/mechanical/inCylinderRows.ts';
import type { Value } from '../../../core/expression/value.ts';
import { halfWidth } from '../../../core/quantity/amount.ts';
import { fromSi } from '../../../core/quantity/convert.ts';
import { printed, result } from '../../support/expressionResult.ts';
import { type Held, reading, samples } from '../../support/expressionScope.ts';
import { type Breathing, breathing, usualTiming } from '../../support/signal/cylinderPressure.ts';
import { type Disturbance, disturbed } from '../../support/signal/signal.ts';

const idle: Breathing = { rpm: 810, ripple: 0.01, intake: -62, exhaust: 2, seconds: 2, perSecond: 5000 };

const held = (of: Partial<Breathing>, by: Disturbance = {}, capture = 'snap', halfWidth = 0): Held => {
  const { time, samples: values } = disturbed(breathing({ ...idle, ...of }).pressure, by, 1);
  return samples(capture, 'kPa gauge', [...time], [...values], halfWidth);
};

/** A camshaft a tooth late on a wheel of 40: 18° of crank, on both valves of a single camshaft. */
const toothLate = {
  evo: usualTiming.evo - 18,
  evc: usualTiming.evc + 18,
  ivo: usualTiming.ivo - 18,
  ivc: usualTiming.ivc + 18,
};

const setting = {
  names: {
    'snap.pressure': held({}, { noise: 0.5, step: 0.5 }),
    'good.pressure': held({}, { noise: 0.5, step: 0.5 }, 'good'),
    'late.pressure': held({ timing: toothLate }, { noise: 0.5, step: 0.5 }, 'late'),
    'open.pressure': held({ rpm: 240, intake: -3, exhaust: 0.5, ripple: 0.08 }, { noise: 0.5 }, 'open'),
    'blocked.pressure': held({ exhaust: 25 }, { noise: 0.5 }, 'blocked'),
    'unsure.pressure': held({}, {}, 'unsure', 2),
    'slow.pressure': held({ perSecond: 700 }, {}, 'slow'),
    'flat.pressure': samples('flat', 'kPa gauge', [0, 1, 2, 3], [5, 5, 5, 5]),
    'single.pressure': samples('single', 'kPa gauge', [0], [5]),
    'none.pressure': samples('none', 'kPa gauge', [], []),
    'lost.pressure': samples('lost', 'kPa gauge', [0, 1, 2], [Number.NaN, Number.NaN, Number.NaN]),
    'wave.pressure': samples(
      'wave',
      'kPa gauge',
      Array.from({ length: 2000 }, (_, i) => i / 1000),
      Array.from({ length: 2000 }, (_, i) => Math.sin(i / 12)),
    ),
    'log.stft': samples('log', '%', [0, 1, 2], [1, 2, 3]),
  },
  header: { 'engine.cam_drive_teeth': reading('40'), 'engine.compression_ratio': reading('10.5') },
  functions: engineFunctions(),
};
const of = (text: string) => result(text, setting);

function number(value: Value): number {
  if (value.kind !== 'one') expect.fail(printed(value));
  return fromSi(value.amount.si, value.type.unit, value.type.kind);
}
const read = (text: string) => number(of(text).value);

describe('valve events from the pressure in a cylinder', () => {
  it('lie near the seats’ angles, each in the trade’s convention', () => {
    expect(Math.abs(read('valve_events(snap.pressure).evo') - usualTiming.evo)).toBeLessThan(14);
    expect(Math.abs(read('valve_events(snap.pressure).evc') - usualTiming.evc)).toBeLessThan(6);
    expect(Math.abs(read('valve_events(snap.pressure).ivo') - usualTiming.ivo)).toBeLessThan(6);
    expect(Math.abs(read('valve_events(snap.pressure).ivc') - usualTiming.ivc)).toBeLessThan(6);
    expect(read('valve_events(snap.pressure).overlap')).toBeCloseTo(
      read('valve_events(snap.pressure).evc') + read('valve_events(snap.pressure).ivo'),
      9,
    );
  });

  it('have the truth within their ±, the seats’ distance from the corners with it', () => {
    for (const name of ['evo', 'evc', 'ivo', 'ivc'] as const) {
      const { value } = of(`valve_events(snap.pressure).${name}`);
      if (value.kind !== 'one') expect.fail(printed(value));
      const off = Math.abs(fromSi(value.amount.si, value.type.unit, value.type.kind) - usualTiming[name]);
      expect(off).toBeLessThan(360 * halfWidth(value.amount));
    }
  });

  it('of a camshaft a tooth late differ from the known-good ones by a tooth’s angle, far more surely', () => {
    for (const text of [
      'valve_events(good.pressure).evo - valve_events(late.pressure).evo',
      'valve_events(late.pressure).evc - valve_events(good.pressure).evc',
      'valve_events(good.pressure).ivo - valve_events(late.pressure).ivo',
    ]) {
      const { value, diagnostics } = of(text);
      expect(diagnostics).toEqual([]);
      if (value.kind !== 'one') expect.fail(printed(value));
      expect(Math.abs(360 * value.amount.si - 18)).toBeLessThan(4.5);
      // How far a corner lies from its seat is mostly the same in both.
      expect(360 * halfWidth(value.amount)).toBeLessThan(7);
      expect(Math.abs(360 * value.amount.si - 18)).toBeLessThan(360 * halfWidth(value.amount));
    }
  });

  it('come to a number of teeth for the sprocket of the header', () => {
    const teeth = read('teeth_off(valve_events(good.pressure).evo - valve_events(late.pressure).evo)');
    expect(Math.round(teeth)).toBe(1);
  });

  it('have plateaus: back pressure and vacuum, and the height of the towers', () => {
    expect(Math.abs(read('valve_events(snap.pressure).exhaust_plateau') - 2)).toBeLessThan(1.5);
    expect(Math.abs(read('valve_events(blocked.pressure).exhaust_plateau') - 25)).toBeLessThan(2);
    expect(Math.abs(read('valve_events(snap.pressure).intake_plateau') - 62)).toBeLessThan(1);
    expect(printed(of('valve_events(blocked.pressure).exhaust_plateau > 10 kPa').value)).toBe('holds');
    expect(printed(of('valve_events(snap.pressure).intake_plateau > 17 inHg vacuum').value)).toBe('holds');
    expect(Math.abs(read('valve_events(snap.pressure).rpm') - 810)).toBeLessThan(3);
    expect(read('valve_events(snap.pressure).tower_ratio')).toBeGreaterThan(0.85);
    expect(read('valve_events(snap.pressure).tower_ratio')).toBeLessThan(1);
  });

  it('a leaking cylinder expands with less than it was compressed with', () => {
    const leaking = { ...setting, names: { p: held({ leak: 8e-3 }) } };
    const tight = { ...setting, names: { p: held({ leak: 5e-4 }) } };
    const ratio = (from: typeof leaking) => number(result('valve_events(p).tower_ratio', from).value);
    expect(ratio(leaking)).toBeLessThan(ratio(tight) - 0.05);
  });

  it('while cranking too, where the exhaust valve still opens out of a pocket', () => {
    expect(Math.abs(read('valve_events(open.pressure).evo') - usualTiming.evo)).toBeLessThan(14);
    expect(Math.abs(read('valve_events(open.pressure).rpm') - 240)).toBeLessThan(5);
  });

  it('a gauge’s own ± shifts the plateaus and no angle', () => {
    const level = of('valve_events(unsure.pressure).exhaust_plateau').value;
    const angle = of('valve_events(unsure.pressure).ivo').value;
    if (level.kind !== 'one' || angle.kind !== 'one') expect.fail('no values');
    expect(halfWidth(level.amount)).toBeGreaterThanOrEqual(2000);
    expect(angle.amount.spread.map(({ source }) => source).join()).not.toContain('unsure kPa');
  });

  it.each([
    ['flat.pressure', /does not change/],
    ['single.pressure', /./],
    ['none.pressure', /no samples/],
    ['lost.pressure', /no samples/],
    ['wave.pressure', /as broad as its valleys/],
    ['slow.pressure', /less than a sample every 4°/],
    ['(snap.pressure from 0 s to 0.1 s)', /fewer than two/],
  ])('of %s cannot be computed, with a reason', (pressure, why) => {
    const said = printed(of(`valve_events(${pressure}).evo`).value);
    expect(said).toMatch(/^cannot compute: .{15,}/);
    expect(said).toMatch(why);
  });

  it('a trim is no pressure', () => {
    for (const name of ['valve_events', 'crank_angle'])
      expect(of(`${name}(log.stft)`).diagnostics.map((each) => each.code)).toEqual(['wrong-argument']);
  });
});

describe('the crank angle of an in-cylinder capture', () => {
  it('is that of the crank to about a degree, from 0 to 720, and missing before the first tower', () => {
    const { angle } = breathing(idle);
    const { value, type, diagnostics } = of('crank_angle(snap.pressure)');
    expect(diagnostics).toEqual([]);
    expect(type).toMatchObject({ kind: 'series', capture: 'snap' });
    if (value.kind !== 'series') expect.fail(printed(value));
    expect(value.samples[0]).toBeNaN();
    const off = value.samples
      .map((each, i) => 360 * each - (angle[i] ?? 0))
      .filter((each) => !Number.isNaN(each))
      .map((each) => Math.abs(each - 720 * Math.round(each / 720)));
    expect(off.length).toBeGreaterThan(0.8 * angle.length);
    expect(Math.max(...off)).toBeLessThan(1.6);
  });

  it('lets the pressure be read at an angle', () => {
    const exhaust = of(
      'mean(snap.pressure where (crank_angle(snap.pressure) between 240 °ATDC and 290 °ATDC))',
    );
    expect(exhaust.diagnostics).toEqual([]);
    expect(Math.abs(number(exhaust.value) - 3)).toBeLessThan(1.5);
  });
});

describe('the barometer that events are read with', () => {
  const high = { ...setting, barometer: reading('70 kPa absolute') };
  const closes = (text: string, at: Parameters<typeof result>[1]) => number(result(text, at).value);

  it('is the one of the place where none is given, and the standard one only where there is none', () => {
    const given = closes('valve_events(snap.pressure, barometer = 70 kPa).ivc', setting);
    expect(closes('valve_events(snap.pressure).ivc', high)).toBe(given);
    expect(closes('valve_events(snap.pressure).ivc', setting)).toBe(
      closes('valve_events(snap.pressure, barometer = 101.325 kPa).ivc', setting),
    );
    // It matters: the charge is counted from the absolute pressure.
    expect(Math.abs(closes('valve_events(snap.pressure).ivc', setting) - given)).toBeGreaterThan(0.5);
  });

  it('and the ratio are refused where there is none such', () => {
    expect(printed(of('valve_events(snap.pressure, ratio = 0.9).evo').value)).toContain('compresses nothing');
    expect(printed(of('valve_events(snap.pressure, barometer = 0 kPa).evo').value)).toContain(
      'does not exist',
    );
  });
});

describe('the examples of the reference', () => {
  it.each(inCylinderRows.map(({ example }) => [example.expression, example.result] as const))(
    '%s is %s',
    (expression, shown) => {
      expect(printed(of(expression).value)).toBe(shown);
    },
  );
});

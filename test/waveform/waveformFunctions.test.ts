import { describe, expect, it } from 'vitest';
import { unitOf } from '../../core/quantity/unit.ts';
import { allFunctions } from '../../core/study/functions.ts';
import { waveformFunctions } from '../../core/waveform/waveformFunctions.ts';
import { printed, result } from '../support/expressionResult.ts';
import { byMember, type Held, notTaken, reading, samples } from '../support/expressionScope.ts';
import { coilCurrent, crankingVolts, pumpCurrent, rectified } from '../support/signal/electricalSignals.ts';
import type { Signal } from '../support/signal/signal.ts';
import { warmUpCurve } from '../support/signal/warmUpSignal.ts';
import { moments, signal, switching } from './signals.ts';

function channel(
  capture: string,
  like: string,
  seconds: number,
  perSecond: number,
  at: (t: number) => number,
  halfWidth = 0,
): Held {
  const time = moments(seconds, perSecond);
  return samples(capture, like, [...time], [...signal(time, at)], halfWidth);
}

function held(capture: string, like: string, { time, samples: values }: Signal): Held {
  return samples(capture, like, [...time], [...values]);
}

const bump = (t: number, at: number) => Math.exp(-(((t - at) / 0.1) ** 2));

/**
 * What the examples of the table read; all of it synthetic, with results known beforehand:
 * 2·asin(0.15/0.35)/2π s between 0.3 and 0.6 V, deviations of −1 0 1 0 and 4 3 −4 −3 (correlation −4/5),
 * a bump 120 ms later, 0.02 V at half of 13 turns a second, 900 + (3 − 2.5)/2·100 rpm at 3 s.
 */
const names = {
  'o2.front': channel('o2', 'V', 10, 1000, switching(1)),
  'o2.rear': channel('o2', 'V', 10, 1000, (t) => 0.6 + 0.1 * (switching(1)(t) - 0.45)),
  'purge.drive': channel('purge', 'V', 2, 1000, (t) => ((t * 10) % 1 < 0.35 - 1e-9 ? 12 : 0)),
  'crank.pressure': channel('crank', 'kPa gauge', 2, 500, (t) => 1000 * Math.sin(2 * Math.PI * t) ** 2),
  'log.rpm': samples('log', 'rpm', [0, 1, 2, 3], [800, 900, 1000, 900]),
  'log.map': samples('log', 'kPa absolute', [0, 1, 2, 3], [39, 38, 31, 32]),
  'log.tp': channel('log', '%', 4, 100, (t) => 10 + 20 * bump(t, 1.5)),
  'log.flow': channel('log', 'g/s', 4, 100, (t) => 3 + 9 * bump(t, 1.62)),
  'shake.level': channel(
    'shake',
    'V',
    2,
    2000,
    (t) => 1 + 0.02 * Math.cos(2 * Math.PI * 6.5 * t) + 0.1 * Math.sin(2 * Math.PI * 26 * t),
  ),
  // Lambda 1.02 in the mean, and a drive: half a minute of idle at 20 % of trim and 20 % of load, then cruise at 5 %.
  'wide.lambda': channel('wide', '', 10, 50, (t) => 1.02 + 0.01 * Math.sin(2 * Math.PI * t)),
  'drive.trim': channel('drive', '%', 59, 2, (t) => (t < 30 ? 20 : 5)),
  'drive.rpm': channel('drive', 'rpm', 59, 2, (t) => (t < 30 ? 750 : 2200)),
  'drive.load': channel('drive', '%', 59, 2, (t) => (t < 30 ? 20 : 50)),
  // The plenum's hole: 25 %, 8 % and 4 % of 4.4, 12.0 and 22.4 g/s.
  'table.trim': byMember('state', { idle: '25 %', fast: '8 %', drive: '4 %' }),
  'table.maf': byMember('state', { idle: '4.4 g/s', fast: '12.0 g/s', drive: '22.4 g/s' }),
  // An RL ramp of 14 V, 0.6 Ω and 3.5 mH; a pump at 90 turns a second, eight humps each; a six-pulse rectifier at 300 Hz.
  'coil.primary': held(
    'coil',
    'A',
    coilCurrent({ volts: 14, resistance: 0.6, inductance: 0.0035, on: 0.004, period: 0.03 }, 0.3, 20_000),
  ),
  'pump.amps': held('pump', 'A', pumpCurrent({ mean: 5, ripple: 0.6, speed: 90, humps: 8 }, 0.4, 20_000)),
  'charge.volts': held('charge', 'V', rectified({ mean: 14.1, ripple: 0.15, electrical: 300 }, 0.2, 50_000)),
  'start.volts': held(
    'start',
    'V',
    crankingVolts(
      { rest: 12.6, dip: 8.2, turning: 10.4, pulse: 0.3, perSecond: 8, seconds: 1.1, after: 14 },
      1000,
    ),
  ),
  'cold.ect': held('cold', '°C', warmUpCurve({ outside: 25, opens: 82, heat: 7000 }, 1500, 1)),
  'scan.rpm': samples('scan', 'rpm', [0.5, 2.5, 4.5], [800, 900, 1000]),
};
const setting = { names, functions: waveformFunctions() };

describe('every function of waveforms gives what its page shows', () => {
  for (const { name, example } of waveformFunctions()) {
    it(`${example.expression} = ${example.result}`, () => {
      const { value, diagnostics } = result(example.expression, setting);
      expect(diagnostics).toEqual([]);
      expect(printed(value)).toBe(example.result);
      expect(example.expression).toContain(`${name}(`);
    });
  }
});

describe('every row is written out in full', () => {
  it.each(waveformFunctions().map((row) => [row.name, row] as const))('%s', (_, row) => {
    expect(row.summary).toMatch(/^[A-Z].*\.$/);
    for (const line of row.formula.split('\n')) expect(line).toMatch(/^\S.*[^.\s]$|^\S$/);
    expect(row.source).toMatch(/^\S.{5,}[^.]$/);
    expect(row.errors.length).toBeGreaterThan(0);
    for (const error of row.errors) expect(error).toMatch(/^[A-Z].*\.$/);
    if (row.result.kind === 'fixed') expect(unitOf(row.result.unit)).toBeDefined();
    for (const { takes, meaning } of row.parameters) {
      expect(meaning).toMatch(/^\S.*[^.]$/);
      if (takes.unit !== undefined) expect(unitOf(takes.unit)).toBeDefined();
    }
  });

  it('no function of the language has the name of another', () => {
    expect(new Set(allFunctions().map(({ name }) => name)).size).toBe(allFunctions().length);
    expect(waveformFunctions().every(({ form }) => form === 'whole')).toBe(true);
  });
});

describe('what does not go together is said before anything runs', () => {
  it.each([
    ['duty(o2.front, 5 kPa)', 'wrong-argument'],
    ['duty(crank.pressure, 100 kPa absolute)', 'wrong-argument'],
    ['peaks(o2.front, 5 kPa)', 'wrong-argument'],
    ['correlation(o2.front, log.map)', 'wrong-argument'],
    ['lag(o2.front, log.map)', 'wrong-argument'],
    ['order_amplitude(shake.level, log.rpm, 2)', 'wrong-argument'],
    ['switch_rate(crank.pressure)', 'wrong-argument'],
    ['rear_to_front(o2.front)', 'missing-argument'],
  ])('%s: %s', (text, code) => {
    expect(result(text, setting).diagnostics.map((each) => each.code)).toEqual([code]);
  });

  it('a level of open pressure is taken as the samples’ kind', () => {
    const { value, diagnostics } = result('duty(crank.pressure, 500 kPa)', setting);
    expect(diagnostics).toEqual([]);
    expect(printed(value)).toBe('50 %');
  });
});

describe('an empty, single or missing series', () => {
  const bare = {
    ...names,
    'none.v': samples('none', 'V', [], []),
    'none.w': samples('none', 'V', [], []),
    'one.v': samples('one', 'V', [0], [0.4]),
    'one.w': samples('one', 'V', [0], [0.4]),
    'flat.v': samples('flat', 'V', [0, 1, 2, 3, 4], [0.4, 0.4, 0.4, 0.4, 0.4]),
    'flat.w': samples('flat', 'V', [0, 1, 2, 3, 4], [0.4, 0.4, 0.4, 0.4, 0.4]),
    'lost.v': samples('lost', 'V', [0, 1, 2], [Number.NaN, Number.NaN, Number.NaN]),
    'lost.w': samples('lost', 'V', [0, 1, 2], [Number.NaN, Number.NaN, Number.NaN]),
  };
  const calls = (name: string) => [
    `switch_rate(${name}.v)`,
    `frequency(${name}.v)`,
    `period(${name}.v)`,
    `duty(${name}.v)`,
    `rise_time(${name}.v)`,
    `fall_time(${name}.v)`,
    `peaks(${name}.v)`,
    `correlation(${name}.v, ${name}.w)`,
    `lag(${name}.v, ${name}.w)`,
    `order_amplitude(${name}.v, 800 rpm, 2)`,
    `time_rich(${name}.v)`,
    `rear_to_front(${name}.v, ${name}.w)`,
    `oxygen_sensor(${name}.v).rate`,
    `catalyst(${name}.v, ${name}.w).ratio`,
    `catalyst(${name}.v, ${name}.w).lag`,
    `charging_ripple(${name}.v).frequency`,
    `start_voltage(${name}.v).dip`,
  ];
  it.each(['none', 'one', 'lost'].flatMap(calls))('%s cannot be computed, with a reason', (text) => {
    const { value } = result(text, { names: bare, functions: waveformFunctions() });
    expect(printed(value)).toMatch(/^cannot compute: .{15,}/);
  });

  it.each(
    calls('flat').filter((text) => !/^(switch_rate|time_rich|order_amplitude|oxygen_sensor)/.test(text)),
  )('%s of samples that do not change cannot be computed', (text) => {
    const { value } = result(text, { names: bare, functions: waveformFunctions() });
    expect(printed(value)).toMatch(/^cannot compute: .{15,}/);
  });

  it('a sensor that stays put never switches, is never rich', () => {
    const of = (text: string) => printed(result(text, { names: bare, functions: waveformFunctions() }).value);
    expect(of('switch_rate(flat.v)')).toBe('0 Hz');
    expect(of('crossings(flat.v)')).toBe('0');
    expect(of('time_rich(flat.v)')).toBe('0 %');
    expect(of('time_rich(flat.v, 0.2 V)')).toBe('100 %');
    expect(of('crossings(none.v)')).toMatch(/no samples/);
  });

  it('what was not measured stays so', () => {
    const { value } = result('frequency(x)', {
      names: { x: { ...names['o2.front'], value: notTaken('1 V').value } },
      functions: waveformFunctions(),
    });
    expect(printed(value)).toMatch(/^not measured/);
  });
});

describe('uncertainty', () => {
  const measured = {
    'o2.front': channel('o2', 'V', 10, 1000, switching(1), 0.02),
    'o2.rear': channel('o2', 'V', 10, 1000, (t) => 0.6 + 0.1 * (switching(1)(t) - 0.45), 0.02),
    level: reading('0.45 ± 0.01 V'),
  };
  const of = (text: string) => {
    const { value } = result(text, { names: measured, functions: waveformFunctions() });
    if (value.kind !== 'one') expect.fail(printed(value));
    return value.amount;
  };

  it('of a shift common to all samples leaves amplitudes, periods and ratios alone', () => {
    for (const text of ['period(o2.front)', 'rear_to_front(o2.front, o2.rear)', 'lag(o2.front, o2.rear)'])
      expect(of(text).spread).toEqual([]);
  });

  it('moves the share of time above a level: d(share)/dv = 1/(π·0.35 V) at the middle of a sine', () => {
    expect(of('time_rich(o2.front)').spread).toHaveLength(1);
    expect(Math.abs(of('time_rich(o2.front)').spread[0]?.by ?? 0)).toBeCloseTo(0.02 / (Math.PI * 0.35), 3);
    expect(of('time_rich(o2.front, level)').spread).toHaveLength(2);
  });

  it('of a count is none', () => {
    expect(of('crossings(o2.front, level)').spread).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { waveformFunctions } from '../../../core/waveform/waveformFunctions.ts';
import { printed, result } from '../../support/expressionResult.ts';
import { type Names, reading, samples, words } from '../../support/expressionScope.ts';
import { switchingSensor, truthOf } from '../../support/signal/oxygenSignals.ts';
import { type Signal, sampled } from '../../support/signal/signal.ts';

const held = (capture: string, like: string, { time, samples: values }: Signal, halfWidth = 0) =>
  samples(capture, like, [...time], [...values], halfWidth);

const cycle = { period: 1, rich: 0.5, toRich: 0.04, toLean: 0.06 };
const clean = switchingSensor(cycle, 12, 500);
const names: Names = {
  'o2.front': held('o2', 'V', clean),
  'o2.rear': held('o2', 'V', { ...clean, samples: clean.samples.map((v) => 0.65 + 0.1 * (v - 0.45)) }),
  'o2.titania': held('o2', 'V', { ...clean, samples: clean.samples.map((v) => 5 - 5 * v) }),
  'o2.lambda': held(
    'o2',
    '',
    sampled(12, 50, (t) => 1 + 0.02 * Math.sin(2 * Math.PI * t)),
  ),
  'o2.map': held('o2', 'kPa absolute', clean),
  'measured.front': held('measured', 'V', clean, 0.02),
  'table.map': reading('40 kPa absolute'),
};
const of = (text: string, sensor?: string) =>
  result(text, {
    names,
    functions: waveformFunctions(),
    ...(sensor === undefined ? {} : { header: { 'engine.front_sensor': words(sensor) } }),
  });

describe('the header’s front sensor decides how volts are read', () => {
  it.each([undefined, 'zirconia'])('%s: volts switch', (sensor) => {
    expect(printed(of('oxygen_sensor(o2.front).verdict', sensor).value)).toBe('switching');
    expect(printed(of('rear_to_front(o2.front, o2.rear)', sensor).value)).toBe('0.1');
    expect(printed(of('catalyst(o2.front, o2.rear).mirrors', sensor).value)).toBe('no');
  });

  it('wideband: neither sensor nor catalyst is judged in volts, and the words say what to do', () => {
    for (const text of ['rear_to_front(o2.front, o2.rear)', 'catalyst(o2.front, o2.rear).ratio'])
      expect(printed(of(text, 'wideband').value)).toMatch(
        /^cannot compute: a wide-range sensor's volts do not switch.*`sensor = "zirconia"`/,
      );
    expect(printed(of('oxygen_sensor(o2.front).rate', 'wideband').value)).toMatch(/`lambda_sensor`/);
    expect(printed(of('oxygen_sensor(o2.rear, sensor = "zirconia").verdict', 'wideband').value)).toBe(
      'stuck rich',
    );
    expect(printed(of('lambda_sensor(o2.lambda).verdict', 'wideband').value)).toBe('on target');
  });

  it('titania: needs its supply, takes its polarity', () => {
    expect(printed(of('oxygen_sensor(o2.titania).rate', 'titania').value)).toMatch(/give `supply`/);
    expect(printed(of('oxygen_sensor(o2.titania, supply = 5 V).verdict', 'titania').value)).toBe('switching');
    const share = (rich: string) =>
      printed(of(`oxygen_sensor(o2.titania, supply = 5 V, rich = "${rich}").time_rich`, 'titania').value);
    expect(Number.parseFloat(share('low')) + Number.parseFloat(share('high'))).toBeCloseTo(100, 1);
    expect(printed(of('oxygen_sensor(o2.titania, supply = 5 V, rich = "up").rate', 'titania').value)).toMatch(
      /"high" or "low"/,
    );
  });

  it('a kind that is none is named', () => {
    expect(printed(of('oxygen_sensor(o2.front, sensor = "heated").rate').value)).toMatch(
      /"zirconia", "titania" or "wideband"/,
    );
  });
});

describe('limits and levels are the author’s', () => {
  it.each([
    ['oxygen_sensor(o2.front).verdict', 'switching'],
    ['oxygen_sensor(o2.front, most_time = 20 ms).verdict', 'lazy'],
    ['oxygen_sensor(o2.front, least_rate = 3 Hz).verdict', 'lazy'],
    ['oxygen_sensor(o2.front, most_bias = 0.01 V).verdict', 'biased rich'],
    ['catalyst(o2.front, o2.rear, mirror_ratio = 0.05).mirrors', 'yes'],
    ['lambda_sensor(o2.lambda, desired = 0.9).verdict', 'lean'],
  ])('%s is %s', (text, word) => {
    const { value, diagnostics } = of(text);
    expect(diagnostics).toEqual([]);
    expect(printed(value)).toBe(word);
  });

  it('other levels give other times', () => {
    const { value } = of('oxygen_sensor(o2.front, low = 0.2 V, high = 0.7 V).lean_to_rich');
    const { leanToRich } = truthOf(cycle, 0.45, 0.2, 0.7);
    expect(Number.parseFloat(printed(value))).toBeCloseTo(1000 * leanToRich, 0);
  });
});

describe('uncertainty', () => {
  it('a shift common to all samples moves the bias by as much, and the swing’s ratio not at all', () => {
    const width = (text: string) => {
      const { value } = of(text);
      if (value.kind !== 'one') expect.fail(printed(value));
      return Math.hypot(...value.amount.spread.map(({ by }) => by));
    };
    expect(width('oxygen_sensor(measured.front).bias')).toBeCloseTo(0.02, 6);
    expect(width('oxygen_sensor(measured.front).minimum')).toBeCloseTo(0.02, 6);
    expect(width('oxygen_sensor(measured.front).switches')).toBe(0);
    // Towards rich v = E − (E − v₀)·exp(−t/τ): moved by u, the time from 0.3 to 0.6 V changes by τ·u·(1/(E − 0.6) − 1/(E − 0.3)).
    const { maximum } = truthOf(cycle);
    const by = 0.04 * 0.02 * (1 / (maximum - 0.6) - 1 / (maximum - 0.3));
    expect(width('oxygen_sensor(measured.front).lean_to_rich')).toBeCloseTo(by, 4);
  });
});

describe('wrong channels are told before anything runs', () => {
  it.each([
    'oxygen_sensor(o2.map)',
    'oxygen_sensor(o2.lambda)',
    'oxygen_sensor(table.map)',
    'catalyst(o2.front, o2.map)',
    'lambda_sensor(o2.front)',
    'current_ramp(o2.front)',
    'pump_current(o2.map)',
    'charging_ripple(o2.map)',
    'start_voltage(o2.lambda)',
    'warm_up(o2.front)',
    'oxygen_sensor(o2.front, most_time = 5 V)',
  ])('%s', (text) => {
    expect(of(`${text}.rate`).diagnostics.map(({ code }) => code)).toEqual(['wrong-argument']);
  });

  it('a field that is none is named with those that are', () => {
    expect(of('oxygen_sensor(o2.front).lazy').diagnostics.map(({ code }) => code)).toEqual([
      'unknown-member',
    ]);
  });
});

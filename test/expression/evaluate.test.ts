import { describe, expect, it } from 'vitest';
import { halfWidth } from '../../core/quantity/amount.ts';
import { fromSi } from '../../core/quantity/convert.ts';
import { printed, result, type Setting } from '../support/expressionResult.ts';
import {
  byMember,
  notComputed,
  notTaken,
  range,
  reading,
  samples,
  words,
} from '../support/expressionScope.ts';

/** Synthetic readings; where a number is published, its source stands beside it. */
const names: Setting['names'] = {
  map: reading('13.1 inHg absolute', 'map', 'manifold'),
  vacuum: reading('16.4 inHg vacuum', 'gauge'),
  'koeo.map': reading('29.6 inHg absolute', 'koeo', 'barometer'),
  stft: reading('8 %'),
  ltft: reading('17 %'),
  ect: reading('195 °F'),
  iat: reading('68 °F'),
  zero: reading('0 V'),
  volts: reading('12.6 V'),
  amps: reading('150 A'),
  compression: byMember('cylinder', {
    1: '181 psi gauge',
    2: '178 psi gauge',
    3: '180 psi gauge',
    4: '179 psi gauge',
  }),
  gap: byMember('cylinder', { 1: '181 psi gauge', 2: '-', 3: '180 psi gauge' }),
  wet: byMember('cylinder', { 1: '190 psi gauge', 3: '185 psi gauge', 5: '180 psi gauge' }),
  trims: byMember('state', { idle: '25 %', fast: '8 %' }),
  'log.o2': samples('log', 'V', [0, 1, 2, 3, 4], [0.1, 0.8, Number.NaN, 0.6, 0.2]),
  'log.rpm': samples('log', 'rpm', [0, 1, 2, 3, 4], [800, 2400, 2600, 2200, 900]),
  'log.temp': samples('log', '°C', [0, 1, 2, 3, 4], [20, 21, 22, 23, 24]),
  oil: notTaken('50 psi gauge'),
  calc: notComputed('50 psi gauge', 'the header has no displacement'),
  loop: words('closed'),
  'spec.vacuum': range('17 inHg vacuum', '21 inHg vacuum'),
};

const setting: Setting = { names, barometer: reading('29.92 inHg absolute', 'baro') };
const value = (text: string, within = setting): string => {
  const { value: got, diagnostics } = result(text, within);
  expect(diagnostics.filter((each) => each.severity === 'error')).toEqual([]);
  return printed(got);
};

describe('what is beyond any number', () => {
  it.each([
    '10 ^ 149 * 6 + 6 * 10 ^ 149',
    '0 - 10 ^ 149 * 6 - 10 ^ 149 * 6',
    '10 ^ 160',
    'map * 10 ^ 80 * 10 ^ 80',
    '(2 ± 1 V) * 10 ^ 149 / 1 V + (1 ± 1) * 9 * 10 ^ 149',
  ])('cannot be computed: %s', (text) => {
    expect(value(text)).toContain('cannot compute: the result is beyond any number');
  });

  it('is no number and no uncertainty of anything', () => {
    expect(value('gap * 10 ^ 80 * 10 ^ 80')).toBe('1: cannot compute, 2: not measured, 3: cannot compute');
    const { value: got } = result('mean(log.o2 * 10 ^ 149 * 2000)', setting);
    expect(got).toMatchObject({ kind: 'absent', why: 'there are no values in it' });
    const wide = result('(1 ± 0.5 V) * 10 ^ 100 * 10 ^ 49 / 1 V', setting).value;
    expect(wide.kind === 'one' ? halfWidth(wide.amount) : undefined).toBeCloseTo(5e148, -140);
  });
});

describe('single values, in the unit of their first operand', () => {
  it.each([
    ['map + vacuum', '29.5 inHg'],
    ['koeo.map - vacuum', '13.2 inHg'],
    ['stft + ltft', '25 %'],
    ['1 + stft', '108 %'],
    ['ect - iat', '127 °F'],
    ['ect + 5 °F', '200 °F'],
    ['volts * amps', '1890 V·A'],
    ['volts / amps', '0.084 V/A'],
    ['volts ^ 2', '158.76 V²'],
    ['volts / 2', '6.3 V'],
    ['- volts', '-12.6 V'],
    ['2 + 3 * 4 - 6 / 2', '11'],
    ['2 ^ 3 ^ 2', '512'],
    ['4 ^ (1 / 2)', '2'],
    ['(-8) ^ 3', '-512'],
    ['10.5 ^ (1 + stft)', '12.673'],
    ['(-1) ^ stft', 'cannot compute: `^`: A negative number has no such power, and 0 no negative one.'],
    ['100 kPa absolute / 50 kPa absolute', '2'],
    // UC8: a difference of 18 °F is 10 K (definition).
    ['kelvin(50 °F) - kelvin(32 °F)', '10 K'],
    ['if stft > 5 % then "rich" else "lean"', 'rich'],
    ['if stft > 50 % then 1 V else 2 V', '2 V'],
    ['mean(ect, iat)', '131.5 °F'],
    ['max(2 %, 1)', '100 %'],
    ['round(2.675 V, 2)', '2.68 V'],
    ['round(-2.5)', '-3'],
    // What 0.1 + 0.2 − 0.3 leaves in a double is 5.6e-17; and a number beyond 15 digits.
    ['round(0.1 V + 0.2 V - 0.3 V, 1)', '0 V'],
    ['round(0.0000004 V, 2)', '0 V'],
    ['round(0.0000006 V, 6)', '0.000001 V'],
    ['round(1234567890123456789 V)', '1234567890120000000 V'],
    ['stdev(0.7 V, 0.7 V, 0.7 V)', '0 V'],
    // Torque is pound-force times feet: 10 · 4.44822 N · 2 · 0.3048 m = 27.116 J. Pounds of mass make none.
    ['10 lbf * 2 ft', '20 lb·ft'],
    ['10 lb * 2 ft', '2.7651 m·kg'],
    ['3 A * 2 h', '6 Ah'],
  ])('%s = %s', (text, expected) => {
    expect(value(text)).toBe(expected);
  });
});

describe('pressures counted from another zero, by the barometer', () => {
  // Arithmetic with the definition: absolute = barometer + gauge = barometer − vacuum (ISO 80000-4).
  it.each([
    ['absolute(20 inHg vacuum)', '29.92 inHg absolute', '9.92 inHg'],
    ['absolute(18 inHg vacuum)', '24.9 inHg absolute', '6.9 inHg'],
    ['vacuum(35 kPa absolute) + 0 inHg', '101.3 kPa absolute', '66.3 kPa'],
    ['0 inHg difference + vacuum(35 kPa absolute)', '101.3 kPa absolute', '19.578 inHg'],
    ['0 kPa difference + absolute(45 psi gauge)', '101.325 kPa absolute', '411.59 kPa'],
    ['absolute(100 kPa absolute)', '29.92 inHg absolute', '100 kPa'],
    ['gauge(20 inHg vacuum)', '24 inHg absolute', '-20 inHg'],
    [
      'absolute(31 inHg vacuum)',
      '29.92 inHg absolute',
      'cannot compute: 31 inHg vacuum, with a barometer of 29.92 inHg would be less than no pressure at all',
    ],
  ])('%s at %s = %s', (text, barometer, expected) => {
    expect(value(text, { barometer: reading(barometer) })).toBe(expected);
  });

  it('without a barometer nothing is converted', () => {
    expect(value('absolute(vacuum)', { names })).toBe('cannot compute: there is no certain barometer');
    expect(value('absolute(map)', { names })).toBe('13.1 inHg');
  });

  it('the barometer’s uncertainty is one source for all that is converted with it', () => {
    const within = { names, barometer: reading('29.9 ± 0.3 inHg absolute', 'baro') };
    expect(value('absolute(vacuum)', within)).toBe('13.5 ± 0.3 inHg');
    expect(value('absolute(vacuum) - absolute(10 inHg vacuum)', within)).toBe('-6.4 inHg');
  });
});

describe('maps go member by member', () => {
  it.each([
    ['compression - 1 psi', '1: 180 psi, 2: 177 psi, 3: 179 psi, 4: 178 psi'],
    ['compression / max(compression) * 100 %', '1: 100 %, 2: 98.343 %, 3: 99.448 %, 4: 98.895 %'],
    ['wet - compression', '1: 9 psi, 3: 5 psi, 5: not measured, 2: not measured, 4: not measured'],
    ['gap * 2', '1: 362 psi, 2: not measured, 3: 360 psi'],
    ['compression[3]', '180 psi'],
    ['compression[lowest(compression)]', '178 psi'],
    ['compression[7]', 'cannot compute: there is no cylinder 7'],
    ['gap[2]', 'not measured: not taken'],
    ['trims.idle - trims["fast"]', '17 %'],
    ['trims.cruise', 'cannot compute: there is no state cruise'],
    ['min(gap)', 'not measured: not taken'],
    ['count(gap)', '2'],
    ['first(gap)', 'not measured: not taken'],
    ['lowest(trims)', 'fast'],
    ['absolute(compression)[1]', '195.7 psi'],
    ['abs(- trims)', 'idle: 25 %, fast: 8 %'],
  ])('%s = %s', (text, expected) => {
    expect(value(text)).toBe(expected);
  });
});

describe('series go sample by sample; what is missing stays missing', () => {
  it.each([
    ['log.o2 * 1000', '100 V, 800 V, no number V, 600 V, 200 V'],
    ['log.o2 - log.o2', '0 V, 0 V, no number V, 0 V, 0 V'],
    ['log.o2 from 1 s to 3 s', '0.8 V, no number V, 0.6 V'],
    ['log.o2 from 1.5 s to 1.6 s', ''],
    ['log.o2 where (log.rpm > 2000 rpm)', '0.8 V, no number V, 0.6 V'],
    ['log.o2 where (log.rpm > 2000 rpm and log.o2 > 0.7 V)', '0.8 V'],
    ['log.o2 where (not log.o2 > 0.7 V)', '0.1 V, 0.6 V, 0.2 V'],
    ['(log.o2 from 1 s to 4 s) - log.o2', '0 V, no number V, 0 V, 0 V'],
    ['log.o2 where (stft > 5 %)', '0.1 V, 0.8 V, no number V, 0.6 V, 0.2 V'],
    ['log.o2 where (oil > 5 psi)', 'not measured: not measured'],
    ['min(log.o2)', '0.1 V'],
    ['mean(log.o2)', '0.425 V'],
    ['count(log.o2)', '4'],
    ['last(log.o2 from 0 s to 3 s)', '0.6 V'],
    ['at(log.o2, 0.5 s)', '0.45 V'],
    ['at(log.o2, 0 s)', '0.1 V'],
    ['at(log.o2, 4 s)', '0.2 V'],
    // 3 · 1.4 s is 4.199999999999999 s, and (0.1 + 0.2) · 10 s is 3.0000000000000004 s.
    ['at(log.o2, (0.1 + 0.2) * 10 s)', '0.6 V'],
    ['at(log.o2 from 0 s to 3 s, (0.1 + 0.2) * 10 s)', '0.6 V'],
    ['at(log.o2, 5 s)', 'cannot compute: the moment is after the last sample'],
    ['at(log.o2, 1.5 s)', 'cannot compute: a sample is missing there'],
    ['rate(log.temp)', '1 °C/s, 1 °C/s, 1 °C/s, 1 °C/s, 1 °C/s'],
    ['max(log.o2 from 7 s to 9 s)', 'cannot compute: there are no values in it'],
  ])('%s = %s', (text, expected) => {
    expect(value(text)).toBe(expected);
  });

  // The example of percentile in spreadsheets and in numpy's documentation of the linear method: 1, 2, 3, 4 at 40 % is 2.2.
  it('a percentile lies between the ordered values', () => {
    expect(
      value('percentile(x, 40 %)', { names: { x: samples('log', 'V', [0, 1, 2, 3], [4, 1, 3, 2]) } }),
    ).toBe('2.2 V');
  });
});

describe('what is not there says why', () => {
  it.each([
    ['oil + 1 psi', 'not measured: not measured'],
    ['oil - calc', 'cannot compute: the header has no displacement'],
    ['calc - oil', 'cannot compute: the header has no displacement'],
    ['volts / zero', 'cannot compute: it is divided by 0'],
    ['(-1) ^ (1 / 2)', 'cannot compute: a negative number has no such power'],
    ['sqrt(-4)', 'cannot compute: `sqrt`: A value below 0 has no square root.'],
    [
      'kelvin(-500 °C)',
      'cannot compute: `kelvin`: The temperature is below absolute zero. Check the value and its unit.',
    ],
    ['if oil > 1 psi then 1 V else 2 V', 'not measured: not measured'],
    ['stdev(volts)', 'cannot compute: a standard deviation needs at least two values'],
    ['percentile(log.o2, 130 %)', 'cannot compute: a percentile lies between 0 % and 100 %'],
  ])('%s = %s', (text, expected) => {
    expect(value(text)).toBe(expected);
  });
});

describe('uncertainty', () => {
  const measured: Setting['names'] = {
    x: reading('10 ± 0.3 V', 'x'),
    y: reading('20 ± 0.8 V', 'y'),
    i: reading('2 ± 0.1 A', 'i'),
    half: reading('10 ± 0.3 V', 'x'),
    'log.o2': samples('log', 'V', [0, 1, 2], [0.2, 0.8, 0.5], 0.01),
    'log.still': samples('log', 'V', [0, 1, 2], [0, 0, 0], 0.01),
    many: byMember('cylinder', {
      1: '181 ± 2 psi gauge',
      2: '178 ± 2 psi gauge',
      3: '180 ± 2 psi gauge',
      4: '179 ± 2 psi gauge',
    }),
  };
  const width = (text: string): number => {
    const { value: got, diagnostics } = result(text, { names: measured });
    expect(diagnostics).toEqual([]);
    if (got.kind !== 'one') throw new Error(printed(got));
    return fromSi(halfWidth(got.amount), got.type.unit, 'difference');
  };

  // JCGM 100:2008, 5.1.2 and 5.1.6: sums add in quadrature, products and powers by relative half-widths.
  it.each([
    ['x + y', Math.hypot(0.3, 0.8)],
    ['x - y', Math.hypot(0.3, 0.8)],
    ['x - x', 0],
    ['x / x', 0],
    ['x + x', 0.6],
    ['2 * x', 0.6],
    ['x - half', 0],
    ['x * y', 200 * Math.hypot(0.3 / 10, 0.8 / 20)],
    ['x / y', 0.5 * Math.hypot(0.3 / 10, 0.8 / 20)],
    ['x * i', 20 * Math.hypot(0.3 / 10, 0.1 / 2)],
    ['x ^ 2', 100 * 2 * 0.03],
    ['x ^ 0', 0],
    ['mean(log.still ^ 0)', 0],
    ['mean(log.still ^ 1)', 0.01],
    ['x * x', 100 * 2 * 0.03],
    ['x * x - x ^ 2', 0],
    ['sqrt(x * x)', 0.3],
    ['(x / 5 V) ^ (y / 10 V)', Math.hypot(2 * 2 * 0.06, 4 * Math.LN2 * 0.08)],
    ['sqrt(x * y)', 0.5 * Math.sqrt(200) * Math.hypot(0.03, 0.04)],
    ['abs(-x)', 0.3],
    ['min(x, y)', 0.3],
    ['mean(x, y)', Math.hypot(0.3, 0.8) / 2],
    ['mean(x, x)', 0.3],
    ['median(x, y)', Math.hypot(0.3, 0.8) / 2],
    ['mean(many)', 1],
    ['spread(many)', Math.hypot(2, 2)],
    ['many[1] - many[1]', 0],
    ['mean(log.o2)', 0.01],
    ['max(log.o2) - min(log.o2)', 0],
    ['mean(log.o2 * log.o2)', (2 * 0.01 * (0.2 + 0.8 + 0.5)) / 3],
    ['at(log.o2 / log.o2, 1 s)', 0],
    ['max(rate(log.o2))', 0],
    ['round(x + 0.04 V, 1)', 0.3],
    ['percentile(log.o2, 30 %)', 0.01],
    ['(x + 1 ± 0.4 V)', 0.5],
    // Next to 0, where 0.3 − 0.2 − 0.1 is −2.8e-17 in doubles: d(10^x)/dx is ln 10 there.
    ['10 ^ (0.3 ± 0.01 - 0.2 - 0.1)', Math.LN10 * 0.01],
    ['10 ^ (0 ± 0.01)', Math.LN10 * 0.01],
    // A moment that is not sure: 0.6 V/s up to 1 s, −0.3 V/s behind it, between the neighbours 0.15 V/s.
    ['at(log.o2, 0.5 s ± 0.1 s)', Math.hypot(0.01, 0.06)],
    ['at(log.o2, 1 s ± 0.1 s)', Math.hypot(0.01, 0.015)],
    ['at(log.o2, 0 s ± 0.1 s)', Math.hypot(0.01, 0.06)],
    ['stdev(log.o2)', 0],
  ])('of %s is %d', (text, expected) => {
    expect(width(text)).toBeCloseTo(expected, 7);
  });
});

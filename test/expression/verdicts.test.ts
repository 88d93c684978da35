import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Verdict } from '../../core/expression/value.ts';
import { fromSi } from '../../core/quantity/convert.ts';
import { result, type Setting, truth } from '../support/expressionResult.ts';
import {
  byMember,
  notComputed,
  notTaken,
  range,
  reading,
  samples,
  words,
} from '../support/expressionScope.ts';

const names: Setting['names'] = {
  map: reading('13.1 ± 0.2 inHg absolute', 'map', 'manifold'),
  vacuum: reading('16.4 inHg vacuum', 'gauge'),
  'koeo.map': reading('29.6 inHg absolute', 'koeo', 'barometer'),
  idle: reading('25 %'),
  trim: reading('9.5 ± 1 %', 'trim'),
  exact: reading('10 %'),
  volts: reading('12.6 ± 0.1 V', 'volts'),
  ect: reading('88 °C'),
  iat: reading('20 °C'),
  oil: notTaken('50 psi gauge'),
  calc: notComputed('50 psi gauge', 'no barometer'),
  compression: byMember('cylinder', {
    1: '181 psi gauge',
    2: '120 psi gauge',
    3: '110 psi gauge',
    4: '179 psi gauge',
  }),
  good: byMember('cylinder', { 1: '181 psi gauge', 2: '178 psi gauge' }),
  close: byMember('cylinder', { 1: '181 psi gauge', 2: '120 ± 5 psi gauge', 3: '110 psi gauge' }),
  gap: byMember('cylinder', { 1: '181 psi gauge', 2: '-', 3: '180 psi gauge' }),
  'log.o2': samples('log', 'V', [0, 1, 2, 3], [0.1, 0.8, Number.NaN, 0.9]),
  'spec.vacuum': range('17 inHg vacuum', '21 inHg vacuum'),
  'spec.least': range('15 inHg vacuum', undefined),
  'spec.most': range(undefined, '21 inHg vacuum'),
  loop: words('closed'),
  smoke: words('yes'),
};

const judged = (text: string) => {
  const found = result(text, { names });
  expect(found.diagnostics.filter((each) => each.severity === 'error')).toEqual([]);
  return truth(found);
};

describe('five verdicts', () => {
  it.each<readonly [string, Verdict]>([
    ['idle < 26 %', 'holds'],
    ['idle < 25 %', 'fails'],
    ['idle <= 25 %', 'holds'],
    ['idle > 25 %', 'fails'],
    ['idle >= 25 %', 'holds'],
    ['idle between -10 % and 25 %', 'holds'],
    ['idle not between -10 % and 25 %', 'fails'],
    ['idle in 25 .. 30 %', 'holds'],
    ['trim < 12 %', 'holds'],
    ['trim < 10 %', 'too close to call'],
    ['trim < 10.5 %', 'too close to call'],
    ['trim < 8 %', 'fails'],
    ['trim < 8.5 %', 'too close to call'],
    ['not trim < 10 %', 'too close to call'],
    ['trim between 5 % and 10 %', 'too close to call'],
    // Both limits must be met, whichever is nearer: a limit that is not sure leaves open what a near one does not.
    ['volts between 12 V and 14 ± 3 V', 'too close to call'],
    ['volts >= 12 V and volts <= 14 ± 3 V', 'too close to call'],
    ['volts not between 12 V and 14 ± 3 V', 'too close to call'],
    ['volts between 13 V and 14 ± 3 V', 'fails'],
    // 0.2 + 9.3 is 9.5 but for the last digit of a double: u is u(a − b) + u(t), as at a = b, and 2 %.
    ['trim within 1.7 ± 1 % of 9.5 %', 'too close to call'],
    ['trim within 1.7 ± 1 % of 0.2 % + 9.3 %', 'too close to call'],
    ['trim within 2.1 ± 1 % of 0.2 % + 9.3 %', 'holds'],
    ['volts within 0.2 V of 12.5 V', 'too close to call'],
    ['volts within 0.3 V of 12.5 V', 'holds'],
    ['volts not within 0.3 V of 12.5 V', 'fails'],
    ['volts within 0.05 V of 12.6 V', 'too close to call'],
    ['volts within 0.1 V of volts', 'holds'],
    ['map - map within 0 inHg of 0 inHg', 'holds'],
    ['map + vacuum within 0.5 inHg of koeo.map', 'holds'],
    ['vacuum in spec.vacuum', 'fails'],
    ['vacuum not in spec.vacuum', 'holds'],
    ['vacuum in spec.least', 'holds'],
    ['vacuum in spec.most', 'holds'],
    ['ect - iat > 60 °C', 'holds'],
    ['ect within 5 °C of 90 °C', 'holds'],
    ['loop is "closed"', 'holds'],
    ['loop is not "closed"', 'fails'],
    ['smoke is yes', 'holds'],
    ['smoke is unclear', 'fails'],
    ['(idle > 1 %) is true', 'holds'],
    ['oil > 10 psi', 'not measured'],
    ['oil within 1 psi of calc', 'cannot compute'],
    ['calc > 10 psi', 'cannot compute'],
    ['true', 'holds'],
    ['false', 'fails'],
    ['if idle > 1 % then smoke is yes else false', 'holds'],
  ])('%s: %s', (text, verdict) => {
    expect(judged(text).verdict).toBe(verdict);
  });

  // 0.1 + 0.2 is 0.30000000000000004 in binary: a margin of the computer's last digits is none.
  it('the last digits of the computer do not decide', () => {
    expect(judged('0.1 V + 0.2 V <= 0.3 V').verdict).toBe('holds');
    expect(judged('0.1 V + 0.2 V < 0.3 V').verdict).toBe('fails');
    expect(judged('0.3 V within 0.1 V of 0.2 V').verdict).toBe('holds');
  });

  it('within 2 % means points beside a percent, otherwise a share of the right side', () => {
    expect(judged('idle within 2 % of 26 %').verdict).toBe('holds');
    expect(judged('idle within 2 % of 28 %').verdict).toBe('fails');
    expect(judged('12.6 V within 2 % of 12.4 V').verdict).toBe('holds');
    expect(judged('12.7 V within 2 % of 12.4 V').verdict).toBe('fails');
    expect(judged('-12.6 V within 2 % of -12.4 V').verdict).toBe('holds');
  });
});

describe('a verdict tells its left side, its margin and its limit', () => {
  const told = (text: string) => {
    const { left, margin, marginUncertainty, marginType, limit, verdict, member } = judged(text);
    const inUnit = (si: number | undefined): number | undefined =>
      si === undefined || marginType === undefined
        ? undefined
        : Number(fromSi(si, marginType.unit, marginType.kind).toPrecision(9));
    return {
      verdict,
      left:
        left === undefined
          ? undefined
          : Number(fromSi(left.amount.si, left.type.unit, left.type.kind).toPrecision(9)),
      margin: inUnit(margin),
      u: inUnit(marginUncertainty),
      unit: marginType?.unit.symbol,
      limit,
      member,
    };
  };

  it.each([
    [
      'idle between -10 % and 10 %',
      { verdict: 'fails', left: 25, margin: -15, u: 0, unit: '%', limit: '-10 .. 10 %' },
    ],
    [
      'map + vacuum within 0.5 inHg of koeo.map',
      { verdict: 'holds', left: 29.5, margin: 0.4, u: 0.2, unit: 'inHg', limit: '0.5 inHg of 29.6 inHg' },
    ],
    ['map < 50 kPa', { left: 13.1, u: 0.2, unit: 'inHg', limit: 'below 50 kPa' }],
    ['idle >= 30 %', { verdict: 'fails', margin: -5, limit: 'at least 30 %' }],
    [
      'volts within 0.1 V of 12.6 V',
      { verdict: 'too close to call', margin: 0.1, u: 0.1, limit: '0.1 V of 12.6 V' },
    ],
    ['12.4 V within 2 % of volts', { margin: 0.052, u: 0.098, limit: '2 % of 12.6 ± 0.1 V' }],
    ['vacuum in spec.vacuum', { margin: -0.6, limit: '17 .. 21 inHg' }],
    ['vacuum in spec.least', { margin: 1.4, limit: 'at least 15 inHg' }],
    ['idle not between 0 % and 10 %', { verdict: 'holds', margin: 15, limit: 'outside 0 .. 10 %' }],
    ['not idle > 10 %', { verdict: 'fails', margin: -15, limit: 'at most 10 %' }],
    ['not idle >= 10 %', { verdict: 'fails', margin: -15, limit: 'below 10 %' }],
    ['not idle < 10 %', { verdict: 'holds', margin: 15, limit: 'at least 10 %' }],
    ['not idle <= 10 %', { verdict: 'holds', margin: 15, limit: 'above 10 %' }],
    ['not not idle < 10 %', { verdict: 'fails', margin: -15, limit: 'below 10 %' }],
    ['not idle between 0 % and 10 %', { verdict: 'holds', margin: 15, limit: 'outside 0 .. 10 %' }],
    ['not idle not between 0 % and 10 %', { verdict: 'fails', margin: -15, limit: '0 .. 10 %' }],
    ['not idle between 0 % and 30 %', { verdict: 'fails', margin: -5, limit: 'outside 0 .. 30 %' }],
    ['not idle in 0 .. 30 %', { verdict: 'fails', margin: -5, limit: 'outside 0 .. 30 %' }],
    ['not exact within 2 % of 15 %', { verdict: 'holds', margin: 3, limit: 'more than 2 % of 15 %' }],
    ['not vacuum in spec.most', { verdict: 'fails', margin: -4.6, limit: 'above 21 inHg' }],
    ['vacuum not in spec.least', { verdict: 'fails', margin: -1.4, limit: 'below 15 inHg' }],
    ['not loop is "open"', { verdict: 'holds', left: undefined, limit: 'not open' }],
    ['not loop is not "open"', { verdict: 'fails', left: undefined, limit: 'open' }],
    ['ect > 90 °C', { verdict: 'fails', left: 88, margin: -2, unit: '°C', limit: 'above 90 °C' }],
    ['idle > 1 % and trim > 1 %', { verdict: 'holds', left: undefined, margin: undefined, limit: undefined }],
    ['loop is "open"', { verdict: 'fails', left: undefined, limit: 'open' }],
  ])('%s', (text, expected) => {
    expect(told(text)).toMatchObject(expected);
  });

  it.each([
    ['compression > 140 psi', { verdict: 'fails', left: 120, member: '2', margin: -20 }],
    ['good > 140 psi', { verdict: 'holds', left: 181, member: '1' }],
    ['close > 118 psi', { verdict: 'fails', left: 110, member: '3' }],
    ['close > 108 psi', { verdict: 'holds', left: 181, member: '1' }],
    ['close > 119 psi or false', { verdict: 'fails', member: undefined }],
    ['compression not between 100 psi and 150 psi', { verdict: 'fails', left: 120, member: '2' }],
    ['lowest_to_highest(good) >= 75 %', { verdict: 'holds', member: undefined }],
    ['log.o2 > 0.3 V', { verdict: 'fails', left: 0.1, member: '0 s' }],
    ['log.o2 from 1 s to 3 s > 0.3 V', { verdict: 'holds', left: 0.8, member: '1 s' }],
  ])('%s names what decided', (text, expected) => {
    expect(told(text)).toMatchObject(expected);
  });

  it('a member that was not taken leaves the statement open, and is named', () => {
    expect(judged('gap > 140 psi')).toMatchObject({
      verdict: 'not measured',
      member: '2',
      why: 'cylinder 2: not taken',
    });
    expect(judged('gap > 180.5 psi')).toMatchObject({ verdict: 'fails', member: '3' });
  });
});

/** The tables as they are written down: the order in which verdicts count. */
const forAnd: readonly Verdict[] = ['fails', 'cannot compute', 'not measured', 'too close to call', 'holds'];
const says: Readonly<Record<Verdict, string>> = {
  holds: 'idle > 1 %',
  fails: 'idle < 1 %',
  'too close to call': 'trim < 10 %',
  'not measured': 'oil > 1 psi',
  'cannot compute': 'calc > 1 psi',
};

describe('and, or, not', () => {
  for (const a of forAnd) {
    for (const b of forAnd) {
      it(`${a} with ${b}`, () => {
        const first = forAnd[Math.min(forAnd.indexOf(a), forAnd.indexOf(b))];
        const last = forAnd[Math.max(forAnd.indexOf(a), forAnd.indexOf(b))];
        expect(judged(`${says[a]} and ${says[b]}`).verdict).toBe(first);
        expect(judged(`${says[a]} or ${says[b]}`).verdict).toBe(last);
      });
    }
  }

  it('why a verdict is missing is carried along', () => {
    expect(judged('idle > 1 % and oil > 1 psi').why).toBe('not measured');
    expect(judged('oil > 1 psi or calc > 1 psi').why).toBe('not measured');
    expect(judged('oil > 1 psi and calc > 1 psi').why).toBe('no barometer');
  });
});

describe('what decided a statement of halves is said, since it has no value of its own', () => {
  it.each<readonly [string, Verdict, string | undefined]>([
    ['idle < 30 % and volts > 15 V', 'fails', '`volts > 15 V` fails: 12.6 ± 0.1 V'],
    ['idle < 3 % or volts > 15 V', 'fails', '`idle < 3 %` fails: 25 %; `volts > 15 V` fails: 12.6 ± 0.1 V'],
    ['idle < 3 % or volts > 12 V', 'holds', '`volts > 12 V` holds: 12.6 ± 0.1 V'],
    ['idle > 3 % and volts > 12 V', 'holds', '`idle > 3 %` holds: 25 %; `volts > 12 V` holds: 12.6 ± 0.1 V'],
    ['not (idle > 3 % or volts > 15 V)', 'fails', '`idle > 3 %` holds: 25 %'],
    ['smoke is yes and loop is "open"', 'fails', '`loop is "open"` fails: it is closed'],
    ['idle > 3 % and compression > 140 psi', 'fails', '`compression > 140 psi` fails: cylinder 2: 120 psi'],
    ['idle > 3 % and volts > 15 V and smoke is yes', 'fails', '`volts > 15 V` fails: 12.6 ± 0.1 V'],
    ['idle > 3 % and trim < 10 %', 'too close to call', '`trim < 10 %` is too close to call: 9.5 ± 1 %'],
    ['idle > 3 % and not volts < 15 V', 'fails', '`not volts < 15 V` fails: 12.6 ± 0.1 V'],
    ['lowest(compression) is "2"', 'fails', 'it is 3'],
    ['lowest(compression) is "3"', 'holds', undefined],
    ['loop is not "closed"', 'fails', 'it is closed'],
  ])('%s', (text, verdict, why) => {
    expect(judged(text)).toMatchObject({ verdict, why, left: undefined });
  });
});

describe('laws of comparison', () => {
  const number = fc.double({ min: -1000, max: 1000, noNaN: true }).map((each) => Number(each.toFixed(3)));
  const width = fc.double({ min: 0, max: 10, noNaN: true }).map((each) => Number(each.toFixed(3)));

  it('a < b and b > a agree, and exclude b <= a', () => {
    fc.assert(
      fc.property(number, number, width, (a, b, u) => {
        const within: Setting = { names: { a: reading(`${a} ± ${u} V`, 'a'), b: reading(`${b} V`, 'b') } };
        const verdict = (text: string): Verdict => truth(result(text, within)).verdict;
        expect(verdict('b > a')).toBe(verdict('a < b'));
        expect(verdict('not b <= a')).toBe(verdict('a < b'));
      }),
      { numRuns: 300, seed: 1 },
    );
  });

  it('a within t of b is b within t of a, and is a between b − t and b + t where all is exact', () => {
    fc.assert(
      fc.property(number, number, width, (a, b, t) => {
        const verdict = (text: string): Verdict => truth(result(text, {})).verdict;
        const near = verdict(`${a} V within ${t} V of ${b} V`);
        expect(verdict(`${b} V within ${t} V of ${a} V`)).toBe(near);
        expect(verdict(`${a} V between ${b} V - ${t} V and ${b} V + ${t} V`)).toBe(near);
      }),
      { numRuns: 300, seed: 2 },
    );
  });
});

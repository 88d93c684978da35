import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { caseResult } from '../../core/study/results.ts';

const header = `diag: 1
case: A van that hunts
engine:
  displacement: 2.4 L
  cylinders: 4
tools:
  gauge:
    description: vacuum gauge
    accuracy: 0.2 inHg
`;

const resultOf = (cells: string) => caseResult(checkCase(`${header}---\n${cells}`), 'van.diag');
const verdict = (cells: string) => resultOf(cells).expectations.map((each) => each.verdict);

const readings = `readings: Key on, engine off
as: koeo
state: key on engine off
values:
  map: 29.6 inHg
---
readings: Warm idle
as: idle
state: warm idle
values:
  map: 13.1 inHg
  vacuum:
    value: 16.4 inHg
    tool: gauge
  stft_b1: +8 %
  ltft_b1: +17 %
  iac: not taken
---
`;

describe('verdicts', () => {
  it('adds manifold pressure and vacuum to the barometer', () => {
    const { expectations, values } = resultOf(`${readings}check: Two sides of one number
as: sides
let:
  baro_seen: idle.map + idle.vacuum
expect:
  - baro_seen within 0.5 inHg of koeo.map
`);
    expect(values['sides.baro_seen']).toEqual({
      value: 29.5,
      unit: 'inHg',
      kind: 'absolute',
      uncertainty: 0.2,
    });
    expect(expectations[0]).toMatchObject({
      verdict: 'holds',
      value: 29.5,
      unit: 'inHg',
      uncertainty: 0.2,
      distance: 0.4,
      from: ['idle.map', 'idle.vacuum', 'koeo.map'],
    });
  });

  it.each([
    ['idle.vacuum within 0.25 inHg of 16.5 inHg', 'too close to call'],
    ['idle.vacuum within 0.1 inHg of 17 inHg', 'fails'],
    ['idle.vacuum between 15 inHg and 17 inHg', 'holds'],
    ['idle.vacuum > 16.3 inHg', 'too close to call'],
    ['idle.map < 13.1 inHg', 'fails'],
    ['idle.map <= 13.1 inHg', 'holds'],
    ['idle.iac < 5 %', 'not measured'],
    ['idle.ect > 180 °F', 'not measured'],
    ['idle.stft_b1 > 5 % and idle.ltft_b1 > 5 %', 'holds'],
    ['idle.stft_b1 > 5 % and idle.iac < 5 %', 'not measured'],
    ['idle.stft_b1 < 5 % and idle.iac < 5 %', 'fails'],
    ['idle.stft_b1 > 5 % or idle.iac < 5 %', 'holds'],
    ['not idle.stft_b1 > 5 %', 'fails'],
    ['total_trim(idle.stft_b1, idle.ltft_b1) between -10 % and 10 %', 'fails'],
    ['absolute(idle.vacuum) within 0.5 inHg of idle.map', 'holds'],
  ])('%s: %s', (expression, expected) => {
    expect(verdict(`${readings}check: One\nexpect:\n  - ${expression}\n`)).toEqual([expected]);
  });

  it('says how far beyond its limit a failing value is', () => {
    const { expectations } = resultOf(`${readings}check: Trim
as: trims
let:
  idle: total_trim(idle.stft_b1, idle.ltft_b1)
expect:
  - idle between -10 % and 10 %
`);
    expect(expectations[0]).toMatchObject({
      verdict: 'fails',
      value: 25,
      unit: '%',
      distance: -15,
      limit: '-10 .. 10 %',
    });
  });

  it('weighs suspects and names the measurement that separates them', () => {
    const { suspects, next } = resultOf(`${readings}suspects: Lean at idle
consider:
  - name: air past the meter
    predicts:
      - idle.ltft_b1 > 10 %
      - idle.iac < 5 %
  - name: weak fuel supply
    predicts:
      - idle.fuel_pressure < 40 psi
  - name: a blocked exhaust
    ruled out if:
      - idle.vacuum > 15 inHg
`);
    expect(suspects).toEqual([
      { name: 'air past the meter', standing: 'still possible', by: ['idle.ltft_b1 > 10 %'] },
      { name: 'weak fuel supply', standing: 'not tested', by: [] },
      { name: 'a blocked exhaust', standing: 'ruled out', by: ['idle.vacuum > 15 inHg'] },
    ]);
    expect(next).toBe('idle.iac');
  });

  it('keeps a computed name of a cell without a name under its bare name, or with the cell when several have it', () => {
    const one = 'check: A\nlet:\n  trim: idle.stft_b1 + idle.ltft_b1\nexpect:\n  - trim > 0 %\n';
    expect(resultOf(`${readings}${one}`).values.trim).toMatchObject({ value: 25, unit: '%' });
    const two = resultOf(`${readings}${one}---\n${one}`).values;
    expect(two.trim).toBeUndefined();
    expect(two['4.trim']).toMatchObject({ value: 25 });
    expect(two['5.trim']).toMatchObject({ value: 25 });
  });
});

describe('uncertainty', () => {
  it('counts one reading once, however often it is used, and two written ± as two', () => {
    const { values } = resultOf(`${readings}check: Sums
as: sums
let:
  nothing: idle.vacuum - idle.vacuum
  through: 2 * idle.vacuum - idle.vacuum
  one: 5 ± 3 V
  other: 5 ± 3 V
  apart: one + other
  same: one + one
`);
    expect(values['sums.nothing']).toMatchObject({ value: 0, uncertainty: 0 });
    expect(values['sums.through']).toMatchObject({ value: 16.4, uncertainty: 0.2 });
    // In quadrature 3·√2, once the same source 2·3 (JCGM 100:2008, 5.1.2 and 5.2.2).
    expect(values['sums.apart']?.uncertainty).toBeCloseTo(4.242640687, 8);
    expect(values['sums.same']).toMatchObject({ value: 10, uncertainty: 6 });
  });
});

describe('a plain number beside a percentage', () => {
  const findings = (limit: string, expression: string) =>
    resultOf(`${readings}check: Trim\nlet:\n  lim: ${limit}\nexpect:\n  - ${expression}\n`)
      .diagnostics.filter((each) => each.severity !== 'info')
      .map((each) => each.message);

  it.each([
    'idle.stft_b1 < lim',
    'idle.stft_b1 within lim of 0 %',
    'max(idle.stft_b1, lim) < 20 %',
    'idle.stft_b1 + lim < 20 %',
  ])('is told through its name: %s', (expression) => {
    expect(findings('5', expression)).toEqual(['`lim` stands beside a percentage. Write `lim * 1 %`.']);
    expect(findings('5 %', expression)).toEqual([]);
  });

  it('may be a share that was computed from readings', () => {
    expect(findings('idle.stft_b1 / idle.ltft_b1', 'lim > 20 %')).toEqual([]);
    expect(findings('1', 'idle.stft_b1 < lim')).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { codesOf, resultOf } from '../support/study.ts';

const gauge = `readings: Vacuum at idle
as: gauged
state: warm idle
values:
  vacuum: 16 inHg
---
`;
const keyOn = (map: string, as = 'koeo') => `readings: Key on
as: ${as}
state: key on engine off
values:
  map: ${map}
---
`;
const baro = (value: string, as: string) => `readings: Barometer
as: ${as}
state: key off
values:
  baro: ${value}
---
`;
const inside = `check: Inside
as: inside
let:
  manifold: absolute(gauged.vacuum)
`;
const site = `site:\n  altitude: 1000 m\n  sea level pressure: 29.92 inHg\n`;
const manifold = (cells: string, header = '') => resultOf(`${cells}${gauge}${inside}`, header);

describe('the barometer that conversions use', () => {
  it('is the case’s only barometer reading before anything else', () => {
    const { values } = manifold(baro('29 inHg', 'porch') + keyOn('28 inHg'), site);
    expect(values['inside.manifold']).toMatchObject({ value: 13, kind: 'absolute' });
  });

  it('is the only key-on manifold pressure when no barometer was read', () => {
    expect(manifold(keyOn('28 inHg'), site).values['inside.manifold']).toMatchObject({ value: 12 });
  });

  it('is the station pressure of the site when neither is there', () => {
    // Weather service form: 29.92 inHg at 1000 m is 26.5370 inHg (arithmetic from the formula).
    const { value } = manifold('', site).values['inside.manifold'] ?? {};
    expect(value).toBeCloseTo(26.537 - 16, 4);
  });

  it('is never the sea-level figure, and never one of several', () => {
    for (const cells of ['', keyOn('28 inHg', 'one') + keyOn('29 inHg', 'two')]) {
      const result = manifold(cells, 'site:\n  sea level pressure: 29.92 inHg\n');
      expect(result.values['inside.manifold']).toMatchObject({ value: null, status: 'cannot compute' });
      expect(codesOf(result)).toContain('no-barometer');
    }
  });

  it('is the one of the very cell that the value was taken in', () => {
    const cells = `readings: On the hill
as: hill
state: warm idle
values:
  vacuum: 16 inHg
  baro: 25 inHg
---
${baro('30 inHg', 'yard')}check: Inside
as: inside
let:
  hill: absolute(hill.vacuum)
`;
    expect(resultOf(cells).values['inside.hill']).toMatchObject({ value: 9 });
  });

  it('is not asked for when nothing has to be converted', () => {
    const cells = `${keyOn('28 inHg', 'one')}${keyOn('29 inHg', 'two')}check: Same
let:
  same: absolute(one.map)
`;
    expect(codesOf(resultOf(cells))).toEqual([]);
  });
});

describe('a check of a barometer against itself', () => {
  const check = (expression: string): string[] =>
    codesOf(
      resultOf(`${keyOn('29.6 inHg')}readings: Idle
as: idle
state: warm idle
values:
  map: 11 inHg
  vacuum: 18.5 inHg
---
check: Two sides
let:
  pulled: vacuum(idle.map)
expect:
  - ${expression}
`),
    );

  it.each([
    'idle.map + vacuum(idle.map) within 0.5 inHg of koeo.map',
    'koeo.map within 0.5 inHg of idle.map + vacuum(idle.map)',
    'idle.map + pulled within 0.5 inHg of koeo.map',
    'idle.map + vacuum(idle.map) > 10 inHg and idle.map + pulled within 0.5 inHg of koeo.map',
  ])('is circular: %s', (expression) => {
    expect(check(expression)).toContain('circular-check');
  });

  it.each([
    'idle.map + idle.vacuum within 0.5 inHg of koeo.map',
    'vacuum(idle.map) within 0.5 inHg of idle.vacuum',
    'absolute(idle.vacuum) < idle.map + 1 inHg',
  ])('is none: %s', (expression) => {
    expect(check(expression)).not.toContain('circular-check');
  });
});

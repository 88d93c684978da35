import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { caseResult } from '../../core/study/results.ts';
import type { Study } from '../../core/study/types.ts';
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

const boost = (as: string, baro: string, boost = '0 psi') => `readings: Boost
as: ${as}
state: warm idle
values:
  boost: ${boost}
${baro === '' ? '' : `  baro: ${baro}\n`}---
`;
const lets = (...lines: string[]) => `check: Pressures
as: out
let:
${lines.map((each) => `  ${each}`).join('\n')}
`;
const twoStates = (rows: string) => `readings: Two states
as: s
states:
  one: warm idle
  two: 2500 rpm no load
table: |
  reading  one  two  unit
${rows}
---
`;

describe('each conversion', () => {
  const cells = `${boost('a', '28 inHg')}${boost('a2', '27 inHg')}${boost('b', '')}${keyOn('29 inHg')}`;
  const value = (...lines: string[]) => resultOf(cells + lets(...lines)).values['out.x'];

  it('uses the barometer of its own readings, however many others the expression has', () => {
    const inchOfMercury = 1 / 2.0360206576012;
    expect(value('x: absolute(a.boost) - absolute(a2.boost)')?.value).toBeCloseTo(inchOfMercury, 6);
    expect(value('x: absolute(b.boost) - absolute(a.boost)')?.value).toBeCloseTo(inchOfMercury, 6);
    expect(value('x: max(absolute(a.boost), absolute(b.boost))')?.value).toBeCloseTo(29 / 2.0360206576012, 6);
    expect(value('x: gauge(a.boost + a2.baro) ')).toMatchObject({ value: null });
  });

  it('uses it through computed names', () => {
    const through = value('hh: a.boost + 1 psi', 'more: hh + 0 psi', 'x: absolute(more) - 1 psi - a.baro');
    expect(through?.value).toBeCloseTo(0, 9);
  });

  it('follows a choice to the branch that was taken', () => {
    const choice = (relation: string) =>
      value(`y: if a.baro ${relation} a2.baro then a.boost else a2.boost`, 'x: absolute(y) - 27 inHg');
    expect(choice('>')?.value).toBeCloseTo(1 / 2.0360206576012, 6);
    expect(choice('<')?.value).toBeCloseTo(0, 9);
  });

  it('does not take the barometer of what is only added to the pressure', () => {
    const drop = value('drop: a2.baro - b.boost * 0 - a2.baro', 'x: absolute(a.boost) - a.baro');
    expect(drop?.value).toBeCloseTo(0, 9);
  });

  it('has no certain barometer for values that were measured under different ones', () => {
    const result = resultOf(cells + lets('x: absolute(max(a.boost, a2.boost))'));
    expect(result.values['out.x']).toMatchObject({ value: null, status: 'cannot compute' });
    const found = result.diagnostics.find((each) => each.code === 'no-barometer');
    expect(found?.message).toContain('`a.baro`, `a2.baro`');
  });

  it('uses the barometer of the same state, and each state’s own for all of them', () => {
    const table = twoStates('  boost 0 0 psi\n  baro 28 27 inHg');
    const { values } = resultOf(
      table +
        lets(
          'two: absolute(s.two.boost) - 27 inHg',
          'all: absolute(s.boost) - s.baro',
          'named: s.boost',
          'second: absolute(named.two) - 27 inHg',
          'both: absolute(named) - s.baro',
        ),
    );
    expect(values['out.two']?.value).toBeCloseTo(0, 9);
    expect(values['out.all']).toMatchObject({ value: { one: 0, two: 0 } });
    expect(values['out.second']?.value).toBeCloseTo(0, 9);
    expect(values['out.both']).toMatchObject({ value: { one: 0, two: 0 } });
  });

  it('leaves a state without a barometer open, when the others have one', () => {
    const table = `${twoStates('  boost 0 0 psi\n  baro 28 27 inHg')}${boost('a', '26 inHg')}`;
    const { values } = resultOf(table + lets('x: absolute(s.boost)', 'y: absolute(a.boost) - 26 inHg'));
    expect(values['out.y']?.value).toBeCloseTo(0, 9);
    expect(Object.keys(values['out.x']?.value ?? {})).toEqual(['one', 'two']);
  });
});

describe('the uncertainty of the site’s station pressure', () => {
  const uncertain = `site:\n  altitude: 1000 ± 30 m\n  sea level pressure: 29.92 ± 0.1 inHg\n`;
  const written = 'station_pressure(site.sea_level_pressure, site.altitude)';

  it('is that of the altitude and the sea level figure', () => {
    const { values } = resultOf(
      `${boost('a', '')}${lets('x: absolute(a.boost)', `y: ${written}`)}`,
      uncertain,
    );
    const written1 = values['out.y'];
    expect(written1?.uncertainty).toBeGreaterThan(0.08);
    const psi = Number(values['out.x']?.uncertainty) * 2.0360206576012;
    expect(psi).toBeCloseTo(Number(written1?.uncertainty), 6);
  });

  it('comes from the same sources as the function written in the case', () => {
    const { values } = resultOf(`${boost('a', '')}${lets(`x: absolute(a.boost) - ${written}`)}`, uncertain);
    expect(values['out.x']?.value).toBeCloseTo(0, 9);
    expect(values['out.x']?.uncertainty).toBeCloseTo(0, 9);
  });
});

describe('what a value came from', () => {
  const from = (cells: string, expression: string, header = '', more = 'unused: 1') =>
    resultOf(`${cells}${lets(more)}expect:\n  - ${expression}\n`, header).expectations[0]?.from;

  it('is what was read, then the barometers of its conversions', () => {
    const cells = `${boost('a', '28 inHg')}${boost('b', '27 inHg')}`;
    expect(from(cells, 'absolute(a.boost) < absolute(b.boost)')).toEqual([
      'a.boost',
      'b.boost',
      'a.baro',
      'b.baro',
    ]);
    expect(from(cells, 'hh < absolute(b.boost)', '', 'hh: absolute(a.boost)')).toEqual([
      'a.boost',
      'b.boost',
      'a.baro',
      'b.baro',
    ]);
  });

  it('names no barometer where none was needed', () => {
    expect(from(keyOn('28 inHg') + boost('a', '29 inHg'), 'absolute(koeo.map) > 20 inHg')).toEqual([
      'koeo.map',
    ]);
  });

  it('names the header values that a function took from the header', () => {
    const cells = `readings: Idle\nas: idle\nstate: warm idle\nvalues:\n  maf: 4 g/s\n  rpm: 700 rpm\n---\n`;
    const header = 'engine:\n  displacement: 2.4 L\n  cylinders: 4\n';
    expect(from(cells, 'absolute_load(idle.maf, idle.rpm) < 50 %', header)).toEqual([
      'idle.maf',
      'idle.rpm',
      'engine.displacement',
    ]);
    expect(from(cells, 'load < 50 %', header, 'load: absolute_load(idle.maf, idle.rpm)')).toEqual([
      'idle.maf',
      'idle.rpm',
      'engine.displacement',
    ]);
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
  boost: 0 psi
---
check: Two sides
let:
  pulled: vacuum(idle.map)
  inside: absolute(idle.vacuum)
  over: inside - koeo.map
expect:
  - ${expression}
`),
    );

  it.each([
    'idle.map + vacuum(idle.map) within 0.5 inHg of koeo.map',
    'koeo.map within 0.5 inHg of idle.map + vacuum(idle.map)',
    'idle.map + pulled within 0.5 inHg of koeo.map',
    'idle.map + vacuum(idle.map) > 10 inHg and idle.map + pulled within 0.5 inHg of koeo.map',
    'absolute(idle.vacuum) > absolute(idle.boost)',
    'absolute(idle.vacuum) within 1 inHg of absolute(idle.vacuum)',
    'inside within 1 inHg of absolute(idle.boost)',
    'inside - koeo.map > 0 inHg',
    'over > 0 inHg',
    'vacuum(koeo.map) within 1 inHg of 0 inHg',
    'idle.map - koeo.map + pulled within 1 inHg of 0 inHg',
    'absolute(idle.boost) - inside > 0 inHg',
  ])('is circular: %s', (expression) => {
    expect(check(expression)).toContain('circular-check');
  });

  it.each([
    'idle.map + idle.vacuum within 0.5 inHg of koeo.map',
    'vacuum(idle.map) within 0.5 inHg of idle.vacuum',
    'absolute(idle.vacuum) < idle.map + 1 inHg',
    'absolute(idle.boost) / koeo.map < 2',
    'absolute(koeo.map) > 28 inHg',
  ])('is none: %s', (expression) => {
    expect(check(expression)).not.toContain('circular-check');
  });

  it('is not reported where each side has its own barometer', () => {
    const cells = `${boost('a', '28 inHg')}${boost('b', '27 inHg')}${lets('unused: 1')}expect:
  - absolute(a.boost) > absolute(b.boost)
  - absolute(a.boost) - absolute(b.boost) > 0 psi
`;
    expect(codesOf(resultOf(cells))).not.toContain('circular-check');
  });

  it('counts the site figures that a function takes from the header', () => {
    const cells = `${boost('a', '')}${lets('unused: 1')}expect:\n  - absolute(a.boost) within 1 inHg of station_pressure()\n`;
    expect(codesOf(resultOf(cells, site))).toContain('circular-check');
  });

  it('says which of the two it is', () => {
    const said = (expression: string) =>
      resultOf(
        `${keyOn('29 inHg')}${boost('a', '')}${lets('inside: absolute(a.boost)')}expect:\n  - ${expression}\n`,
      ).diagnostics.find((each) => each.code === 'circular-check')?.message;
    expect(said('inside > absolute(a.boost) - 1 psi')).toContain(
      'Both sides of this check are converted with `koeo.map`',
    );
    expect(said('inside - koeo.map > 0 inHg')).toContain(
      'sets `koeo.map` against a value that was converted with',
    );
  });
});

describe('a case studied again after its barometers changed', () => {
  const text = `diag: 1
case: Barometers come and go
site:
  altitude: 1000 ± 30 m
  sea level pressure: 29.92 ± 0.1 inHg
---
${boost('a', '28 inHg', '1 psi')}${boost('b', '27 ± 0.2 inHg', '2 psi')}${twoStates('  boost 0 1 psi\n  baro 26 25 inHg')}${keyOn('29 inHg')}check: Through names
as: far
let:
  a: a.boost + 1 psi
  far: a
  one: if a.baro > b.baro then a.boost else b.boost
---
${lets('x: absolute(far.far)', 'y: absolute(far.one)', 'z: absolute(s.boost)', 'w: vacuum(koeo.map)')}expect:
  - x > absolute(b.boost)
  - absolute(s.two.boost) - koeo.map > 0 inHg
`;
  /** What a hand writes in place of something else. */
  const changes: readonly (readonly [string, string])[] = [
    ['baro: 28 inHg', 'baro: 26.5 inHg'],
    ['baro: 26.5 inHg', 'baro: 28 ± 0.1 inHg'],
    ['  baro: 28 inHg\n', ''],
    ['  baro: 27 ± 0.2 inHg\n', ''],
    ['values:\n  boost: 1 psi\n', 'values:\n  boost: 1 psi\n  baro: 24 inHg\n'],
    ['baro 26 25', 'baro 26 -'],
    ['baro 26 -', 'baro - 25'],
    ['  baro 26 25 inHg\n', ''],
    ['state: key on engine off', 'state: warm idle'],
    ['state: warm idle\nvalues:\n  map', 'state: key on engine off\nvalues:\n  map'],
    ['---\nreadings: Two', '---\nnote: One more cell\n---\nreadings: Two'],
    ['  far: a\n', '  far: b.boost\n'],
    ['1000 ± 30 m', '900 ± 20 m'],
    ['two: 2500 rpm no load', 'two: cruise'],
  ];
  const print = (study: Study): string => JSON.stringify(caseResult(study, 'case.diag'));

  it('comes to what a fresh study comes to', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(changes.length - 1), { minLength: 1, maxLength: 8 }), (list) => {
        let now = text;
        let study = checkCase(now);
        for (const at of list) {
          const [from, to] = changes[at] ?? ['', ''];
          now = now.replace(from, to);
          study = checkCase(now, study);
          expect(print(study)).toBe(print(checkCase(now)));
        }
      }),
      { numRuns: 40 },
    );
  });

  it('computes anew only what a changed barometer converts', () => {
    const first = checkCase(text);
    expect(first.findings.filter(({ diagnostic }) => diagnostic.severity === 'error')).toEqual([]);
    expect(checkCase(text, first).memo.fresh).toBe(0);
    const moved = checkCase(
      text.replace('---\nreadings: Two', '---\nnote: One more\n---\nreadings: Two'),
      first,
    );
    expect(moved.memo.fresh).toBe(0);
    // The other barometer: `one` and what comes of it, `x` is compared with, nothing else.
    const second = checkCase(text.replace('27 ± 0.2', '27.5 ± 0.2'), first);
    expect(second.memo.fresh).toBe(3);
  });

  it('follows long chains of names and choices in a moment', () => {
    const chain = Array.from({ length: 300 }, (_, n) =>
      n === 0
        ? 'c0: a.boost'
        : `c${n}: if absolute(c${n - 1}) > 1 psi then max(c${n - 1}, c${n - 1}) else b.boost`,
    );
    const from = performance.now();
    const { values } = resultOf(
      `${boost('a', '28 inHg')}${boost('b', '27 inHg')}${lets(...chain, 'x: absolute(c299) - a.baro')}`,
    );
    expect(values['out.x']?.value).toBeCloseTo(0, 9);
    expect(performance.now() - from).toBeLessThan(3000);
  });
});

import { describe, expect, it } from 'vitest';
import { message } from '../../core/diagnostics/words.ts';
import { study } from '../../core/study/study.ts';

const asked = (expression: string): string =>
  `---\ncheck: Across the injectors\nlet:\n  across: ${expression}\n`;

const header = 'diag: 1\ncase: High up\n';
const keyOn = '---\nreadings: Key on\nas: koeo\nstate: key on engine off\nvalues:\n  map: 84.3 kPa\n';
const idle = '---\nreadings: Idle\nas: idle\nstate: warm idle\nvalues:\n  fuel_pressure: 300 kPa\n';

function across(text: string) {
  const studied = study(text);
  const computed =
    studied.computed.find(({ name }) => name === 'across') ?? expect.fail('nothing was computed');
  const said = studied.findings
    .filter(({ diagnostic }) => diagnostic.severity !== 'info')
    .map(({ diagnostic }) => `${diagnostic.code}: ${message(diagnostic)}`);
  return { value: computed.value, from: computed.from, said };
}

describe('a function that lacks the barometer', () => {
  it('takes the case’s own, and names it among its sources', () => {
    const { value, from, said } = across(
      header + keyOn + idle + asked('injector_pressure(idle.fuel_pressure, 35 kPa)'),
    );
    // 300 + 84.3 − 35, by hand.
    expect(value).toMatchObject({ kind: 'one', amount: { si: expect.closeTo(349_300, 6) } });
    expect(from).toEqual(['idle.fuel_pressure', 'koeo.map']);
    expect(said).toEqual([]);
  });

  it('takes the one of the cell that its readings stand in first', () => {
    const here = idle.replace('values:', 'values:\n  baro: 90 kPa');
    const { value, from } = across(
      header + keyOn + here + asked('injector_pressure(idle.fuel_pressure, 35 kPa)'),
    );
    expect(value).toMatchObject({ amount: { si: expect.closeTo(355_000, 6) } });
    expect(from).toEqual(['idle.fuel_pressure', 'idle.baro']);
  });

  it('takes of each state its own', () => {
    const table =
      '---\nreadings: On the way up\nas: climb\nstates:\n  low: warm idle\n  high: 2500 rpm no load\ntable: |\n  reading        low  high  unit\n  fuel_pressure  300  310   kPa\n  map            35   30    kPa\n  baro           100  80    kPa\n';
    const { value, said } = across(
      header + table + asked('injector_pressure(climb.fuel_pressure, climb.map)'),
    );
    expect(said).toEqual([]);
    if (value.kind !== 'members') return expect.fail(value.kind);
    // 300 + 100 − 35 and 310 + 80 − 30, by hand.
    expect([...value.members]).toEqual([
      ['low', expect.objectContaining({ si: expect.closeTo(365_000, 6) })],
      ['high', expect.objectContaining({ si: expect.closeTo(360_000, 6) })],
    ]);
  });

  it('takes the standard one where the case has none, and says so at its name', () => {
    const text = header + idle + asked('injector_pressure(idle.fuel_pressure, 35 kPa)');
    const { value, from, said } = across(text);
    expect(value).toMatchObject({ amount: { si: expect.closeTo(366_325, 6) } });
    expect(from).toEqual(['idle.fuel_pressure']);
    expect(said).toEqual([
      'standard-barometer: `injector_pressure` needs the barometer, and the case has none that is certain: 101.325 kPa was taken. Record one `baro`, a key-on engine-off `map`, or the site’s altitude with its sea level pressure, or write `baro = …`.',
    ]);
    const { file, findings } = study(text);
    const [finding] = findings.filter(({ diagnostic }) => diagnostic.code === 'standard-barometer');
    const { start, end } = finding?.diagnostic.span ?? { start: 0, end: 0 };
    expect(file.cells[finding?.cell ?? 0]?.raw.text.slice(start, end)).toBe('injector_pressure');
  });

  it('takes the standard one of the site’s altitude where that is all that is known', () => {
    const high = `${header}site:\n  altitude: 5000 ft\n`;
    const text = high + idle + asked('injector_pressure(idle.fuel_pressure, 35 kPa)');
    const { value, from, said } = across(text);
    // U.S. Standard Atmosphere 1976 at 1524 m geometric: 84.311 kPa; 300 + 84.311 − 35.
    expect(value).toMatchObject({ amount: { si: expect.closeTo(349_311, -1) } });
    expect(from).toEqual(['idle.fuel_pressure', 'site.altitude']);
    expect(said).toEqual([
      'standard-barometer: `injector_pressure` needs the barometer, and the case has none that is certain: 84.3111 kPa of the standard atmosphere at `site.altitude` was taken. Record one `baro`, a key-on engine-off `map`, or the site’s altitude with its sea level pressure, or write `baro = …`.',
    ]);
    // Another altitude makes another: what was computed before does not stay.
    const [before, after] = [text, text.replace('5000 ft', '100 ft')];
    const again = study(after, study(before)).computed.find(({ name }) => name === 'across');
    expect(again?.value).toEqual(across(after).value);
  });

  it('says it once, of however many states', () => {
    const table =
      '---\nreadings: Two\nas: two\nstates:\n  low: warm idle\n  high: 2500 rpm no load\ntable: |\n  reading        low  high  unit\n  fuel_pressure  300  310   kPa\n';
    expect(across(header + table + asked('injector_pressure(two.fuel_pressure, 35 kPa)')).said).toHaveLength(
      1,
    );
  });

  it('has no answer where its readings were taken under several', () => {
    const other = idle
      .replace('as: idle', 'as: down')
      .replace('readings: Idle', 'readings: Down')
      .replace('values:', 'values:\n  baro: 101 kPa');
    const here = idle.replace('values:', 'values:\n  baro: 90 kPa');
    const { value, said } = across(
      header + here + other + asked('injector_pressure(min(idle.fuel_pressure, down.fuel_pressure), 35 kPa)'),
    );
    expect(value).toMatchObject({
      kind: 'absent',
      why: 'what is converted was not all measured under one barometer',
    });
    expect(said.map((each) => each.replace(/:.*/, ''))).toEqual(['no-barometer']);
    expect(said[0]).toContain('`injector_pressure(…)` converts values');
  });

  it('is computed anew when the barometer changes, and no check of it is circular', () => {
    const text = `${header + keyOn + idle + asked('injector_pressure(idle.fuel_pressure, 35 kPa)')}expect:\n  - across within 5 kPa of injector_pressure(idle.fuel_pressure, koeo.map)\n`;
    const before = study(text);
    expect(before.findings.map(({ diagnostic }) => diagnostic.code)).not.toContain('circular-check');
    const changed = text.replace('84.3', '80.0');
    expect(study(changed, before).computed).toEqual(study(changed).computed);
    expect(study(changed, before).computed[0]?.value).toMatchObject({
      amount: { si: expect.closeTo(345_000, 6) },
    });
  });
});

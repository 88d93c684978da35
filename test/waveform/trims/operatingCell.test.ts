import { describe, expect, it } from 'vitest';
import { halfWidth } from '../../../core/quantity/amount.ts';
import { waveformFunctions } from '../../../core/waveform/waveformFunctions.ts';
import { printed, result } from '../../support/expressionResult.ts';
import { type Names, reading, samples, words } from '../../support/expressionScope.ts';
import {
  airTaken,
  type DriveLogSignal,
  drive,
  islandRound,
  neededAt,
  type TrimFault,
} from '../../support/signal/driveLog.ts';

function namesOf(log: DriveLogSignal, more: Names = {}): Names {
  const time = [...log.time];
  const channel = (like: string, values: Float64Array, by = 1) =>
    samples(
      'log',
      like,
      time,
      [...values].map((each) => each * by),
    );
  return {
    'log.rpm': channel('rpm', log.rpm),
    'log.map': channel('kPa absolute', log.map),
    'log.maf': channel('g/s', log.maf),
    'log.vss': channel('km/h', log.vss),
    'log.loop': samples('log', '', time, [...log.loop]),
    'log.trim': channel(
      '%',
      log.stft.map((each, i) => each + (log.ltft[i] ?? 0)),
      100,
    ),
    ...more,
  };
}

const header = { 'engine.displacement': reading('2.4 L'), 'engine.metering': words('air flow') };
const setting = (names: Names) => ({ names, header, functions: waveformFunctions() });

const cells = 'by_operating_cell(log.trim, log.rpm, log.map, speed = log.vss, loop = log.loop)';
const air = 'by_operating_cell(log.maf, log.rpm, log.map, speed = log.vss, loop = log.loop)';

/** The legs of the round by cell. */
const legs = { idle: 0, 'light load': 1, cruise: 3, 'heavy load': 5 } as const;

describe('a drive by operating cell', () => {
  const faults: readonly TrimFault[] = [
    {},
    { hole: 0.9 },
    { share: 0.14 },
    { share: -0.1 },
    { shortAt100: 0.35 },
  ];
  it.each(faults)('%j: every cell shows the trim that the fault needs there', (fault) => {
    for (let seed = 1; seed <= 4; seed++) {
      const { value, diagnostics } = result(cells, setting(namesOf(drive(islandRound, fault, 0.02, seed))));
      expect(diagnostics).toEqual([]);
      if (value.kind !== 'members') expect.fail(printed(value));
      for (const [name, leg] of Object.entries(legs)) {
        const mean = value.members.get(name);
        const at = islandRound[leg] ?? expect.fail();
        if (mean === undefined || !('si' in mean)) expect.fail(name);
        // Twice the standard error, and half a step of 1/128 for what rounding does to the mean.
        expect(Math.abs(mean.si - neededAt(at, fault).trim)).toBeLessThan(1.5 * halfWidth(mean) + 0.5 / 128);
        expect(halfWidth(mean)).toBeLessThan(0.02);
      }
    }
  });

  it('the half-widths cover the truth about as often as they say', () => {
    let inside = 0;
    let all = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const { value } = result(cells, setting(namesOf(drive(islandRound, {}, 0.02, seed))));
      if (value.kind !== 'members') expect.fail(printed(value));
      for (const mean of value.members.values()) {
        if (!('si' in mean)) continue;
        all++;
        if (Math.abs(mean.si) <= halfWidth(mean)) inside++;
      }
    }
    expect(all).toBe(160);
    expect(inside / all).toBeGreaterThan(0.9);
  });

  it('two channels scatter each for itself, and one channel with itself alike', () => {
    const log = drive(islandRound, {}, 0.02, 1);
    const other = drive(islandRound, {}, 0.02, 2);
    const names = namesOf(log, {
      'log.other': samples(
        'log',
        '%',
        [...log.time],
        [...log.time].map((_, i) => 100 * (other.stft[i] ?? 0)),
      ),
    });
    const width = (text: string): number => {
      const { value, diagnostics } = result(text, setting(names));
      expect(diagnostics).toEqual([]);
      if (value.kind !== 'one') expect.fail(printed(value));
      return halfWidth(value.amount);
    };
    const theirs = cells.replace('log.trim', 'log.other');
    const [a, b] = [width(`${cells}.idle`), width(`${theirs}.idle`)];
    expect(a).toBeGreaterThan(0);
    expect(b).toBeGreaterThan(0);
    // JCGM 100:2008, equation 10: independent contributions in quadrature.
    expect(width(`${cells}.idle - ${theirs}.idle`)).toBeCloseTo(Math.hypot(a, b), 12);
    expect(width(`${cells}.idle - ${cells}.idle`)).toBe(0);
  });

  it.each([
    [{ hole: 0.9 }, 'same grams'],
    [{ hole: 0.5 }, 'same grams'],
    [{ share: 0.14 }, 'same percent'],
    [{ share: -0.1 }, 'same percent'],
    [{ shortAt100: 0.35 }, 'rises with load'],
    [{}, 'near zero'],
  ] as const)('%j gives the pattern %s', (fault, word) => {
    for (let seed = 1; seed <= 3; seed++) {
      const names = namesOf(drive(islandRound, fault, 0.02, seed));
      const { value, diagnostics } = result(`trim_pattern(${cells}, ${air}).pattern`, setting(names));
      expect(diagnostics).toEqual([]);
      expect(printed(value)).toBe(word);
    }
  });

  it('an air flow says the load as well, with the displacement', () => {
    const names = namesOf(drive(islandRound, { share: 0.1 }, 0.01, 2));
    const text = 'by_operating_cell(log.trim, log.rpm, log.maf, speed = log.vss, loop = log.loop)';
    const { value } = result(text, setting(names));
    if (value.kind !== 'members') expect.fail(printed(value));
    for (const name of ['idle', 'light load', 'cruise'])
      expect(value.members.get(name)).toHaveProperty('si', expect.closeTo(0.1, 1));
    const without = result(text, { names, functions: waveformFunctions() });
    expect(printed(without.value)).toMatch(/only with the displacement/);
  });

  it('without a loop status, overrun is told by the pressure', () => {
    const names = namesOf(drive(islandRound, { hole: 0.9 }, 0.01, 2));
    const { value } = result(
      'by_operating_cell(log.trim, log.rpm, log.map, speed = log.vss)',
      setting(names),
    );
    if (value.kind !== 'members') expect.fail(printed(value));
    const light = value.members.get('light load');
    const at = islandRound[legs['light load']] ?? expect.fail();
    expect(light).toHaveProperty('si', expect.closeTo(neededAt(at, { hole: 0.9 }).trim, 2));
  });

  it('the air of the generator is the engine’s: filling · density · displacement · speed / 2', () => {
    // 2.4 L at 750 rpm and 33 kPa, filled to 80 %: 0.8·1.149·0.33·2.4·750/120 = 4.55 g/s.
    expect(airTaken({ rpm: 750, pressure: 0.33 })).toBeCloseTo(4.55, 2);
  });
});

describe('what does not go', () => {
  const names = namesOf(drive(islandRound, {}, 0.02, 1), {
    'other.rpm': samples('other', 'rpm', [0, 1], [800, 800]),
    'log.gauge': samples('log', 'kPa gauge', [0, 1], [-60, -60]),
    'open.x': samples('open', '%', [0, 1, 2, 3, 4, 5], [1, 1, 1, 1, 1, 1]),
    'open.rpm': samples('open', 'rpm', [0, 1, 2, 3, 4, 5], [800, 800, 800, 800, 800, 800]),
    'open.load': samples('open', '%', [0, 1, 2, 3, 4, 5], [20, 20, 20, 20, 20, 20]),
    'open.loop': samples('open', '', [0, 1, 2, 3, 4, 5], [1, 1, 1, 1, 1, 1]),
    'once.trim': reading('8 %'),
    'once.maf': reading('4 g/s'),
  });
  const of = (text: string) => result(text, setting(names));

  it.each([
    ['by_operating_cell(log.trim, other.rpm, log.map)', 'wrong-argument'],
    ['by_operating_cell(log.trim, log.rpm, log.gauge)', 'wrong-argument'],
    ['by_operating_cell(log.trim, log.rpm, log.vss)', 'wrong-argument'],
    ['by_operating_cell(log.trim, log.map, log.map)', 'wrong-argument'],
    ['trim_pattern(log.map, log.maf)', 'wrong-argument'],
  ])('%s: %s', (text, code) => {
    expect(of(text).diagnostics.map((each) => each.code)).toEqual([code]);
  });

  it.each([
    ['by_operating_cell(open.x, open.rpm, open.load, loop = open.loop)', /no sample counts/],
    ['by_operating_cell(log.trim, log.rpm, log.map, light = 80 %)', /light load must end below heavy load/],
    ['trim_pattern(once.trim, once.maf).pattern', /load by load/],
  ])('%s: %s', (text, why) => {
    const { value, diagnostics } = of(text);
    expect(diagnostics).toEqual([]);
    expect(printed(value)).toMatch(why);
  });
});

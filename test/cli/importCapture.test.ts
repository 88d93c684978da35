import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { casebookForTests } from './casebook.ts';

const casebook = casebookForTests();
const log = [
  'Time (s);Engine speed (1/min);MAP (kPa);O2 B1S1 [V];Short term fuel trim bank 1 (%);Coolant temperature [°C];Injector duty;Gear',
  '0,0;780;33;0,12;1,5;88;2;P',
  '0,5;790;34;0,81;2,5;88;3;P',
  '1,0;800;35;0,30;2;89;4;P',
  '',
].join('\n');

beforeAll(() => {
  mkdirSync(join(casebook.folder, 'captures'));
  writeFileSync(join(casebook.folder, 'captures', 'warm-idle.csv'), log);
  writeFileSync(join(casebook.folder, 'captures', 'unclear.csv'), '1,5\n2,5\n3,6\n');
});

describe('casebook import', () => {
  it('writes a capture, its channels named by the vocabulary, and readings from it', () => {
    const { status, out, err } = casebook.run('import', 'captures/warm-idle.csv');
    expect(status).toBe(0);
    expect(err).toBe(
      'Read so: columns parted by semicolons, decimal comma, one heading row; time from `Time (s)`, in s.\n',
    );
    expect(out).toBe(`---
capture: Warm idle
as: warm_idle
# The engine state it was recorded in, where it was one: \`state: warm idle\`.
file: captures/warm-idle.csv
format: {delimiter: semicolon, decimal: comma, heading rows: 1}
time: Time (s)
channels:
  rpm: Engine speed (1/min)
  map: MAP (kPa)
  o2_b1s1: "O2 B1S1 [V]"
  stft_b1: Short term fuel trim bank 1 (%)
  ect: "Coolant temperature [°C]"
  injector_duty: Injector duty
  # left out, since it holds no numbers: Gear
---
readings: Means of Warm idle
as: warm_idle_means
# These figures stand for one engine state: keep those that do, and say which: \`state: warm idle\`.
values:
  rpm: 790 rpm
  map: 34 kPa
  o2_b1s1: 0.41 V
  stft_b1: 2 %
  ect: 88.33 °C
`);
  });

  it('asks for the unit where the heading has none, or one that is written for another', () => {
    writeFileSync(
      join(casebook.folder, 'captures', 'short.csv'),
      'Time (s),RPM,ECT (F),STFT1 (%),LTFT1,MAF air flow rate (g/s)\n0,780,191,1.5,4,3.1\n1,790,192,2.5,4,3.2\n',
    );
    const { out } = casebook.run('import', 'captures/short.csv');
    expect(out).toContain(`channels:
  rpm: RPM
  ect: ECT (F)   # say its unit, such as {column: "ECT (F)", unit: °F}
  stft_b1: STFT1 (%)
  ltft_b1: LTFT1   # say its unit, such as {column: "LTFT1", unit: %}
  maf: MAF air flow rate (g/s)
`);
  });

  it('takes a case for no recording', () => {
    expect(casebook.run('import', 'van14.diag')).toEqual({
      status: 2,
      out: '',
      err: 'casebook: `van14.diag` is a case. The recorder’s file stands first: `casebook import captures/log.csv van14.diag`.\n',
    });
  });

  it('puts them at the end of a case, which is then in order', () => {
    const path = join(casebook.folder, 'van14.diag');
    const before = 'diag: 1\r\ncase: Idle\r\n---\r\nnote: As found.';
    writeFileSync(path, before);
    const { status, err } = casebook.run('import', 'captures/warm-idle.csv', 'van14.diag', '--at', '0.6');
    expect(status).toBe(0);
    expect(err).toContain('Put a capture of 6 channels at the end of van14.diag.');
    const after = readFileSync(path, 'utf8');
    expect(after.startsWith(`${before}\r\n---\r\ncapture: Warm idle\r\n`)).toBe(true);
    expect(after).toContain('readings: Warm idle at 0.5 s\r\n');
    expect(after).toContain('  rpm: 790 rpm\r\n  map: 34 kPa\r\n  o2_b1s1: 0.81 V\r\n');
    expect(after.replaceAll('\r\n', '')).not.toContain('\n');
    const checked = casebook.run('check', 'van14.diag', '--format', 'json');
    const { cases } = JSON.parse(checked.out) as {
      cases: { values: Record<string, unknown>; diagnostics: { code: string; severity: string }[] }[];
    };
    expect(cases[0]?.values['warm_idle.rpm']).toEqual({
      series: { samples: 3, from: 0, to: 1, min: 780, max: 800, mean: 790 },
      unit: 'rpm',
    });
    expect(cases[0]?.diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
    const again = casebook.run('import', 'captures/warm-idle.csv', 'van14.diag');
    expect(again.status).toBe(0);
    expect(readFileSync(path, 'utf8')).toContain('as: warm_idle_2\r\n');
  });

  it('asks where a file can be read in two ways', () => {
    const { status, err } = casebook.run('import', 'captures/unclear.csv');
    expect(status).toBe(2);
    expect(err).toBe(
      'casebook: `captures/unclear.csv` cannot be read: its line `1,5` can be read in 2 ways: (1) one column, decimal comma: `1.5`; (2) 2 columns, parted by commas, decimal point: `1`, `5`. Say which with `--delimiter` and `--decimal`.\n',
    );
    const said = casebook.run('import', 'captures/unclear.csv', '--delimiter', 'comma', '--decimal', 'point');
    expect(said.status).toBe(0);
    expect(said.out).toContain('time:   # the heading of the column that holds the time\n');
  });

  it.each([
    [['import'], 'One file, and perhaps the case'],
    [['import', 'gone.csv'], '`gone.csv` cannot be read: it is not there.'],
    [['import', '../log.csv'], 'is outside the case’s folder'],
    [['import', 'captures/warm-idle.csv', 'gone.diag'], '`gone.diag` is not there.'],
    [
      ['import', 'captures/warm-idle.csv', '--decimal', 'dot'],
      '`--decimal` is one of point, comma, not `dot`.',
    ],
    [['import', 'captures/warm-idle.csv', '--at', 'noon'], '`--at` takes a moment in seconds, not `noon`.'],
  ])('%j: says what is wrong', (args, words) => {
    const { status, err } = casebook.run(...args);
    expect(status).toBe(2);
    expect(err).toContain(words);
  });

  it('has its page of help', () => {
    expect(casebook.run('import', '--help').out).toContain('casebook import FILE [CASE]\n');
  });
});

import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { caseResult, type Results } from '../../core/study/results.ts';
import { noCases, withCase } from '../../core/study/summary.ts';
import { casebookForTests } from './casebook.ts';

const root = join(import.meta.dirname, '..', '..');
const samples = join(root, 'samples');
const { folder, run } = casebookForTests();

const schema = JSON.parse(
  readFileSync(join(root, 'extension', 'cli', 'results.schema.json'), 'utf8'),
) as object;
const conforms = new Ajv({
  strict: true,
  strictRequired: false,
  allowUnionTypes: true,
  allErrors: true,
}).compile(schema);

function write(name: string, text: string): string {
  writeFileSync(join(folder, name), text);
  return name;
}

const head = 'diag: 1\ncase: Idle\n';
const idle = `${head}---\nreadings: Idle\nas: before\nstate: warm idle\nvalues:\n  ltft_b1: +17 %\n`;
const failing = `${idle}---\ncheck: Trim\nexpect:\n  - before.ltft_b1 between -10 % and 10 %\n`;
const announced = failing.replace('check: Trim\n', 'check: Trim\nshows: fault\n');
const unproven = `${idle}---\nrepair: New gasket\ndone: Gasket replaced.\nverify:\n  - before.ltft_b1 between -10 % and 10 %\n`;
const unmeasured = unproven.replace('before.ltft_b1 between', 'before.stft_b1 between');
const wrong = `${idle}---\nreadings: Gauge\nvalues:\n  map: 101 inHg\n`;

describe('how a check ends', () => {
  it.each([
    ['a case in order', idle, 0, 0],
    ['an expectation that fails', failing, 0, 1],
    ['one that is meant to fail', announced, 0, 0],
    ['a repair that is not proven', unproven, 1, 1],
    ['a repair whose proof was not measured', unmeasured, 1, 1],
    ['an error in the file', wrong, 1, 1],
  ])('with %s', (_, text, plainly, strictly) => {
    const name = write('x.diag', text);
    expect(run('check', name).status).toBe(plainly);
    expect(run('check', name, '--strict').status).toBe(strictly);
    expect(run('check', name, '--format', 'json').status).toBe(plainly);
  });
});

describe('a check in words', () => {
  it('says what was found, with the line, and counts', () => {
    const { out } = run(
      'check',
      write('x.diag', wrong.replace('map: 101 inHg', 'map: 101 inHg   # off the gauge')),
    );
    expect(out).toBe(
      [
        'Idle',
        'x.diag',
        '',
        '  ✗ Error. `map` cannot be 101 inHg (possible: 0 .. 100.4 inHg). The same number fits in another unit: 101 kPa?',
        '   12 |   map: 101 inHg   # off the gauge',
        '      |        ^^^^^^^^',
        '    Offered: Write `kPa`.',
        '    line 12, column 8, unit-slip',
        '',
        '  1 note',
        '    line 8  `ltft_b1` at warm idle is usually -10 .. 10 % (common practice); here 17 %. (unusual-value)',
        '',
        '  1 error in the file.',
        '',
        '',
        '1 case: 0 hold, 0 fail, 0 too close to call, 0 not measured, 0 cannot compute; 1 error, 0 warnings, 1 note.',
        '',
      ].join('\n'),
    );
  });

  it('says verdicts as sentences', () => {
    const { out } = run('check', write('x.diag', announced));
    expect(out).toContain(
      [
        '  Trim',
        '    ✗ before.ltft_b1 between -10 % and 10 %',
        '      17 %, 7 % outside -10 .. 10 %: fails, and shows the fault as the author means it to.',
      ].join('\n'),
    );
  });

  it('gives each field of an answer a line of its own', () => {
    const text = `${head}---\ncapture: Sensor\nas: o2\nrows: |\n  time  front\n  0 0.1\n  1 0.8\n  2 0.1\n  3 0.8\n  4 0.1\nchannels:\n  front: {column: front, unit: V}\n---\ncheck: How does it switch?\nlet:\n  sensor: oxygen_sensor(o2.front)\n`;
    const { out } = run('check', write('fields.diag', text));
    expect(out).toMatch(/^ {4}sensor\n {6}verdict {7}\S/m);
    expect(out).toMatch(/^ {6}maximum {7}0\.8 V$/m);
  });

  it('counts lines of every kind', () => {
    const text = wrong.replace('map: 101 inHg', '\tmap: 漢 inHg');
    const lf = run('check', write('x.diag', text)).out;
    expect(lf).toContain('line 12');
    expect(run('check', write('x.diag', text.replaceAll('\n', '\r\n'))).out).toBe(lf);
  });

  it('uses no colour where nobody sees it', () => {
    expect(run('check', write('x.diag', wrong)).out).not.toContain('\u001b');
  });
});

describe('a value of several members', () => {
  it('is printed with its unit and each member’s ±', () => {
    const text = `${head}---
readings: Cylinders
as: r
state: cranking
values:
  compression: {1: 181 ± 3 psi, 2: 178 ± 3 psi}
  drops: {post: 0.1 V, strap: not taken}
---
check: Work
let:
  all: r.compression
  volts: r.drops
`;
    const { out } = run('check', write('members.diag', text));
    expect(out).toContain('all    1: 181 ± 3, 2: 178 ± 3 psi gauge\n');
    expect(out).toContain('volts  post: 0.1 V, strap: not measured\n');
  });
});

describe('a reason that ends in a full stop', () => {
  it('has one full stop behind its brackets', () => {
    const text = `${head}---
check: Work
let:
  below: -1
expect:
  - sqrt(below) > 2
---
suspects: What it may be
consider:
  - name: a slip in a sum
    predicts:
      - sqrt(-2) > 3
`;
    const { out } = run('check', write('reason.diag', text));
    expect(out).toContain('      cannot compute (`sqrt`: A value below 0 has no square root).\n');
    expect(out).toContain('sqrt(-2) > 3, cannot compute (`sqrt`: A value below 0 has no square root).\n');
    expect(out).not.toContain('.)');
  });
});

describe('a check for programs', () => {
  const files = readdirSync(samples).filter((name) => name.endsWith('.diag'));

  it('of the samples keeps to the published schema', () => {
    const { out } = run('check', samples, '--format', 'json');
    const results = JSON.parse(out) as Results;
    expect(results.cases).toHaveLength(files.length);
    conforms(results);
    expect(conforms.errors ?? []).toEqual([]);
  });

  it('of bad files keeps to it as well', () => {
    mkdirSync(join(folder, 'bad'));
    write('bad/empty.diag', '');
    write('bad/latin.diag', '');
    writeFileSync(join(folder, 'bad/latin.diag'), Uint8Array.of(0xb0));
    write('bad/list.diag', '- a\n- b\n');
    write('bad/names.diag', `${head}---\nreadings: A\nas: __proto__\nvalues:\n  map: 10 inHg\n`);
    const { status, out } = run('check', 'bad', '--format', 'json');
    expect(status).toBe(1);
    conforms(JSON.parse(out));
    expect(conforms.errors ?? []).toEqual([]);
  });

  it('gives what the core gives, with paths from where one stands', () => {
    mkdirSync(join(folder, 'vans'));
    write('vans/14.diag', failing);
    const { out } = run('check', 'vans', '--format', 'json');
    const study = checkCase(failing);
    const result = caseResult(study, 'vans/14.diag');
    expect(JSON.parse(out)).toEqual(
      JSON.parse(JSON.stringify({ version: 1, cases: [result], summary: withCase(noCases, study) })),
    );
  });

  it('has the promised shape', () => {
    const { out } = run('check', write('x.diag', failing), '--format', 'json');
    const { cases, summary } = JSON.parse(out);
    expect(cases[0].values).toEqual({ 'before.ltft_b1': { value: 17, unit: '%', uncertainty: 0 } });
    expect(cases[0].expectations).toEqual([
      {
        cell: 3,
        part: 'expect',
        title: 'Trim',
        text: 'before.ltft_b1 between -10 % and 10 %',
        verdict: 'fails',
        value: 17,
        unit: '%',
        uncertainty: 0,
        limit: '-10 .. 10 %',
        distance: -7,
        from: ['before.ltft_b1'],
        line: 12,
        column: 5,
      },
    ]);
    expect(cases[0].diagnostics).toEqual([
      {
        code: 'unusual-value',
        severity: 'info',
        message: '`ltft_b1` at warm idle is usually -10 .. 10 % (common practice); here 17 %.',
        line: 8,
        column: 12,
        endLine: 8,
        endColumn: 17,
      },
    ]);
    expect(summary).toEqual({
      cases: 1,
      holds: 0,
      fails: 1,
      'too close to call': 0,
      'not measured': 0,
      'cannot compute': 0,
      errors: 0,
      warnings: 0,
      infos: 1,
    });
  });

  it('says why a value, or one member of it, has no number; a label may have any name', () => {
    const text = `${head}---
readings: Drops
as: r
values:
  drops: {__proto__: 0.35 V, ground: not taken}
---
check: Work
let:
  ratio: stoichiometric_ratio("petrool")
`;
    const { out } = run('check', write('why.diag', text), '--format', 'json');
    const results = JSON.parse(out);
    conforms(results);
    expect(conforms.errors ?? []).toEqual([]);
    const { 'r.drops': drops, ratio } = results.cases[0].values;
    expect(Object.entries(drops.value)).toEqual([
      ['__proto__', 0.35],
      ['ground', null],
    ]);
    expect(drops.missing).toEqual({ ground: { status: 'not measured', why: 'not taken' } });
    expect(ratio).toEqual({
      value: null,
      status: 'cannot compute',
      why: expect.stringContaining('Did you mean petrol'),
    });
  });

  it('is refused by the schema where it is broken', () => {
    const good = JSON.parse(run('check', write('x.diag', failing), '--format', 'json').out);
    expect(conforms(good)).toBe(true);
    for (const spoil of [
      (results: Results) => ({ ...results, version: 2 }),
      (results: Results) => ({ ...results, cases: [{}] }),
      ({ cases, ...rest }: Results) => ({
        ...rest,
        cases: cases.map((each) => ({
          ...each,
          expectations: each.expectations.map((one) => ({ ...one, verdict: 'maybe' })),
        })),
      }),
      ({ cases, ...rest }: Results) => ({
        ...rest,
        cases: cases.map((each) => ({ ...each, values: { x: { value: true } } })),
      }),
    ]) {
      expect(conforms(spoil(good))).toBe(false);
    }
  });
});

describe('a check against a record', () => {
  it('is in order when everything is as it was, errors too', () => {
    mkdirSync(join(folder, 'kept'));
    write('kept/a.diag', wrong);
    write('kept/b.diag', failing);
    const recorded = run('check', 'kept', '--record', 'kept/recorded.json');
    expect(recorded.status).toBe(1);
    expect(recorded.err).toBe('Recorded 2 cases in kept/recorded.json.\n');
    const again = run('check', 'kept', '--recorded', 'kept/recorded.json');
    expect(again.status).toBe(0);
    expect(again.err).toBe('All is as recorded in kept/recorded.json: the 1 error and 2 notes are meant.\n');
    expect(JSON.parse(readFileSync(join(folder, 'kept/recorded.json'), 'utf8'))).toEqual({
      'a.diag': ['8:12 info unusual-value', '12:8 error unit-slip'],
      'b.diag': ['cell 3, expect "before.ltft_b1 between -10 % and 10 %": fails', '8:12 info unusual-value'],
    });
  });

  it('tells what changed', () => {
    write('kept/b.diag', failing.replace('17 %', '7 %'));
    expect(run('check', 'kept', '--recorded', 'kept/recorded.json')).toMatchObject({
      status: 1,
      err: [
        'b.diag no longer gives: cell 3, expect "before.ltft_b1 between -10 % and 10 %": fails',
        'b.diag no longer gives: 8:12 info unusual-value',
        'b.diag now gives: cell 3, expect "before.ltft_b1 between -10 % and 10 %": holds',
        'Not as recorded in kept/recorded.json.',
        '',
      ].join('\n'),
    });
  });

  it('needs a record that is one', () => {
    write('odd.json', '[]');
    expect(run('check', 'kept', '--recorded', 'odd.json')).toMatchObject({
      status: 2,
      err: 'casebook: `odd.json` is no record; `--record odd.json` writes one.\n',
    });
    expect(run('check', 'kept', '--recorded', 'gone.json')).toMatchObject({
      status: 2,
      err: 'casebook: `gone.json` cannot be read: it is not there.\n',
    });
  });
});

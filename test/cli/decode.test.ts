import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { caseResult } from '../../core/study/results.ts';
import { casebookForTests } from './casebook.ts';

const { folder, run } = casebookForTests();

const answers = `>010C
SEARCHING...
7E8 04 41 0C 0B B8 00 00 00
7E9 03 41 05 3C 00 00 00 00
7E8 03 41 05 7B 00 00 00 00
>03
7E8 06 43 02 01 71 11 30 00
>020C
7E8 05 42 0C 00 1A F8 00 00
>
`;

const put = (name: string, text: string): string => {
  writeFileSync(join(folder, name), text);
  return name;
};

describe('casebook decode', () => {
  it('sets a table of any length', () => {
    const hex = (byte: number) => byte.toString(16).toUpperCase().padStart(2, '0');
    const tests = Array.from({ length: 60_000 }, (_, i) => i)
      .filter((i) => (i >> 8) % 32 !== 0)
      .map((i) => `46 ${hex(i >> 8)} ${hex(i & 255)} 10 00 64 00 00 FF FF`);
    const { status, err, out } = run('decode', put('tests.txt', tests.join('\n')));
    expect([status, err]).toEqual([0, '']);
    expect(out).toContain(`${tests.length} answers`);
  });

  it('prints what recorded answers say, a controller after the other', () => {
    expect(run('decode', put('answers.txt', answers))).toEqual({
      status: 0,
      err: '',
      out: `Answers of 7E8
  rpm                750.00 ± 0.13   rpm  0B B8
  ect                83.0 ± 0.5      °C   7B
  freeze frame: rpm  1726.00 ± 0.13  rpm  1A F8

Answers of 7E9
  ect  20.0 ± 0.5  °C  3C

Trouble codes
  P0171  stored, 7E8  engine and transmission (powertrain); fuel and air metering
  P1130  stored, 7E8  engine and transmission (powertrain); defined by the maker

  1 note
    line 2  One line holds no data and is passed over: \`SEARCHING...\`. (obd-noise)

5 answers, 3 requests, 1 line without data.
`,
    });
  });

  it('reads what is piped in, with - and without', () => {
    const direct = run('decode', put('answers.txt', answers)).out;
    for (const words of [['decode'], ['decode', '-']]) expect(piped(words, answers).stdout).toBe(direct);
  });

  it('keeps the line that says how long a numbered message is: the cell is read again', () => {
    const numbered =
      '>0902\n014\n0: 49 02 01 31 41 30\n1: 42 43 31 32 33 34 35\n2: 36 37 38 39 30 31 32\n\n>';
    const { out } = run('decode', put('numbered.txt', numbered), '--cell');
    expect(out).toContain('obd: |\n  014\n  0: 49 02 01 31 41 30   # Vehicle identification number ');
    const { findings } = checkCase(`diag: 1\ncase: A case\n${out}`);
    expect(findings.map(({ diagnostic }) => diagnostic.code)).toEqual(['vin-form']);
  });

  it('makes cells to paste that a check reads alike', () => {
    const { status, out } = run('decode', put('answers.txt', answers), '--cell');
    expect(status).toBe(0);
    expect(out).toBe(`---
readings: Read over the diagnostic link
obd: |
  7E8 04 41 0C 0B B8 00 00 00   # rpm 750.00 ± 0.13 rpm
  7E9 03 41 05 3C 00 00 00 00   # ect 20.0 ± 0.5 °C
  7E8 03 41 05 7B 00 00 00 00   # ect 83.0 ± 0.5 °C
  7E8 06 43 02 01 71 11 30 00   # P0171 stored, P1130 stored
---
readings: When the code was stored
when: freeze frame
obd: |
  7E8 05 42 0C 00 1A F8 00 00   # rpm 1726.00 ± 0.13 rpm
`);
    const named = out.replace('readings: Read', 'readings: Read').replace('obd: |', 'as: now\nobd: |');
    const { values, diagnostics } = caseResult(checkCase(`diag: 1\ncase: Pasted\n${named}`), 'pasted.diag');
    expect(values['now.rpm']).toMatchObject({ value: 750, unit: 'rpm' });
    expect(values['now.ect']).toMatchObject({ value: 83 });
    expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  it('names each freeze frame, and gives it a cell of its own', () => {
    const file = put('frames.txt', '42 05 00 7B\n42 05 01 50\n');
    expect(run('decode', file).out).toContain(
      '  freeze frame: ect    83.0 ± 0.5  °C  7B\n  freeze frame 1: ect  40.0 ± 0.5  °C  50\n',
    );
    expect(run('decode', file, '--cell').out).toBe(`---
readings: When the code was stored
when: freeze frame
obd: |
  42 05 00 7B   # ect 83.0 ± 0.5 °C
---
readings: When the code was stored, frame 1
when: freeze frame
obd: |
  42 05 01 50   # ect 40.0 ± 0.5 °C
`);
  });

  it('appends to a case that can be checked', () => {
    const cell = run('decode', put('answers.txt', '41 0C 0B B8\n'), '--cell').out;
    put('van.diag', `diag: 1\ncase: A case\n${cell}`);
    expect(run('check', 'van.diag')).toMatchObject({ status: 0, err: '' });
    expect(readFileSync(join(folder, 'van.diag'), 'utf8')).toContain('# rpm 750.00 ± 0.13 rpm');
  });

  it('shows the place of a line that cannot be read, and ends with 1', () => {
    const { status, out } = run('decode', put('cut.txt', '41 05 7B\n41 0C 1A F\n'));
    expect(status).toBe(1);
    expect(
      out,
    ).toContain(`  ✗ Error. \`F\` has 1 digit, and a byte is two. A digit is missing or one too many; copy the line again.
    2 | 41 0C 1A F
      |          ^
    line 2, column 10, obd-odd-length
`);
    expect(out).toContain('ect  83.0 ± 0.5  °C  7B');
  });

  it('says which codes were asked for and not there, and keeps what is not known by its bytes', () => {
    const { status, out } = run('decode', put('odd.txt', '43 00\n4A 00\n47 01 01 71\n41 9D 01 02\n44\n'));
    expect(status).toBe(0);
    expect(out).toContain(`Answers
  service 01, 9D              not known here    9D 01 02
  codes and what was learned  cleared           44

Trouble codes
  P0171  pending  engine and transmission (powertrain); fuel and air metering
  none stored
  none permanent
`);
  });

  it('ends with 1 when nothing was answered', () => {
    expect(run('decode', put('empty.txt', '')).status).toBe(1);
    expect(run('decode', put('asked.txt', '01 0C\n')).out).toContain('one request in here and no answer');
    expect(run('decode', put('asked.txt', '01 0C\n'), '--cell').out).toBe('');
  });

  it('says how often a value was given, and shows the last', () => {
    const { out } = run('decode', put('often.txt', '41 0C 0B B8\n41 0C 0C 1C\n'));
    expect(out).toContain('  rpm  775.00 ± 0.13  rpm  0C 1C  (the last of 2)\n');
  });

  it.each([
    [['decode', 'gone.txt'], '`gone.txt` cannot be read: it is not there.'],
    [['decode', 'van.diag'], '`van.diag` is a case, whose `obd` is decoded by `casebook check van.diag`.'],
    [
      ['decode', 'a.txt', 'b.txt'],
      'One recording at a time: `casebook decode answers.txt`, or - for what is typed or piped.',
    ],
    [['decode', '--cel', 'a.txt'], 'There is no option `--cel`. Did you mean `--cell`?'],
  ])('says what to write instead of %j', (words, message) => {
    expect(run(...words)).toEqual({ status: 2, out: '', err: `casebook: ${message}\n` });
  });

  it('reads no more of a file than it decodes, however large it is', () => {
    const huge = join(folder, 'huge.txt');
    writeFileSync(huge, '41 0C 1A F8\n');
    truncateSync(huge, 3 * 1024 ** 3);
    const { status, out, err } = run('decode', 'huge.txt');
    rmSync(huge);
    expect([status, err]).toEqual([1, '']);
    expect(out).toContain('The recording is longer than the 16777216 characters that are read.');
  });

  it('reads a file as some shells write it, in UTF-16', () => {
    writeFileSync(join(folder, 'wide.txt'), Buffer.from('\uFEFF41 05 7B\r\n', 'utf16le'));
    expect(run('decode', 'wide.txt').out).toContain('ect  83.0 ± 0.5  °C  7B');
  });

  it('prints nothing that commands a terminal', () => {
    const { out } = run('decode', put('escape.txt', '\u001b[31mWORDS\n41 05 7B # \u001b[31m\n'));
    expect(out).not.toContain('\u001b');
    expect(run('decode', 'escape.txt', '--cell').out).not.toContain('\u001b');
  });
});

describe('casebook explain', () => {
  it('explains a trouble code by its structure', () => {
    expect(run('explain', 'P0171').out).toBe(`P0171, a trouble code: engine and transmission (powertrain)

  Defined by  the standard
  Area        fuel and air metering
  Says        Where to start to look, and no part to replace. The maker’s information says what sets it.
  Source      structure of SAE J2012 / ISO 15031-6; areas from memory
`);
    expect(run('explain', 'p1130').out).toContain('the maker: it means another thing on another make');
  });
});

function piped(words: readonly string[], input: string) {
  const program = join(import.meta.dirname, '..', '..', 'extension', 'cli', 'main.ts');
  return spawnSync(process.execPath, [program, ...words], { cwd: folder, input, encoding: 'utf8' });
}

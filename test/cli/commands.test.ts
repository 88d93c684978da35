import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { allCodes } from '../../core/diagnostics/pages.ts';
import { allUnits } from '../../core/quantity/unit.ts';
import { pagesOf } from '../../core/report/pages.ts';
import { allSignals } from '../../core/signals/lookup.ts';
import { engineStates } from '../../core/signals/states.ts';
import { functionNames } from '../../core/study/functions.ts';
import { casebookForTests } from './casebook.ts';

const root = join(import.meta.dirname, '..', '..');
const { folder, run } = casebookForTests();

describe('casebook', () => {
  it('tells what it can do', () => {
    const { status, out } = run('--help');
    expect(status).toBe(0);
    for (const command of ['check', 'report', 'new', 'decode', 'explain'])
      expect(out).toContain(`casebook ${command} `);
  });

  it('tells the same, and that nothing was done, when nothing is asked', () => {
    expect(run()).toEqual({ status: 2, out: run('--help').out, err: '' });
  });

  it.each(['check', 'report', 'new', 'decode', 'explain'])('tells more about %s', (command) => {
    const { status, out, err } = run(command, '--help');
    expect([status, err]).toEqual([0, '']);
    expect(out.startsWith(`casebook ${command} `)).toBe(true);
    expect(run('help', command).out).toBe(out);
  });

  it('names every option of a check in its help', () => {
    const source = readFileSync(join(root, 'extension', 'cli', 'check.ts'), 'utf8');
    const options = [...source.matchAll(/^ {4}(\w+): \{ type: '(?:string|boolean)'/gm)].map(
      (match) => match[1],
    );
    expect(options.length).toBeGreaterThan(3);
    for (const option of options) expect(run('check', '--help').out).toContain(`--${option} `);
  });

  it('finds cases by quoted patterns, for shells that leave them alone', () => {
    mkdirSync(join(folder, 'by-pattern', 'old'), { recursive: true });
    for (const name of ['14.diag', 'old/3.diag'])
      writeFileSync(join(folder, 'by-pattern', name), 'diag: 1\ncase: Found\n');
    expect(run('check', 'by-pattern/*.diag')).toMatchObject({ status: 0, err: '' });
    expect(run('check', 'by-pattern/*.diag').out).toContain('by-pattern/14.diag');
    expect(run('check', 'by-pattern/*.diag').out).not.toContain('3.diag');
    expect(run('check', 'by-pattern/**/*.diag').out).toContain('by-pattern/old/3.diag');
    const page = run('report', 'by-pattern/{14,15}.diag', '-o', '-');
    expect([page.status, page.err]).toEqual([0, '']);
    expect(page.out).toContain('Found');
  });

  it('tells its version', () => {
    const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
    expect(run('--version')).toEqual({ status: 0, out: `${version}\n`, err: '' });
  });

  it.each([
    [['chekc'], 'There is no command `chekc`. Did you mean `casebook check`?'],
    [
      ['frobnicate'],
      'There is no command `frobnicate`. The commands are: check, report, new, import, decode, explain. `casebook --help` tells more.',
    ],
    [['check'], 'Which cases? Name files, folders or patterns: `casebook check cases`.'],
    [['check', '--format', 'xml', 'x'], '`--format` is `text` or `json`, not `xml`.'],
    [['report', 'x'], 'Where to? Name the file to write: `casebook report cases -o cases.html`.'],
    [
      ['new', 'van14.diag'],
      'Which template for `van14.diag`? Such as: `casebook new empty-case van14.diag`.',
    ],
    [['explain'], 'Explain what? Such as: `casebook explain unit-slip`.'],
    [['new', 'empty-case', ''], 'The file to write has no name.'],
    [['explain', ' '], 'Explain what? Such as: `casebook explain unit-slip`.'],
    [
      ['explain', 'unit-slop'],
      '`unit-slop` is no finding, function, signal, unit, state, kind of cell, key or word of expressions. Near it: unit-slip.',
    ],
    [
      ['explain', 'pulley'],
      '`pulley` is no finding, function, signal, unit, state, kind of cell, key or word of expressions.\nThese speak of it:\n  ripple_frequency: The frequency of a sound alternator’s ripple; a failed diode shows at a sixth of it.',
    ],
  ])('says what to write instead of %j', (words, message) => {
    expect(run(...words)).toEqual({ status: 2, out: '', err: `casebook: ${message}\n` });
  });
});

describe('casebook new', () => {
  const templates = readdirSync(join(root, 'extension', 'cli', 'templates'));

  it('lists every template', () => {
    const { out } = run('new');
    for (const file of templates) expect(out).toContain(file.replace('.diag', ''));
  });

  it.each(templates)('prints %s as it is', (file) => {
    expect(run('new', file.replace('.diag', '')).out).toBe(
      readFileSync(join(root, 'extension', 'cli', 'templates', file), 'utf8'),
    );
  });

  it('starts a case that can be checked, and does not overwrite it', () => {
    expect(run('new', 'compression', 'van14')).toEqual({
      status: 0,
      out: '',
      err: 'Wrote van14.diag. Fill it in, then: casebook check van14.diag\n',
    });
    expect(run('new', 'voltage drop', 'van 15')).toEqual({
      status: 0,
      out: '',
      err: 'Wrote van 15.diag. Fill it in, then: casebook check "van 15.diag"\n',
    });
    expect(run('check', 'van 15.diag').err).toBe('');
    writeFileSync(join(folder, 'van14.diag'), 'mine');
    expect(run('new', 'voltage', 'van14')).toEqual({
      status: 2,
      out: '',
      err: 'casebook: `van14.diag` is there already and was left alone.\n',
    });
    expect(readFileSync(join(folder, 'van14.diag'), 'utf8')).toBe('mine');
  });

  it('says where it cannot write', () => {
    expect(run('new', 'empty-case', 'gone/van14.diag').err).toBe(
      'casebook: `gone/van14.diag` cannot be written: its folder is not there.\n',
    );
  });
});

describe('casebook report', () => {
  it('writes one file of all samples, with its pictures inside', () => {
    const { status, out, err } = run(
      'report',
      join(root, 'samples'),
      '-o',
      'samples.html',
      '--title',
      'The fleet <2>',
    );
    expect([status, out]).toEqual([0, '']);
    expect(err).toMatch(/^samples\.html: \d+ cases\.\n$/);
    const html = readFileSync(join(folder, 'samples.html'), 'utf8');
    expect(html).toContain('<h1>The fleet &lt;2&gt;</h1>');
    expect(html.match(/<article /g)?.length).toBe(
      readdirSync(join(root, 'samples')).filter((name) => name.endsWith('.diag')).length,
    );
    const addresses = [...html.matchAll(/(?:href|src)="([^"]*)"/g)].map((match) => match[1] ?? '');
    expect(addresses.filter((address) => address.startsWith('data:image/')).length).toBeGreaterThan(0);
    expect(addresses.filter((address) => !/^(#|data:image\/|https:\/\/)/.test(address))).toEqual([]);
    expect(html).not.toMatch(/<script|<link|\bsrc="http/);
  });

  it('writes to the next program', () => {
    writeFileSync(join(folder, 'x.diag'), 'diag: 1\ncase: One\n');
    const { out, err } = run('report', 'x.diag', '-o', '-');
    expect(out.startsWith('<!doctype html>')).toBe(true);
    expect(err).toBe('');
  });

  it('is the same each time', () => {
    run('report', join(root, 'samples'), '-o', 'again.html', '--title', 'The fleet <2>');
    expect(readFileSync(join(folder, 'again.html'), 'utf8')).toBe(
      readFileSync(join(folder, 'samples.html'), 'utf8'),
    );
  });

  it('says where it cannot write', () => {
    expect(run('report', 'x.diag', '-o', 'gone/x.html')).toEqual({
      status: 2,
      out: '',
      err: 'casebook: `gone/x.html` cannot be written: its folder is not there.\n',
    });
    expect(existsSync(join(folder, 'gone'))).toBe(false);
  });
});

describe('casebook explain', () => {
  it('tells of a finding why it is one, and how it is put right', () => {
    expect(run('explain', 'unit-slip').out).toBe(
      [
        'unit-slip (an error): The right number in the wrong unit',
        '',
        '  Why    A barometer of 101 is a good reading in kPa and an impossible one in inHg. The number is usually right and the unit a slip.',
        '  Wrong  values:',
        '           map: 101 inHg',
        '  Right  values:',
        '           map: 101 kPa',
        '',
      ].join('\n'),
    );
  });

  it('gives a page of each thing that has the name', () => {
    const { out } = run('explain', 'vacuum');
    expect(out).toContain('vacuum(x): ');
    expect(out).toContain('vacuum: Intake manifold vacuum');
  });

  it('takes a state’s words as they come', () => {
    expect(run('explain', 'warm', 'idle').out).toBe(run('explain', 'warm idle').out);
  });

  it('prints the schema of the results', () => {
    expect(JSON.parse(run('explain', 'results').out)).toEqual(
      JSON.parse(readFileSync(join(root, 'extension', 'cli', 'results.schema.json'), 'utf8')),
    );
  });

  it.each([
    ['finding', allCodes()[0] ?? ''],
    ['function', functionNames()[0] ?? ''],
    ['signal', allSignals()[0]?.name ?? ''],
    ['unit', allUnits()[1]?.symbol ?? ''],
    ['joined unit', 'g/s'],
    ['state', engineStates[0]?.name ?? ''],
  ])('has a page of a %s', (_, name) => {
    const { status, out } = run('explain', name);
    expect(status).toBe(0);
    expect(out).toContain(name);
  });

  it.each([
    ['a kind of cell', 'suspects', 'suspects, a kind of cell: '],
    ['a key', 'expect', 'expect, a key: '],
    ['a key within another', 'ruled out if', '  In       suspects, within consider'],
    ['a word of expressions', 'between', 'between, a word of expressions: '],
    ['words that go together', 'of', 'within, of, words of expressions: '],
    ['a name in capitals', 'MAP', 'map: Intake manifold pressure'],
    ['what a signal is also called', 'Mass air flow', 'maf: Air flow at the meter'],
    ['a function in words', 'switch rate', 'switch_rate('],
    ['a key of two places', 'verify', '  In       repair; repair, within verify'],
  ])('knows %s', (_, name, says) => {
    expect(run('explain', name).out).toContain(says);
  });

  it('finds what capitals mean in themselves first', () => {
    expect(run('explain', 'MPa').out).toMatch(/^MPa: /);
    expect(run('explain', 'MAP').out).toBe(run('explain', 'map').out);
  });

  it('ends no line of a signal’s page with a comma', () => {
    for (const { name } of allSignals()) {
      const lines = pagesOf(name).flatMap(({ rows }) => rows.flatMap((row) => row.lines));
      expect(lines.filter((line) => line.endsWith(','))).toEqual([]);
    }
  });

  it('offers names that are nearly so', () => {
    expect(run('explain', 'engine sped').err).toContain('Near it: rpm');
  });
});

import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { casebookForTests } from './casebook.ts';

const { folder, run } = casebookForTests();

const head = 'diag: 1\ncase: Bad input\n';

/** What a check of one file says in between its title and the count at its end, a finding a paragraph. */
function findings(name: string): string[] {
  const { status, out, err } = run('check', name);
  expect(err).toBe('');
  expect(status).toBe(1);
  return out.split('\n\n').filter((paragraph) => /^ {2}[✗!·]/.test(paragraph));
}

function findingsOf(text: string | Uint8Array): string[] {
  writeFileSync(join(folder, 'x.diag'), text);
  return findings('x.diag');
}

describe('a file that is no text', () => {
  it('is not UTF-8', () => {
    expect(findingsOf(Buffer.from(`${head}cause: 20 \xb0F\n`, 'latin1'))).toEqual([
      [
        '  ✗ Error. The file is not UTF-8: byte B0 at position 34 belongs to no character. Save the file again with the encoding UTF-8.',
        '    line 1, column 1, not-utf8',
      ].join('\n'),
    ]);
  });

  it('is UTF-16', () => {
    expect(findingsOf(Buffer.from(`\ufeff${head}`, 'utf16le'))).toEqual([
      [
        '  ✗ Error. The file is UTF-16 (little-endian). Save it again with the encoding UTF-8.',
        '    line 1, column 1, is-utf16',
      ].join('\n'),
    ]);
  });

  it('is far too large, and is not read', () => {
    writeFileSync(join(folder, 'big.diag'), Buffer.alloc(50 * 1024 * 1024, 'x'));
    expect(findings('big.diag')).toEqual([
      [
        '  ✗ Error. The file has 50 MiB and was not read; a case may have 1 MiB. Put sampled data into a capture file beside the case.',
        '    line 1, column 1, file-too-large',
      ].join('\n'),
    ]);
  });

  it('is a folder', () => {
    mkdirSync(join(folder, 'folder.diag'));
    expect(findings('folder.diag')).toEqual([
      [
        '  ✗ Error. The file cannot be read: it is a folder. The other cases are checked all the same.',
        '    line 1, column 1, unreadable-file',
      ].join('\n'),
    ]);
  });

  it('is a link that leads nowhere', () => {
    symlinkSync('gone.diag', join(folder, 'link.diag'));
    expect(findings('link.diag')).toEqual([
      [
        '  ✗ Error. The file cannot be read: it is not there. The other cases are checked all the same.',
        '    line 1, column 1, unreadable-file',
      ].join('\n'),
    ]);
  });

  it.runIf(process.platform !== 'win32')('is a pipe into which nobody writes', () => {
    execFileSync('mkfifo', [join(folder, 'pipe.diag')]);
    expect(findings('pipe.diag')).toEqual([
      [
        '  ✗ Error. The file cannot be read: it is a device and no file. The other cases are checked all the same.',
        '    line 1, column 1, unreadable-file',
      ].join('\n'),
    ]);
  });
});

describe('a text that is no case', () => {
  it('is empty', () => {
    expect(findingsOf('')).toEqual([
      [
        '  ✗ Error. The file holds no cell. A case starts with the header `diag: 1` and a line `case: …` with its title.',
        '    line 1, column 1, empty-file',
      ].join('\n'),
    ]);
  });

  it('has no header', () => {
    expect(findingsOf('readings: Idle\nstate: warm idle\nvalues:\n  map: 10 inHg\n')).toEqual([
      [
        '  ✗ Error. The first cell must be the header: `diag: 1`, then `case: …` with the title. Put it before this cell, with a line `---` between.',
        '    1 | readings: Idle',
        '      | ^^^^^^^^^^^^^^',
        '    Offered: Put a header before it.',
        '    line 1, column 1, no-header',
      ].join('\n'),
    ]);
  });

  it('is of a later format', () => {
    expect(findingsOf('diag: 2\ncase: From the future\n')).toEqual([
      [
        '  ✗ Error. This case says format `2`; this program knows format 1. Use a newer program, or write `diag: 1` if that is what it is.',
        '    1 | diag: 2',
        '      |       ^',
        '    line 1, column 7, unknown-version',
      ].join('\n'),
    ]);
  });

  it('has a kind of cell that is none', () => {
    expect(findingsOf(`${head}---\nreading: Idle\nvalues:\n  map: 10 inHg\n`)).toEqual([
      [
        '  ✗ Error. `reading` is no kind of cell. Did you mean `readings`? A cell starts with `diag`, `note`, `readings`, `reference`, `capture`, `check`, `test`, `picture`, `chart`, `suspects`, `question`, `repair` or `caution`.',
        '    4 | reading: Idle',
        '      | ^^^^^^^',
        '    Offered: Write `readings`.',
        '    line 4, column 1, unknown-kind',
      ].join('\n'),
    ]);
  });

  it('was left in the middle of a merge', () => {
    const marker = (line: number, text: string): string =>
      [
        `  ✗ Error. The line \`${text}\` is left over from joining two versions of this file. Decide which lines are right, delete the others and all the marker lines.`,
        `${String(line).padStart(5)} | ${text}`,
        `      | ${'^'.repeat(text.length)}`,
        `    line ${line}, column 1, merge-conflict`,
      ].join('\n');
    const text = `${head}---\nreadings: Idle\nvalues:\n<<<<<<< mine\n  map: 13.1 inHg\n=======\n  map: 31.1 inHg\n>>>>>>> yours\n`;
    expect(findingsOf(text)).toEqual([
      marker(6, '<<<<<<< mine'),
      marker(8, '======='),
      marker(10, '>>>>>>> yours'),
    ]);
    expect(readFileSync(join(folder, 'x.diag'), 'utf8')).toBe(text);
  });
});

describe('names that clash', () => {
  it('stand twice', () => {
    const cell = (title: string): string => `---\nreadings: ${title}\nas: a\nvalues:\n  map: 10 inHg\n`;
    expect(findingsOf(`${head}${cell('One')}${cell('Two')}`)).toEqual([
      [
        '  ✗ Error. `a` is already the name of cell 2. Each name may stand for one thing only.',
        '   10 | as: a',
        '      |     ^',
        '    line 10, column 5, duplicate-name',
      ].join('\n'),
    ]);
  });

  it('hide a signal', () => {
    const text = `${head}---\nreadings: One\nas: a\nvalues:\n  map: 10 inHg\n---\ncheck: Sum\nlet:\n  rpm: a.map + 1 inHg\nexpect:\n  - rpm > 5 inHg\n`;
    expect(findingsOf(text)).toEqual([
      [
        '  ✗ Error. `rpm` is a signal, so it cannot be a name of your own. Choose another, such as `my_rpm`.',
        '   11 |   rpm: a.map + 1 inHg',
        '      |   ^^^',
        '    line 11, column 3, shadowed-name',
      ].join('\n'),
    ]);
  });

  it('mean something to the language that this is written in, and nothing here', () => {
    const text = `${head}---\nreadings: One\nas: __proto__\nvalues:\n  constructor: 1 V\n---\ncheck: Names\nas: toString\nlet:\n  __proto__: 1 %\n  hasOwnProperty: 2 %\nexpect:\n  - __proto__ < hasOwnProperty\n`;
    expect(findingsOf(text)).toEqual([
      [
        '  ✗ Error. `constructor` is not a signal that is known here. An own one is declared in the header under `signals`.',
        '    7 |   constructor: 1 V',
        '      |   ^^^^^^^^^^^',
        '    line 7, column 3, unknown-signal',
      ].join('\n'),
    ]);
    const { out } = run('check', 'x.diag', '--format', 'json');
    const { values, expectations } = JSON.parse(out).cases[0];
    expect(Object.keys(values)).toEqual([
      '__proto__.constructor',
      'toString.__proto__',
      'toString.hasOwnProperty',
    ]);
    expect(expectations[0].verdict).toBe('holds');
  });
});

describe('a file that would stop a careless reader', () => {
  it('names its own parts again and again', () => {
    const nine = (name: string): string => `[${Array.from({ length: 9 }, () => name).join(', ')}]`;
    const found = findingsOf(
      `diag: 1\ncase: Bomb\ntags: &a ${nine('x')}\nhistory: &b ${nine('*a')}\nobjectives: ${nine('*b')}\n`,
    );
    expect(found[0]).toBe(
      [
        '  ✗ Error. `&a` is a YAML anchor, which cases do not use. If it is meant as text, put the whole value in quotes; otherwise delete it.',
        '    3 | tags: &a [x, x, x, x, x, x, x, x, x]',
        '      |       ^^',
        '    Offered: Put the text in quotes.',
        '    line 3, column 7, anchor',
      ].join('\n'),
    );
    expect(found.map((each) => each.slice(each.lastIndexOf(',') + 2))).toEqual([
      'anchor',
      'anchor',
      ...Array.from({ length: 18 }, () => 'alias'),
    ]);
  });

  it('has 100,000 brackets inside each other', () => {
    expect(findingsOf(`${head}tags: ${'['.repeat(100_000)}${']'.repeat(100_000)}\n`)).toEqual([
      [
        '  ✗ Error. Lists and maps stand more than 32 deep inside each other here. No cell needs that: take some brackets or dashes away.',
        `    3 | …${'['.repeat(121)}…`,
        `      | ${' '.repeat(61)}^`,
        '    line 3, column 135, nested-too-deep',
      ].join('\n'),
    ]);
  });

  it('has 100,000 brackets inside each other in an expression', () => {
    const deep = `${'('.repeat(100_000)}1${')'.repeat(100_000)} > 0`;
    expect(findingsOf(`${head}---\ncheck: Deep\nexpect:\n  - ${deep}\n`)).toEqual([
      [
        '  ✗ Error. This expression has 200005 characters; at most 5000 are read. Split it: give its parts names under `let`.',
        `    6 |   - ${'('.repeat(60)}…`,
        `      |     ${'^'.repeat(61)}`,
        '    line 6, column 5, expression-too-long',
      ].join('\n'),
    ]);
  });
});

describe('a bad file among good ones', () => {
  it('does not keep them from being checked and reported', () => {
    const mixed = join(folder, 'mixed');
    mkdirSync(mixed);
    writeFileSync(join(mixed, 'a.diag'), 'diag: 1\ncase: A good case\n');
    writeFileSync(join(mixed, 'b.diag'), Uint8Array.of(0xff, 0x00, 0xff));
    symlinkSync('gone.diag', join(mixed, 'c.diag'));
    writeFileSync(join(mixed, 'd.diag'), 'diag: 1\ncase: Another good case\n');
    const { status, out } = run('check', 'mixed');
    expect(status).toBe(1);
    expect(out).toContain('A good case\nmixed/a.diag\n');
    expect(out).toContain('Another good case\nmixed/d.diag\n');
    expect(out).toMatch(/4 cases: .*; 2 errors, 0 warnings, 0 notes\.\n$/);
    expect(run('report', 'mixed', '-o', 'mixed.html').status).toBe(0);
    const html = readFileSync(join(folder, 'mixed.html'), 'utf8');
    expect(html).toContain('A good case');
    expect(html).toContain('The file cannot be read: it is not there.');
  });

  it('is not there at all', () => {
    expect(run('check', 'nowhere')).toEqual({
      status: 2,
      out: '',
      err: 'casebook: `nowhere` is not there.\n',
    });
  });

  it('is missing from a folder', () => {
    mkdirSync(join(folder, 'nothing'));
    expect(run('check', 'nothing')).toEqual({
      status: 2,
      out: '',
      err: 'casebook: There is no case (a file whose name ends in .diag) in `nothing`.\n',
    });
  });
});

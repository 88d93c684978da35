import {
  mkdirSync,
  mkdtempSync,
  realpathSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import type { Study } from '../../core/study/types.ts';
import { readFileBeside } from '../../extension/disk/fileBeside.ts';
import { said, samplesOf } from './caseFiles.ts';

const top = realpathSync(mkdtempSync(join(tmpdir(), 'casebook-captures-')));
afterAll(() => rmSync(top, { recursive: true, force: true }));
const folder = join(top, 'cases');
mkdirSync(join(folder, 'captures'), { recursive: true });

const log = 'Time (s),front (V)\n0,0.1\n1,0.8\n';
writeFileSync(join(top, 'secret.csv'), log);

/** A case whose capture names this file, with a check that does not need it. */
function studied(file: string, lines = 'channels:\n  front: {column: front (V)}\n'): Study {
  const text = `diag: 1\ncase: A\n---\ncapture: Log\nas: log\nfile: ${file}\n${lines}---\ncheck: Front\nas: front\nlet:\n  high: max(log.front)\nexpect:\n  - 1 < 2\n`;
  return checkCase(text, undefined, (name) => readFileBeside(folder, name));
}

function written(content: string | Uint8Array, lines?: string): Study {
  writeFileSync(join(folder, 'log.csv'), content);
  return studied('log.csv', lines);
}

/** What is said, at which text; the rest of the case works all the same. */
function checkSaid(study: Study, ...due: readonly string[]): void {
  expect(said(study)).toEqual(due);
  expect(study.expectations.map((each) => each.truth.verdict)).toEqual(['holds']);
}

function checkUnread(study: Study, message: string): void {
  checkSaid(study, message);
  expect(study.computed[0]?.value).toMatchObject({ kind: 'absent', status: 'cannot compute' });
  const [finding] = study.findings;
  const text = study.file.cells[1]?.raw.text ?? '';
  const { start, end } = finding?.diagnostic.span ?? { start: 0, end: 0 };
  expect(`file: ${text.slice(start, end)}`).toBe(text.split('\n').find((line) => line.startsWith('file:')));
}

describe('a capture whose file', () => {
  it('is not there', () => {
    checkUnread(
      studied('captures/gone.csv'),
      'capture-file-missing: There is no file `captures/gone.csv` in the case’s folder. Copy it there, or write its name as it is, letter for letter.',
    );
  });

  it.each([
    ['../secret.csv', '`../secret.csv` leads out of the case’s folder by `..`.'],
    ['captures/../../secret.csv', '`captures/../../secret.csv` leads out of the case’s folder by `..`.'],
    [
      '/etc/passwd',
      '`/etc/passwd` names a place on this machine, and a case reads only what lies in its own folder.',
    ],
    [
      'C:\\logs\\a.csv',
      '`C:\\logs\\a.csv` names a place on this machine, and a case reads only what lies in its own folder.',
    ],
    ['https://example.org/a.csv', '`https://example.org/a.csv` is an address, and a case fetches nothing.'],
    ['file:///etc/passwd', '`file:///etc/passwd` is an address, and a case fetches nothing.'],
  ])('is outside: %s', (file, words) => {
    checkUnread(
      studied(file),
      `capture-file-outside: ${words} Copy it beside the case, or into a folder below.`,
    );
  });

  it('is a link that leads out, or stands behind one', () => {
    symlinkSync(join(top, 'secret.csv'), join(folder, 'link.csv'));
    symlinkSync(top, join(folder, 'up'));
    checkUnread(
      studied('link.csv'),
      'capture-file-outside: `link.csv` is a link that leads out of the case’s folder. Copy it beside the case, or into a folder below.',
    );
    checkUnread(
      studied('up/secret.csv'),
      'capture-file-outside: `up/secret.csv` is a link that leads out of the case’s folder. Copy it beside the case, or into a folder below.',
    );
  });

  it('is a link that stays inside: it is read', () => {
    writeFileSync(join(folder, 'captures', 'log.csv'), log);
    symlinkSync(join(folder, 'captures', 'log.csv'), join(folder, 'inside.csv'));
    checkSaid(studied('inside.csv'));
  });

  it('is a folder', () => {
    checkUnread(studied('captures'), 'capture-file-unreadable: `captures` cannot be read: it is a folder.');
  });

  it('has two gigabytes: it is refused by its size, with the way to cut it', () => {
    const path = join(folder, 'huge.csv');
    writeFileSync(path, log);
    truncateSync(path, 2 * 1024 ** 3);
    const before = performance.now();
    checkUnread(
      studied('huge.csv'),
      'capture-file-too-large: `huge.csv` has 2048 MiB and was not read; a capture may have 256 MiB. Export a shorter stretch or fewer channels from the tool, or keep its first lines: `head -n 1000000 long.csv > short.csv`.',
    );
    expect(performance.now() - before).toBeLessThan(1000);
    rmSync(path);
  });

  it('is packed: it is unpacked', () => {
    const study = written(gzipSync(log));
    checkSaid(study);
    expect(samplesOf(study, 'log.front')).toEqual([0.1, 0.8]);
  });

  it('is packed and cut off', () => {
    const packed = gzipSync(log.repeat(100));
    checkUnread(
      written(packed.subarray(0, packed.length - 20)),
      'capture-file-unreadable: `log.csv` cannot be read: it is packed, and its packing is damaged or ends too early. Copy it again, or unpack it and name the unpacked file.',
    );
  });

  it('is packed and unpacks without end', () => {
    const bomb = gzipSync(new Uint8Array(300 * 1024 * 1024), { level: 1 });
    expect(bomb.length).toBeLessThan(4 * 1024 * 1024);
    checkUnread(
      written(bomb),
      'capture-file-too-large: `log.csv` has 256 MiB or more when it is unpacked and was not read; a capture may have 256 MiB. Export a shorter stretch or fewer channels from the tool, or keep its first lines: `head -n 1000000 long.csv > short.csv`.',
    );
  });

  it.each([
    ['is empty', '', 'it is empty'],
    ['holds nothing but blank lines', '\n  \n\n', 'it is empty'],
    [
      'is a picture',
      new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]),
      'it is no text (byte 7, in line 2, is none of a text’s). Export it from the tool as delimited text',
    ],
    [
      'holds zero bytes',
      `${log}2,0.\u0000\n`,
      'it is no text (byte 36, in line 4, is none of a text’s). Export it from the tool as delimited text',
    ],
    [
      'has a heading only',
      'Time (s),front (V)\n',
      'no line of it holds numbers in columns. It starts with `Time (s),front (V)`',
    ],
    [
      'is prose',
      'The engine was warm.\nIt ran well.\n',
      'no line of it holds numbers in columns. It starts with `The engine was warm.`',
    ],
  ])('%s', (_, content, why) => {
    checkUnread(written(content), `capture-no-samples: No samples were found in \`log.csv\`: ${why}.`);
  });
});

describe('samples that are not as they should be', () => {
  it('a channel that is not there, with the nearest', () => {
    checkSaid(
      written(log, 'channels:\n  front: fornt (V)\n'),
      'unknown-column: No column is headed `fornt (V)`. Did you mean `front (V)`? There are `Time (s)` and `front (V)`.',
    );
  });

  it('no column of time', () => {
    const study = written('n,front (V)\n1,0.1\n2,0.8\n');
    expect(study.findings[0]?.diagnostic.fixes.slice(0, 2).map((each) => each.title)).toEqual([
      'Write `time: {column: "n", unit: s}`',
      'Write `time: {column: "n", unit: ms}`',
    ]);
    checkSaid(
      written('n,front (V)\n1,0.1\n2,0.8\n'),
      'capture-no-time: No column is headed as a time. Say which one it is: `time: …`. There are `n` and `front (V)`.',
    );
  });

  it('a time that is none', () => {
    checkSaid(
      written('Time (V),front (V)\n1,0.1\n2,0.8\n'),
      'wrong-value-shape: `Time (V)` is written as `V`, and it takes a time: seconds, milliseconds, minutes.',
    );
  });

  it('one sample', () => {
    checkSaid(
      written('Time (s),front (V)\n0,0.1\n'),
      'capture-one-sample: `log.csv` has one sample: it has a value, but no rate, no crossing and no duration. Was the right stretch exported?',
    );
  });

  it('all equal', () => {
    const rows = Array.from({ length: 30 }, (_, i) => `${i},0.45\n`).join('');
    checkSaid(
      written(`Time (s),front (V)\n${rows}`),
      'channel-never-changes: `front` reads 0.45 V in all its 30 samples. A live signal moves a little: is it a substituted value, or an input that is not connected?',
    );
  });

  it('no number in a channel', () => {
    checkSaid(
      written('Time (s),other (V),front (V)\n0,1,NaN\n1,2,---\n2,3,\n'),
      'channel-without-samples: The column `front (V)` holds no number at all, so `front` has no samples. Was the channel connected and switched on?',
    );
  });

  it('a time that runs backwards', () => {
    checkSaid(
      written('Time (s),front (V)\n0,0.1\n# a remark\n2,0.8\n1.5,0.7\n'),
      'time-runs-back: In line 5 of `log.csv` the time goes back to 1.5. Put the rows in order, or cut the capture where its clock was set.',
    );
  });

  it('rows of other widths', () => {
    checkSaid(
      written('Time (s),front (V)\n0,0.1\n1,0.2,9\n2\n3,0.4\n4,0.5\n'),
      'capture-lines-refused: In `log.csv` 2 lines were not read; 3 rows were. Line 3 has 3 columns and the heading 2: `1,0.2,9`. Line 4 has 1 column and the heading 2: `2`.',
    );
  });

  it('a number beyond any, and words between the numbers', () => {
    checkSaid(
      written('Time (s),front (V)\n0,0.1\n1,1e999\n2,open\n3,Infinity\n,0.2\nend,0.3\n4,0.5\n'),
      'capture-lines-refused: In `log.csv` 2 lines and 3 values were not read; 5 rows were. Line 3: `1e999` under `front (V)` is no number. Line 4: `open` under `front (V)` is no number. Line 5: `Infinity` under `front (V)` is no number. Line 6 has no time: `,0.2`. Line 7 has no time: `end,0.3`.',
    );
  });

  it('a signal without a unit', () => {
    const study = written('Time (s),MAP\n0,30\n1,31\n', 'channels:\n  map: MAP\n');
    expect(said(study)[0]).toBe(
      'channel-without-unit: The column `MAP` gives no unit that is known here, and `map` needs one. Write `unit: kPa` or `unit: inHg`.',
    );
    expect(study.findings[0]?.diagnostic.fixes[0]?.edits[0]?.newText).toBe('{column: "MAP", unit: kPa}');
  });

  it('a format that cannot be', () => {
    checkSaid(
      written(log, 'format: {heading rows: many}\n'),
      'wrong-value-shape: `heading rows` is written as `many`, and it takes a whole number of lines.',
    );
  });

  it('text in a column of numbers on line 900,000', () => {
    const parts = ['Time (s),front (V)\n'];
    for (let i = 1; i < 1_000_000; i++)
      parts.push(i === 899_999 ? `${i / 10},ERR\n` : `${i / 10},0.${i % 1000}\n`);
    const study = written(parts.join(''));
    checkSaid(
      study,
      'capture-lines-refused: In `log.csv` 1 value was not read; 999999 rows were. Line 900000: `ERR` under `front (V)` is no number.',
    );
    const value = study.readings.find((each) => each.fullName === 'log.front')?.value;
    if (value?.kind !== 'series') throw new Error('There is no series.');
    expect(value.samples.length).toBe(999_999);
    expect(value.samples.findIndex((each) => Number.isNaN(each))).toBe(899_998);
    expect(value.samples[999_998]).toBe(0.999);
  });
});

describe('a file in pieces', () => {
  const rows = Array.from(
    { length: 70_000 },
    (_, i) => `${(i / 1000).toFixed(3)},0.${String(i % 997).padStart(3, '0')}`,
  );
  const due = Float64Array.from(rows, (row) => Number(row.split(',')[1]));
  const utf16 = (text: string): Uint8Array => Buffer.from(`\ufeff${text}`, 'utf16le');

  it.each([
    ['line feeds', '\n', (text: string) => text],
    ['both', '\r\n', (text: string) => text],
    ['carriage returns', '\r', (text: string) => text],
    ['line feeds in UTF-16', '\n', utf16],
    ['both in UTF-16', '\r\n', utf16],
  ])('is read as one: %s', (_, end, encoded) => {
    const study = written(encoded(['Time (s),front (V)', ...rows, ''].join(end)));
    const value = study.readings.find((each) => each.fullName === 'log.front')?.value;
    if (value?.kind !== 'series') throw new Error('There is no series.');
    expect(Buffer.compare(Buffer.from(value.samples.slice().buffer), Buffer.from(due.buffer))).toBe(0);
    expect(said(study).filter((each) => !each.startsWith('capture-recognised'))).toEqual([]);
  });
});

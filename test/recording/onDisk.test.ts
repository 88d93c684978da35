import { appendFileSync, mkdtempSync, rmSync, truncateSync, unlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { pieceSize } from '../../core/recording/files.ts';
import { readFileBeside } from '../../extension/disk/fileBeside.ts';
import { said, samplesOf, studied } from './caseFiles.ts';

const folder = mkdtempSync(join(tmpdir(), 'casebook-pieces-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Synthetic: a capture of more than two pieces, whose lines do not end where a piece ends. */
const rows = 170_000;
const levels = Array.from({ length: rows }, (_, i) => ((i * 7919) % 1000) / 1000);
const text = `Time (s),front (V)\n${levels.map((each, i) => `${i / 100},${each}\n`).join('')}`;
const lines = 'time: Time (s)\nchannels:\n  front: front (V)\n';

function written(bytes: string | Uint8Array): string {
  const path = join(folder, 'log.csv');
  writeFileSync(path, bytes);
  return path;
}

/** What is said but for how the file is written. */
const faults = (study: ReturnType<typeof studied>): readonly string[] =>
  said(study).filter((each) => !each.startsWith('capture-recognised'));

describe('a capture that is read from the disk in pieces', () => {
  it('is read as if it were all there', () => {
    expect(text.length).toBeGreaterThan(2 * pieceSize);
    written(text);
    const study = studied(readFileBeside(folder, 'log.csv'), lines);
    expect(faults(study)).toEqual([]);
    expect(samplesOf(study, 'log.front')).toEqual(levels);
  });

  it('is read so in UTF-16, too', () => {
    written(Buffer.from(`\ufeff${text}`, 'utf16le'));
    const study = studied(readFileBeside(folder, 'log.csv'), lines);
    expect(faults(study)).toEqual([]);
    expect(samplesOf(study, 'log.front')).toEqual(levels);
  });

  it('grew since it was found: it is read up to where it ended', () => {
    const path = written(text);
    const content = readFileBeside(folder, 'log.csv');
    appendFileSync(path, `${rows / 100},0.5\n`);
    const study = studied(content, lines);
    expect(faults(study)).toEqual([]);
    expect(samplesOf(study, 'log.front')).toEqual(levels);
  });

  const changed =
    'capture-file-unreadable: `log.csv` cannot be read: it changed while it was read. Check the case again.';

  it('was cut off since it was found: nothing of it is taken for the whole', () => {
    const path = written(text);
    const content = readFileBeside(folder, 'log.csv');
    truncateSync(path, pieceSize + 10);
    const study = studied(content, lines);
    expect(faults(study)).toEqual([changed]);
    expect(samplesOf(study, 'log.front') ?? []).toEqual([]);
  });

  it('is cut off between its heading and its samples', () => {
    const path = written(text);
    const content = readFileBeside(folder, 'log.csv');
    if (content.kind !== 'bytes') throw new Error('It is there.');
    let times = 0;
    const study = studied(
      {
        ...content,
        *pieces() {
          // The first look is at how it is written.
          if (times++ > 0) truncateSync(path, pieceSize + 10);
          return yield* content.pieces();
        },
      },
      lines,
    );
    expect(times).toBe(2);
    expect(faults(study)).toEqual([changed]);
    expect(samplesOf(study, 'log.front') ?? []).toEqual([]);
  });

  it('is gone since it was found', () => {
    const path = written(text);
    const content = readFileBeside(folder, 'log.csv');
    unlinkSync(path);
    expect(faults(studied(content, lines))).toEqual([expect.stringMatching(/^capture-file-missing: /)]);
  });
});

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Papa from 'papaparse';
import { inferSchema, initParser } from 'udsv';
import { noFormat } from '../../core/recording/layout.ts';
import { layoutOf, type Recording, recordingOf } from '../../core/recording/recording.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { readFileBeside } from '../../extension/disk/fileBeside.ts';
import { filesBeside } from '../../extension/disk/filesBeside.ts';
import { formatBytes, formatSeconds, report } from './harness.ts';

/**
 * Reading a capture of a million rows and four columns (synthetic, from a seed): the time and three channels of six
 * decimals, 38 MB. Everyone reads the file from the disk's cache.
 */
const rows = 1_000_000;
const [, , subject, folder = mkdtempSync(join(tmpdir(), 'casebook-bench-'))] = process.argv;
const file = join(folder, 'log.csv');

const readers: Readonly<Record<string, () => unknown>> = {
  casebook: () => read().columns.map((each) => each[rows - 1]),
  'a plain pass over the bytes': plainPass,
  udsv: () => {
    const text = readFileSync(file, 'utf8');
    return initParser(inferSchema(text)).typedCols(text).length;
  },
  papaparse: () => Papa.parse(readFileSync(file, 'utf8'), { header: true, dynamicTyping: true }).data.length,
  nothing: () => 0,
};

function read(): Recording {
  const content = readFileBeside(folder, 'log.csv');
  if (content.kind !== 'bytes') throw new Error(`The file cannot be read: ${content.why.is}`);
  const layout = layoutOf(content, noFormat);
  if ('is' in layout) throw new Error(`The file is not clear: ${layout.is}`);
  const wanted = [0, 1, 2, 3].map((column) => ({
    column,
    unit: undefined,
    factor: 1,
    offset: 0,
    clock: undefined,
    fromFirst: false,
  }));
  const recording = recordingOf(content, layout, wanted);
  if (recording.rows !== rows) throw new Error(`There are ${recording.rows} rows.`);
  return recording;
}

function plainPass(): number {
  const bytes = readFileSync(file);
  let sum = 0;
  for (let at = 0; at < bytes.length; at++) sum += bytes[at] ?? 0;
  return sum;
}

/** Lehmer's generator (Park and Miller, "Random number generators: good ones are hard to find", CACM 1988). */
function writeLog(): void {
  let state = 20_240_305;
  const chance = (): number => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  const lines = ['Time (s),front (V),rear (V),maf (g/s)'];
  for (let i = 0; i < rows; i++) {
    lines.push(
      `${(i / 1000).toFixed(3)},${(chance() * 100).toFixed(6)},${(chance() * 10).toFixed(6)},${(chance() * 1000).toFixed(6)}`,
    );
  }
  writeFileSync(file, `${lines.join('\n')}\n`);
}

if (subject === undefined) {
  writeLog();
  try {
    times();
    memory();
    studies();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
} else {
  readers[subject]?.();
  // Kilobytes; the most that the process ever had.
  console.log(process.resourceUsage().maxRSS * 1024);
}

/** In turns, so that a slow moment of the machine hits all. The slow ones are asked less often. */
function times(): void {
  const names = ['casebook', 'a plain pass over the bytes', 'udsv', 'papaparse'];
  const measured = names.map((name) => ({ name, rounds: [] as number[] }));
  for (let round = 0; round < 9; round++) {
    // Every other round runs backwards, so that no side always clears up after the same one.
    for (const { name, rounds } of round % 2 === 0 ? measured : measured.toReversed()) {
      globalThis.gc?.();
      const from = performance.now();
      readers[name]?.();
      // The first round is for the compiler.
      if (round > 0) rounds.push((performance.now() - from) / 1000);
    }
  }
  report(
    'A capture of a million rows and four columns, read from the file',
    measured,
    [
      { to: 'a plain pass over the bytes', atMost: 3 },
      { to: 'udsv', atLeastTheRate: 2.5 },
      { to: 'papaparse', atLeastTheRate: 12 },
    ],
    formatSeconds,
  );
}

/** Each in a fresh process; what stands above an idle one. */
function memory(): void {
  const size = readFileSync(file).length;
  const peak = (name: string): number => {
    const { stdout } = spawnSync(process.execPath, [import.meta.filename, name, folder], {
      encoding: 'utf8',
    });
    return Number(stdout);
  };
  const rounds = [0, 1, 2];
  report(
    'Peak memory above an idle process',
    [
      { name: 'casebook', rounds: rounds.map(() => peak('casebook') - peak('nothing')) },
      { name: 'the file itself', rounds: rounds.map(() => size) },
      { name: 'udsv', rounds: rounds.map(() => peak('udsv') - peak('nothing')) },
    ],
    [{ to: 'the file itself', atMost: 3 }],
    formatBytes,
  );
}

/** A case with that capture: opened, and after a keystroke elsewhere. */
function studies(): void {
  const text = `diag: 1\ncase: Long\n---\ncapture: Log\nas: log\nstate: cruise\nfile: log.csv\nchannels:\n  front: front (V)\n  rear: rear (V)\n  maf: maf (g/s)\n---\ncheck: Means\nlet:\n  front: mean(log.front)\n  rear: mean(log.rear)\n---\ncheck: Other\nexpect:\n  - 1 < 2\n`;
  const opened: number[] = [];
  const typed: number[] = [];
  for (let round = 0; round < 5; round++) {
    const files = filesBeside(folder);
    const from = performance.now();
    const first = checkCase(text, undefined, files);
    opened.push((performance.now() - from) / 1000);
    const middle = performance.now();
    const second = checkCase(text.replace('1 < 2', '1 < 3'), first, files);
    typed.push((performance.now() - middle) / 1000);
    if (second.memo.fresh !== 1) throw new Error('More was computed anew than the changed line.');
  }
  report(
    'A case with that capture',
    [
      { name: 'after a keystroke in another cell', rounds: typed },
      { name: 'opened', rounds: opened },
    ],
    [{ to: 'opened', atLeastTheRate: 50 }],
    formatSeconds,
  );
}

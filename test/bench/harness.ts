import { Bench } from 'tinybench';
import { type Bound, type Judged, judge, type Measured } from './judge.ts';

/** Work to be timed. Its result is kept, so that no compiler can drop it. */
export interface Side {
  readonly name: string;
  readonly run: () => unknown;
}

export interface Contest {
  readonly title: string;
  /** How many operations one call of a side does; costs are told for one. */
  readonly operations: number;
  /** The subject first, then peers and floors. */
  readonly sides: readonly Side[];
  readonly bounds: readonly Bound[];
}

const rounds = 7;
const millisecondsASide = 150;
/** Where results go; read at the end, so that the writes count. */
let kept: unknown;
process.on('exit', () => void kept);

/** Times all sides alternately, several rounds, prints the table, and fails the process when a bound is exceeded. */
export function contest({ title, operations, sides, bounds }: Contest): void {
  const measured = sides.map(({ name }) => ({ name, rounds: [] as number[] }));
  for (let round = 0; round < rounds; round++) {
    const bench = new Bench({ time: millisecondsASide, warmupTime: millisecondsASide / 3, throws: true });
    // Every other round runs backwards, so that no side always follows the same one.
    const order = [...sides.entries()];
    if (round % 2 === 1) order.reverse();
    for (const [, { name, run }] of order) {
      bench.add(name, () => {
        kept = run();
      });
    }
    bench.runSync();
    for (const [place, [side, { name }]] of order.entries()) {
      const result = bench.tasks[place]?.result;
      if (result === undefined || !('latency' in result)) throw new Error(`${name} was not measured.`);
      measured[side]?.rounds.push(result.latency.p50 / 1000 / operations);
    }
  }
  report(title, measured, bounds, formatSeconds);
}

/** Prints what was measured (by `contest`, or by a benchmark's own means) and fails the process when a bound is exceeded. */
export function report(
  title: string,
  measured: readonly Measured[],
  bounds: readonly Bound[],
  format: (cost: number) => string,
): void {
  const judged = judge(measured, bounds);
  console.log(`\n${title}`);
  const rows = judged.map((row) => [
    row.name,
    format(row.cost),
    row.ratio === undefined ? '' : formatRatio(row),
    row.bound,
    row.verdict,
  ]);
  const widths = [0, 1, 2, 3, 4].map((column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  for (const row of rows) {
    const cells = row.map((cell, column) =>
      column === 0 || column > 2 ? cell.padEnd(widths[column] ?? 0) : cell.padStart(widths[column] ?? 0),
    );
    console.log(`  ${cells.join('  ').trimEnd()}`);
  }
  if (judged.some(({ verdict }) => verdict === 'over')) process.exitCode = 1;
}

function formatRatio({ ratio = Number.NaN }: Judged): string {
  return ratio < 1 ? `${(1 / ratio).toPrecision(3)} × faster` : `${ratio.toPrecision(3)} × its cost`;
}

export function formatSeconds(seconds: number): string {
  for (const [unit, size] of [
    ['ns', 1e-9],
    ['µs', 1e-6],
    ['ms', 1e-3],
  ] as const) {
    if (seconds < size * 1000) return `${(seconds / size).toPrecision(3)} ${unit}`;
  }
  return `${seconds.toPrecision(3)} s`;
}

export function formatBytes(bytes: number): string {
  return bytes < 1024 * 1024 ? `${(bytes / 1024).toFixed(1)} KiB` : `${(bytes / 1024 / 1024).toFixed(2)} MiB`;
}

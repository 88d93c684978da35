import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/*
 * A second route to what the samples' scan logs say: lines and fields cut by hand, cells of operation by their rule.
 * Nothing here comes from the core.
 */

const folder = join(import.meta.dirname, '..', '..', 'samples', 'captures');

/** A line of a log: seconds, rpm, kPa, g/s, mph, percent. */
interface Line {
  readonly time: number;
  readonly rpm: number;
  readonly map: number;
  readonly maf: number;
  readonly speed: number;
  readonly trim: number;
  readonly status: number;
}

function linesOf(file: string): readonly Line[] {
  const rows = readFileSync(join(folder, file), 'utf8')
    .split(/\r?\n/)
    .filter((row) => /^\d/.test(row));
  return rows.map((row) => {
    const fields = row.includes(';') ? row.replaceAll(',', '.').split(';') : row.split(',');
    const [time, rpm, map, maf, speed, , short, long, status] = fields.map(Number);
    if (status === undefined || short === undefined || long === undefined)
      throw new Error(`A short row: ${row}`);
    return { time, rpm, map, maf, speed, trim: short + long, status } as Line;
  });
}

/** Means by cell of operation: closed loop, two seconds after it was open; below 1100 rpm and not faster than 0.6 m/s; load as kPa. */
function meansOf(file: string, of: (line: Line) => number): Readonly<Record<string, number>> {
  const cells: Record<string, number[]> = { idle: [], 'light load': [], cruise: [], 'heavy load': [] };
  let open = Number.NEGATIVE_INFINITY;
  for (const line of linesOf(file)) {
    if (line.status !== 2 || (line.rpm > 1200 && line.map < 24)) open = line.time;
    if (line.time - open < 2) continue;
    const isIdle = line.rpm < 1100 && line.speed * 0.44704 <= 0.6;
    const cell = isIdle ? 'idle' : line.map < 35 ? 'light load' : line.map < 70 ? 'cruise' : 'heavy load';
    cells[cell]?.push(of(line));
  }
  return Object.fromEntries(
    Object.entries(cells).map(([cell, list]) => [
      cell,
      list.reduce((sum, each) => sum + each, 0) / list.length,
    ]),
  );
}

/** Total trim by cell, a share; and air flow by cell, kg/s. */
export const trimsOf = (file: string) => meansOf(file, ({ trim }) => trim / 100);
export const airOf = (file: string) => meansOf(file, ({ maf }) => maf / 1000);

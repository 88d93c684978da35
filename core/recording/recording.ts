import { parseQuantity } from '../quantity/parse.ts';
import type { Unit } from '../quantity/types.ts';
import { type ClockForm, clockReader, sinceFirst } from './clock.ts';
import { delimiterMarks } from './fields.ts';
import type { FileBytes, WhyNoFile } from './files.ts';
import type { Format, Layout, Unclear } from './layout.ts';
import { numberIn } from './numbers.ts';
import { recognise } from './recognise.ts';
import type { Back, Refusal, Rows } from './rows.ts';
import { type Clocks, type Plan, scan } from './scan.ts';

/** A column that is wanted, and what its numbers are turned into: `number × factor + offset`. */
export interface Wanted {
  readonly column: number;
  /** The unit of plain numbers; a number that carries a unit of its own is converted to it. */
  readonly unit: Unit | undefined;
  readonly factor: number;
  readonly offset: number;
  /** How clock times are read: as seconds since the first of them. */
  readonly clock: ClockForm | undefined;
  /** Numbers that count from long ago, such as from 1970: they are kept since the first of them. */
  readonly fromFirst: boolean;
}

/** The rows of a file, as far as they could be read. */
export interface Recording {
  readonly rows: number;
  /** In the order in which they were wanted. NaN where there is no number. */
  readonly columns: readonly Float64Array[];
  /** The first moment, in seconds, where the time counts from it; otherwise 0. */
  readonly first: number;
  readonly refusedLines: number;
  readonly refusedFields: number;
  /** The first of them. */
  readonly refusals: readonly Refusal[];
  /** The first line whose time is earlier than the one before; where a clock passes midnight, it is not. */
  readonly back: Back | undefined;
  /** There are more rows than may be kept: the rest was not read. */
  readonly isCut: boolean;
  /** Why the host could not read to the end; there are no rows then. */
  readonly lost: WhyNoFile | undefined;
}

/** Numbers kept of one file: four channels and their time for six million samples each. */
const mostNumbers = 32 * 1024 * 1024;

/** How the file is written. The same content and format give the very same answer. */
export function layoutOf(content: FileBytes, format: Format): Layout | Unclear {
  const { layouts } = knownOf(content);
  const key = JSON.stringify(format);
  let layout = layouts.get(key);
  if (layout === undefined) {
    layout = recognise(content, format);
    keep(layouts, key, layout);
  }
  return layout;
}

/**
 * Reads the columns that are wanted, the time first: a row without a time is left out.
 * The same content and columns give the very same arrays.
 */
export function recordingOf(content: FileBytes, layout: Layout, wanted: readonly Wanted[]): Recording {
  return recordingsOf(content, layout, [wanted])[0] as Recording;
}

/** The same for several times, each the first of its columns. */
export function recordingsOf(
  content: FileBytes,
  layout: Layout,
  groups: readonly (readonly Wanted[])[],
): readonly Recording[] {
  const { recordings } = knownOf(content);
  const columns = groups.map((wanted) => wanted.map((each) => ({ ...each, unit: each.unit?.symbol })));
  const key = JSON.stringify([layout.delimiter, layout.decimal, layout.firstLine, columns]);
  let all = recordings.get(key);
  if (all === undefined) {
    const numbers = groups.reduce((sum, wanted) => sum + new Set(wanted.map((each) => each.column)).size, 0);
    all = groups.map((wanted, i) => {
      const clocks = groups.length === 1 ? 'one' : i === 0 ? 'first of several' : 'later of several';
      return read(content, layout, wanted, clocks, Math.floor(mostNumbers / numbers));
    });
    keep(recordings, key, all);
  }
  return all;
}

function read(
  content: FileBytes,
  layout: Layout,
  wanted: readonly Wanted[],
  clocks: Clocks,
  most: number,
): Recording {
  const { decimal } = layout;
  // A column may be wanted twice: it is scanned once.
  const distinct = [...new Set(wanted.map((each) => each.column))];
  const about = new Map(wanted.map((each) => [each.column, each]));
  const [time] = wanted;
  const planWith = (hasQuotes: boolean, clock: ReturnType<typeof clockReader> | undefined): Plan => ({
    delimiter: delimiterMarks[layout.delimiter].charCodeAt(0),
    decimal: decimal === 'comma' ? 44 : 46,
    width: layout.headings.length,
    firstLine: layout.firstLine,
    columns: distinct,
    turnsBack: time?.clock === undefined ? Number.POSITIVE_INFINITY : time.clock.turn / 2,
    clocks,
    isClock: clock !== undefined,
    hasQuotes,
    odd: (text, column) => {
      const { unit } = about.get(column) ?? {};
      if (clock !== undefined && column === time?.column)
        return clock(text) ?? (numberIn(text, decimal) === undefined ? undefined : Number.NaN);
      return numberIn(text, decimal) ?? withUnit(decimal === 'comma' ? text.replace(',', '.') : text, unit);
    },
  });
  const scanned = (hasQuotes: boolean): Rows =>
    scan(content, planWith(hasQuotes, time?.clock && clockReader(time.clock)), most);
  let rows = scanned(layout.hasQuotes);
  // The end of a field in quotes that goes over several lines is no row.
  if (rows.hasOddQuote && !layout.hasQuotes) rows = scanned(true);
  // Half a file would look like a short drive.
  if (rows.lost !== undefined) rows.count = 0;
  rows.leaveOutPlainTimes();
  const kept = rows.columns();
  const moments = kept[0];
  const first = moments === undefined || time === undefined ? 0 : countedFrom(moments, time);
  const used = new Set<Float64Array>();
  const columns = wanted.map(({ column, factor, offset }) => {
    const raw = kept[distinct.indexOf(column)] ?? new Float64Array(0);
    if (factor === 1 && offset === 0) return raw;
    const isShared = used.has(raw) || wanted.filter((each) => each.column === column).length > 1;
    used.add(raw);
    return scaled(raw, isShared ? new Float64Array(raw.length) : raw, factor, offset);
  });
  return {
    rows: rows.count,
    columns,
    first,
    refusedLines: rows.refusedLines,
    refusedFields: rows.refusedFields,
    refusals: rows.refusals,
    back: rows.back,
    isCut: rows.isFull,
    lost: rows.lost,
  };
}

/** Counts a time from its first moment, in place, where it is a clock's or counts from long ago; gives that moment in seconds. */
function countedFrom(moments: Float64Array, { clock, fromFirst, factor }: Wanted): number {
  if (clock !== undefined) return sinceFirst(moments, clock.turn);
  const first = moments[0];
  if (!fromFirst || first === undefined) return 0;
  // What such a number shows ends with the sixteen digits of a double; so does the difference.
  const grains = 10 ** (16 - Math.ceil(Math.log10(Math.abs(first))));
  for (let i = 0; i < moments.length; i++)
    moments[i] = Math.round(((moments[i] as number) - first) * grains) / grains;
  return first * factor;
}

function scaled(from: Float64Array, to: Float64Array, factor: number, offset: number): Float64Array {
  if (offset === 0) for (let i = 0; i < from.length; i++) to[i] = (from[i] as number) * factor;
  else for (let i = 0; i < from.length; i++) to[i] = (from[i] as number) * factor + offset;
  return to;
}

/** `12.5 V` in a column of volts; undefined where the unit is another dimension's. */
function withUnit(text: string, unit: Unit | undefined): number | undefined {
  if (unit === undefined) return undefined;
  const { value } = parseQuantity(text);
  if (value === undefined || value.unit.dimension !== unit.dimension) return undefined;
  if (value.unit === unit) return value.value;
  return (value.value * value.unit.factor + value.unit.offset - unit.offset) / unit.factor;
}

interface Known {
  readonly layouts: Map<string, Layout | Unclear>;
  readonly recordings: Map<string, readonly Recording[]>;
}

/** What was read from a content, as long as its host keeps that. */
const known = new WeakMap<FileBytes, Known>();

/** Answers kept for one content: two cells may read it, each before and after a keystroke. */
const mostKept = 4;

function knownOf(content: FileBytes): Known {
  let of = known.get(content);
  if (of === undefined) {
    of = { layouts: new Map(), recordings: new Map() };
    known.set(content, of);
  }
  return of;
}

function keep<T>(map: Map<string, T>, key: string, value: T): void {
  const oldest = map.keys().next().value;
  if (map.size >= mostKept && oldest !== undefined) map.delete(oldest);
  map.set(key, value);
}

import { type Body, type Cut, isNumber } from './body.ts';
import { type Delimiter, fieldsOf, namesApart } from './fields.ts';
import type { Head } from './head.ts';
import { type Decimal, isMissing } from './numbers.ts';
import { unitIn } from './unitWords.ts';

/** The heading of a file. */
export interface Heading {
  /** What stands above each column; undefined where nothing does. */
  readonly written: readonly string[] | undefined;
  /** How many of them stand there; 0 without a row of them. */
  readonly named: number;
  readonly units: readonly string[] | undefined;
  readonly rows: number;
  /** The line that it starts at. */
  readonly from: number;
  /** The first row below it, as an index. */
  readonly below: number;
}

/** Rows whose numbers are broken may stand between the heading and the first sound one. */
const mostBroken = 20;
const mostRows = 3;

/** The heading above the samples that begin at `start`: one row of names, or two, and perhaps one of units. */
export function headingAbove(
  cut: readonly Cut[],
  start: number,
  body: Body,
  delimiter: Delimiter,
  decimal: Decimal,
  head: Head,
  said: number | undefined,
): Heading {
  const { width } = body;
  const hasNumber = (at: number): boolean =>
    cut[at]?.fields.some((each) => !isMissing(each) && isNumber(each, decimal)) === true;
  const below = said ?? firstBelow(cut, start, body, delimiter, hasNumber);
  const rows: Row[] = [];
  for (let at = below - 1; at >= 0 && rows.length < (said ?? mostRows); at--) {
    const row = fitted(cut[at], width, delimiter, said !== undefined);
    const isOther =
      said === undefined && hasNumber(at) && !(at === below - 1 && isLabels(cut, at, hasNumber));
    if (row === undefined || isOther) break;
    rows.unshift(row);
  }
  const firstLine = cut[below]?.line.number ?? 1;
  const last = rows.at(-1);
  if (last === undefined) {
    const written = inRemark(head, firstLine, width, delimiter);
    return { written, named: 0, units: undefined, rows: 0, from: firstLine, below };
  }
  const units = rows.length > 1 && isUnits(last.fields) ? last.fields : undefined;
  const names = units === undefined ? rows : rows.slice(0, -1);
  const low = names.at(-1) ?? last;
  const high = names.at(-2);
  // Two lines of names are one heading where the lower alone does not tell the columns apart.
  const isTwo = high !== undefined && (said !== undefined || !tellsApart(low.fields));
  const written = isTwo
    ? carried(high.fields).map((each, i) => `${each} ${low.fields[i] ?? ''}`.trim())
    : low.fields;
  const used = (units === undefined ? 0 : 1) + (isTwo ? 2 : 1);
  const from = rows[rows.length - used]?.line ?? firstLine;
  return { written, named: low.names, units, rows: used, from, below };
}

/**
 * The first row below the heading. Rows with numbers above the first sound one are samples that are broken, where names
 * stand above them.
 */
function firstBelow(
  cut: readonly Cut[],
  start: number,
  { width, numeric }: Body,
  delimiter: Delimiter,
  hasNumber: (at: number) => boolean,
): number {
  for (let at = start - 1; at >= 0 && at >= start - 1 - mostBroken; at--) {
    const fields = cut[at]?.fields ?? [];
    if (!hasNumber(at)) return fitted(cut[at], width, delimiter, false) === undefined ? start : at + 1;
    // A name and a number are of the preamble.
    if (!/^[-+.\d]/.test(fields[numeric.indexOf(true)] ?? '')) break;
  }
  return start;
}

/** Columns may be named by whole numbers, as cylinders are: `Time, 1, 2, 3`. Several lines of that sort are the tool's preamble. */
function isLabels(cut: readonly Cut[], at: number, hasNumber: (at: number) => boolean): boolean {
  const fields = cut[at]?.fields ?? [];
  return !hasNumber(at - 1) && fields.every((each) => !/^[-+.\d]/.test(each) || /^\d{1,2}$/.test(each));
}

interface Row {
  readonly line: number;
  readonly fields: readonly string[];
  /** Fields that stand there, before any is added. */
  readonly names: number;
}

/**
 * A row of the heading, as wide as the samples: it may end early, have names over some columns only, or end with more
 * delimiters than the samples do. Columns of fixed width have names of several words.
 */
function fitted(row: Cut | undefined, width: number, delimiter: Delimiter, isSaid: boolean): Row | undefined {
  if (row === undefined) return undefined;
  let { fields } = row;
  if (delimiter === 'space' && fields.length !== width) {
    const apart = namesApart(row.line.text);
    if (apart.length === width) fields = apart;
  }
  const line = row.line.number;
  if (fields.length === width) return { line, fields, names: width };
  if (fields.length > width) {
    const isSame = fields.slice(width).every((each) => each === '');
    return isSame || isSaid ? { line, fields: fields.slice(0, width), names: width } : undefined;
  }
  if (!isSaid && fields.length < Math.max(2, Math.ceil(width / 2))) return undefined;
  const more = Array.from({ length: width - fields.length }, () => '');
  return { line, fields: [...fields, ...more], names: fields.length };
}

/** A group's name stands over its first column and holds for those to its right that have none. */
function carried(names: readonly string[]): readonly string[] {
  let name = '';
  return names.map((each) => {
    if (each !== '') name = each;
    return name;
  });
}

const tellsApart = (names: readonly string[]): boolean =>
  new Set(names).size === names.length && names.every((each) => each !== '');

/** Half of the fields at least are units, bare or in brackets, and the others as short as one, or a form such as `hh:mm:ss`. */
function isUnits(fields: readonly string[]): boolean {
  const written = fields.filter((each) => !isMissing(each));
  const units = written.filter((each) => unitIn(each) !== undefined || /^\W?hh?:mm/i.test(each));
  return units.length > 0 && units.length * 2 >= written.length && written.every((each) => each.length <= 12);
}

/** Some tools write the heading as the last remark above the samples: `# time, front`. */
function inRemark(
  { remarks }: Head,
  firstLine: number,
  width: number,
  delimiter: Delimiter,
): readonly string[] | undefined {
  const last = remarks.filter(({ number }) => number < firstLine).at(-1);
  const fields = last === undefined ? [] : fieldsOf(last.text.replace(/^(?:#+|\/\/+)\s*/, ''), delimiter);
  const fits = fields.length === width && fields.every((each) => each !== '' && !/^[-+]?\d/.test(each));
  return fits ? fields : undefined;
}

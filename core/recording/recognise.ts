import { parseQuantity } from '../quantity/parse.ts';
import { clockSeconds } from './clock.ts';
import { type Delimiter, delimiterMarks, fieldsOf } from './fields.ts';
import type { FileBytes } from './files.ts';
import { type Head, type HeadLine, headOf } from './head.ts';
import type { Format, Layout, Unclear } from './layout.ts';
import { type Decimal, isMissing, numberIn } from './numbers.ts';
import { unitIn } from './unitWords.ts';

const delimiters = ['semicolon', 'tab', 'comma', 'space'] as const;
const decimals = ['point', 'comma'] as const;

/**
 * How a file is written, from its first lines and what the author says about it. Every pair of delimiter and decimal
 * mark is tried; those under which the most fields are numbers are kept. Where two of them read different numbers,
 * nothing is chosen.
 */
export function recognise(content: FileBytes, format: Format): Layout | Unclear {
  const head = headOf(content);
  if ('lost' in head) return { is: 'lost', why: head.lost };
  if ('binaryAt' in head) return { is: 'binary', offset: head.binaryAt };
  const first = head.lines[0];
  if (first === undefined) return { is: 'empty' };
  const said = delimiters.find((each) => delimiterMarks[each] === head.delimiter);
  const tried: Tried[] = [];
  for (const delimiter of one(format.delimiter ?? said, delimiters)) {
    for (const decimal of one(format.decimal, decimals)) {
      const found = layoutWith(head, delimiter, decimal, format);
      if (found !== undefined) tried.push(found);
    }
  }
  const best = Math.max(0, ...tried.map((each) => each.numbers));
  const distinct: Tried[] = [];
  for (const each of tried) {
    if (each.numbers < best || distinct.some((other) => other.reads === each.reads)) continue;
    distinct.push(each);
  }
  // One column holds no time. It is a reading only where nothing speaks for the other one.
  const wide = distinct.filter(({ layout }) => layout.headings.length > 1);
  const sure = wide.length === 1 && wide[0]?.hasHeading === true ? wide : distinct;
  const [only, other] = sure;
  if (only === undefined) return { is: 'no samples', first: first.text.slice(0, 80) };
  if (other === undefined) {
    return format.delimiter === undefined && said === undefined && mayBeDecimals(only)
      ? {
          is: 'more columns than names',
          line: lineOf(head, only.layout),
          reading: only.layout,
          names: only.named,
        }
      : only.layout;
  }
  return { is: 'two readings', readings: sure.map((each) => each.layout), line: lineOf(head, only.layout) };
}

/** The first line of samples as it stands there. */
function lineOf(head: Head, { sample, firstLine }: Layout): string {
  const line = head.lines.find(({ number }) => number >= firstLine)?.text;
  return line ?? (sample.find((fields) => fields.some((each) => /\d/.test(each))) ?? []).join(' ');
}

/** Whether commas that part whole numbers into more columns than have names may be decimal marks: `0,5,0,12` under two names. */
function mayBeDecimals({ layout, named }: Tried): boolean {
  const { delimiter, headings, sample } = layout;
  if (delimiter !== 'comma' || named === 0 || headings.length <= named || headings.length > 2 * named)
    return false;
  return sample.every((fields) => fields.every((each) => /^\s*[-+]?\d*\s*$/.test(each)));
}

const one = <T>(said: T | undefined, all: readonly T[]): readonly T[] => (said === undefined ? all : [said]);

interface Tried {
  readonly layout: Layout;
  /** The share of fields that are numbers or clock times, of those that hold anything. */
  readonly numbers: number;
  readonly hasHeading: boolean;
  /** Columns over which its last row reaches; 0 without one. */
  readonly named: number;
  /** The numbers of the first rows: two ways of reading that read the same are one. */
  readonly reads: string;
}

const sampleRows = 50;

function layoutWith(head: Head, delimiter: Delimiter, decimal: Decimal, format: Format): Tried | undefined {
  const skip = format.skip ?? 0;
  const cut = withoutLastEmpty(
    head.lines
      .filter(({ number }) => number > skip)
      .map((line) => ({ line, fields: fieldsOf(line.text, delimiter) })),
  );
  const width = usualWidth(cut.map((each) => each.fields).filter((each) => isSamples(each, decimal)));
  if (width === undefined) return undefined;
  const start = startOf(cut, width, decimal, format.headingRows);
  if (start < 0) return undefined;
  const { headings, units, rows, named, from } = headingAbove(cut, start, width, delimiter, head, format);
  const firstLine = cut[start]?.line.number ?? 1;
  const all = cut.slice(start, start + sampleRows).map((each) => each.fields);
  const sample = all.filter((each) => each.length === width);
  let held = 0;
  let numbers = 0;
  const reads: (number | string | undefined)[][] = [];
  for (const fields of all) {
    for (const each of fields) {
      if (isMissing(each)) continue;
      held++;
      if (isNumber(each, decimal)) numbers++;
    }
    reads.push(fields.map((each) => numberIn(each, decimal) ?? (isNumber(each, decimal) ? each : undefined)));
  }
  const layout: Layout = {
    encoding: head.encoding,
    delimiter,
    decimal,
    headings: headings ?? Array.from({ length: width }, (_, i) => `column ${i + 1}`),
    units,
    headingRows: rows,
    // Remarks and blank lines are passed over anyway.
    skipped: cut.some(({ line }) => line.number < from) || skip > 0 ? from - 1 : 0,
    firstLine,
    sample,
  };
  return {
    layout,
    numbers: held === 0 ? 0 : numbers / held,
    hasHeading: headings !== undefined,
    named,
    reads: JSON.stringify(reads),
  };
}

interface Cut {
  readonly line: HeadLine;
  readonly fields: readonly string[];
}

/** Some tools end each line with a delimiter: what stands behind it is no column. */
function withoutLastEmpty(cut: readonly Cut[]): readonly Cut[] {
  const wide = cut.filter(({ fields }) => fields.length > 1);
  if (wide.length === 0 || !wide.every(({ fields }) => fields.at(-1) === '')) return cut;
  return cut.map(({ line, fields }) => ({ line, fields: fields.length > 1 ? fields.slice(0, -1) : fields }));
}

/** A number, a clock time, or a number with its unit. */
export function isNumber(text: string, decimal: Decimal): boolean {
  if (numberIn(text, decimal) !== undefined) return true;
  return clockSeconds(text) !== undefined || isQuantity(text, decimal);
}

/** `12.5 V`: some tools write the unit at every number. */
function isQuantity(text: string, decimal: Decimal): boolean {
  if (!/^[-+]?[\d.,]+\s*[^\d\s.,]/.test(text)) return false;
  return parseQuantity(decimal === 'comma' ? text.replace(',', '.') : text).value !== undefined;
}

/** Samples: as many numbers as words, and at least one. */
function isSamples(fields: readonly string[], decimal: Decimal): boolean {
  let numbers = 0;
  let words = 0;
  for (const each of fields) {
    if (isMissing(each)) continue;
    if (isNumber(each, decimal)) numbers++;
    else words++;
  }
  return numbers > 0 && numbers >= words;
}

/** The width that most lines of samples have; of two that are as usual, the later one's: above stands the tool's preamble. */
function usualWidth(rows: readonly (readonly string[])[]): number | undefined {
  const count = new Map<number, number>();
  for (const { length } of rows) count.set(length, (count.get(length) ?? 0) + 1);
  let best: number | undefined;
  for (const { length } of rows) {
    if (best === undefined || (count.get(length) ?? 0) >= (count.get(best) ?? 0)) best = length;
  }
  return best;
}

/**
 * The first line of samples that is followed by another or by nothing, or that is all numbers below a line of names;
 * -1 when there is none. A single line of a name and a number belongs to the tool's preamble.
 */
function startOf(
  cut: readonly Cut[],
  width: number,
  decimal: Decimal,
  headingRows: number | undefined,
): number {
  if (headingRows !== undefined) return headingRows < cut.length ? headingRows : -1;
  const fits = (each: Cut | undefined): boolean =>
    each?.fields.length === width && isSamples(each.fields, decimal);
  const isBelowNames = (at: number): boolean =>
    cut[at - 1]?.fields.length === width &&
    !fits(cut[at - 1]) &&
    cut[at]?.fields.every((each) => isMissing(each) || isNumber(each, decimal)) === true;
  const sure = cut.findIndex(
    (each, at) => fits(each) && (cut[at + 1] === undefined || fits(cut[at + 1]) || isBelowNames(at)),
  );
  return sure >= 0 ? sure : cut.findIndex(fits);
}

interface HeadingRows {
  readonly headings: readonly string[] | undefined;
  readonly units: readonly string[] | undefined;
  readonly rows: number;
  readonly named: number;
  /** The line that it starts at. */
  readonly from: number;
}

function headingAbove(
  cut: readonly Cut[],
  start: number,
  width: number,
  delimiter: Delimiter,
  head: Head,
  format: Format,
): HeadingRows {
  const firstLine = cut[start]?.line.number ?? 1;
  const most = format.headingRows ?? 3;
  const above: Cut[] = [];
  for (let at = start - 1; at >= 0 && above.length < most; at--) {
    const each = cut[at];
    if (each === undefined || padded(each.fields, width) === undefined) break;
    above.unshift(each);
  }
  const rows = above.map((each) => padded(each.fields, width) ?? []);
  const last = rows.at(-1);
  if (last === undefined)
    return { ...inRemark(head, firstLine, width, delimiter), rows: 0, named: 0, from: firstLine };
  const units = rows.length > 1 && isUnits(last) ? last : undefined;
  const names = units === undefined ? rows : rows.slice(0, -1);
  const low = names.at(-1) ?? [];
  const high = names.at(-2);
  // Two lines of names are one heading where the lower alone does not tell the columns apart.
  const isTwo = high !== undefined && (format.headingRows !== undefined || !tellsApart(low));
  const headings = isTwo ? carried(high).map((each, i) => `${each} ${low[i] ?? ''}`.trim()) : low;
  const used = (units === undefined ? 0 : 1) + (isTwo ? 2 : 1);
  const from = above[above.length - used]?.line.number ?? firstLine;
  return { headings, units, rows: used, named: above.at(-1)?.fields.length ?? 0, from };
}

/** A row of the heading may end early, and may have names over some columns only. */
function padded(fields: readonly string[], width: number): readonly string[] | undefined {
  if (fields.length > width || fields.length < Math.max(2, Math.ceil(width / 2))) {
    return fields.length === width ? fields : undefined;
  }
  return [...fields, ...Array.from({ length: width - fields.length }, () => '')];
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
): Pick<HeadingRows, 'headings' | 'units'> {
  const last = remarks.filter(({ number }) => number < firstLine).at(-1);
  const fields = last === undefined ? [] : fieldsOf(last.text.replace(/^(?:#+|\/\/+)\s*/, ''), delimiter);
  const fits = fields.length === width && fields.every((each) => each !== '' && !/^[-+]?\d/.test(each));
  return { headings: fits ? fields : undefined, units: undefined };
}

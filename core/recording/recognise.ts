import { type Cut, isNumber, samplesIn } from './body.ts';
import { type Delimiter, delimiterMarks, fieldsOf } from './fields.ts';
import type { FileBytes } from './files.ts';
import { type Head, headOf } from './head.ts';
import { headingAbove } from './heading.ts';
import type { Format, Layout, Unclear } from './layout.ts';
import { type Decimal, isMissing, numberIn } from './numbers.ts';

const delimiters = ['semicolon', 'tab', 'comma', 'pipe', 'space'] as const;
const decimals = ['point', 'comma'] as const;

/**
 * How a file is written, from its first lines and what the author says about it. Every pair of delimiter and decimal
 * mark is tried; those under which the most is numbers are kept. Where two of them read different numbers,
 * nothing is chosen.
 */
export function recognise(content: FileBytes, format: Format): Layout | Unclear {
  const head = headOf(content);
  if ('lost' in head) return { is: 'lost', why: head.lost };
  if ('binaryAt' in head) return { is: 'binary', offset: head.binaryAt, line: head.line, what: head.what };
  const first = head.lines[0];
  if (first === undefined) return { is: 'empty' };
  const said = delimiters.find((each) => delimiterMarks[each] === head.delimiter);
  const tried: Tried[] = [];
  for (const delimiter of one(format.delimiter ?? said, delimiters)) {
    if (format.delimiter === undefined && !isWorthATry(delimiter, head, tried)) continue;
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
  const sure = withoutUnlikely(distinct);
  const [only, other] = sure;
  if (only === undefined) return { is: 'no samples', first: first.text.slice(0, 80), what: head.what };
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

/**
 * A mark that stands nowhere leaves one column, as any other does. Blanks part columns only where no other mark parts them as
 * well.
 */
function isWorthATry(delimiter: Delimiter, { lines }: Head, tried: readonly Tried[]): boolean {
  if (delimiter === 'semicolon') return true;
  if (delimiter === 'space' && tried.some((each) => each.numbers === 1 && each.layout.headings.length > 1))
    return false;
  const mark = delimiterMarks[delimiter];
  return lines.some(({ text }) => text.includes(mark) || (delimiter === 'space' && text.includes('\t')));
}

const one = <T>(said: T | undefined, all: readonly T[]): readonly T[] => (said === undefined ? all : [said]);

/**
 * One column holds no time: it is a reading only where nothing speaks for the other one. So are columns parted by
 * blanks, where another mark parts them as well.
 */
function withoutUnlikely(readings: readonly Tried[]): readonly Tried[] {
  const wide = readings.filter(({ layout }) => layout.headings.length > 1);
  const marked = wide.filter(({ layout }) => layout.delimiter !== 'space');
  const likely = marked.length > 0 ? marked : wide;
  return likely.length === 1 && likely[0]?.hasHeading === true ? likely : readings;
}

interface Tried {
  readonly layout: Layout;
  /** The share of what is written that stands in fields that are numbers or clock times. */
  readonly numbers: number;
  readonly hasHeading: boolean;
  /** Columns that its last row names; 0 without one. */
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
      .map((line) => ({ line, fields: fieldsOf(line.text, delimiter) }))
      // A line of nothing but delimiters is blank.
      .filter(({ fields }) => fields.some((each) => each !== '')),
  );
  const body = samplesIn(cut, decimal, head.isWhole);
  if (body === undefined) return undefined;
  const { width } = body;
  const start = format.headingRows ?? body.start;
  if (start >= cut.length) return undefined;
  const heading = headingAbove(cut, start, body, delimiter, decimal, head, format.headingRows);
  const firstLine = cut[heading.below]?.line.number ?? 1;
  const all = cut.slice(heading.below, heading.below + sampleRows).map((each) => each.fields);
  const { written, units, rows, from } = heading;
  const named = (written ?? []).map((each, i) => (each === '' ? `column ${i + 1}` : each));
  const names = written === undefined ? Array.from({ length: width }, (_, i) => `column ${i + 1}`) : named;
  const layout: Layout = {
    encoding: head.encoding,
    delimiter,
    decimal,
    headings: toldApart(names),
    written: names,
    units,
    headingRows: rows,
    // Remarks and blank lines are passed over anyway.
    skipped: cut.some(({ line }) => line.number < from) || skip > 0 ? from - 1 : 0,
    firstLine,
    hasQuotes: cut.slice(heading.below).some(({ line }) => line.text.includes('"')),
    sample: all.filter((each) => each.length === width),
  };
  return {
    layout,
    hasHeading: written !== undefined,
    named: heading.named,
    ...shareOfNumbers(all, decimal),
  };
}

function shareOfNumbers(
  rows: readonly (readonly string[])[],
  decimal: Decimal,
): Pick<Tried, 'numbers' | 'reads'> {
  let held = 0;
  let numbers = 0;
  const reads: (number | string | undefined)[][] = [];
  for (const fields of rows) {
    const row: (number | string | undefined)[] = [];
    for (const each of fields) {
      const isWritten = !isMissing(each);
      const isRead = isNumber(each, decimal);
      // Marks count for neither side: they part columns in the one reading and digits in the other.
      const length = isWritten ? each.replace(/[\s.,;|"]/g, '').length : 0;
      held += length;
      if (isRead) numbers += length;
      row.push(numberIn(each, decimal) ?? (isRead ? each : undefined));
    }
    reads.push(row);
  }
  return { numbers: held === 0 ? 0 : numbers / held, reads: JSON.stringify(reads) };
}

/** Some tools end each line with a delimiter: what stands behind it is no column. */
function withoutLastEmpty(cut: readonly Cut[]): readonly Cut[] {
  const wide = cut.filter(({ fields }) => fields.length > 1);
  if (wide.length === 0 || !wide.every(({ fields }) => fields.at(-1) === '')) return cut;
  return cut.map(({ line, fields }) => ({ line, fields: fields.length > 1 ? fields.slice(0, -1) : fields }));
}

/** Headings that stand twice are counted: `O2 #1`, `O2 #2`. */
function toldApart(names: readonly string[]): readonly string[] {
  const seen = new Map<string, number>();
  return names.map((name, at) => {
    if (names.indexOf(name) === at && !names.includes(name, at + 1)) return name;
    const count = (seen.get(name) ?? 0) + 1;
    seen.set(name, count);
    return `${name} #${count}`;
  });
}

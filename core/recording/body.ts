import { parseQuantity } from '../quantity/parse.ts';
import { isClockTime } from './clock.ts';
import type { HeadLine } from './head.ts';
import { type Decimal, isMissing, numberIn } from './numbers.ts';
import { unitIn } from './unitWords.ts';

/** A line of the file and its fields. */
export interface Cut {
  readonly line: HeadLine;
  readonly fields: readonly string[];
}

/** Where the samples of a file stand. */
export interface Body {
  /** Fields of a row. */
  readonly width: number;
  /** Whether a column holds numbers. */
  readonly numeric: readonly boolean[];
  /** The first row that is as it should be, as an index. */
  readonly start: number;
}

/** A number, a clock time, or a number with its unit. */
export function isNumber(text: string, decimal: Decimal): boolean {
  if (numberIn(text, decimal) !== undefined) return true;
  return isClockTime(text) || isQuantity(text, decimal);
}

/** `12.5 V`: some tools write the unit at every number. */
function isQuantity(text: string, decimal: Decimal): boolean {
  // `1/min` is a unit.
  if (!/^[-+]?[\d.,]+\s*[^\d\s.,]/.test(text) || unitIn(text) !== undefined) return false;
  return parseQuantity(decimal === 'comma' ? text.replace(',', '.') : text).value !== undefined;
}

type Sort = 'number' | 'word' | 'nothing';

function sortOf(text: string, decimal: Decimal): Sort {
  if (isMissing(text)) return 'nothing';
  return isNumber(text, decimal) ? 'number' : 'word';
}

/** At the end of what is looked at of a long file, its rows are samples and nothing else. */
const last = 40;

/**
 * Finds the samples among the lines. Their width is the one under which the most numbers stand, names above them
 * counting as much again; a column is one of numbers where no more words than numbers stand in it. The first row is the first
 * of that width with a number and no word in a column of numbers, and not alone: a single line like that belongs to the
 * tool's preamble.
 */
export function samplesIn(cut: readonly Cut[], decimal: Decimal, isWhole: boolean): Body | undefined {
  const rows = cut.map(({ fields }) => fields.map((each) => sortOf(each, decimal)));
  const judged = isWhole ? rows : rows.slice(-last);
  const width = widthOf(judged);
  if (width === undefined) return undefined;
  const numeric = Array.from({ length: width }, (_, at) => {
    let balance = 0;
    let numbers = 0;
    for (const row of judged) {
      if (row.length !== width) continue;
      if (row[at] === 'number') numbers++;
      balance += row[at] === 'number' ? 1 : row[at] === 'word' ? -1 : 0;
    }
    return numbers > 0 && balance >= 0;
  });
  const wordsIn = (row: readonly Sort[] | undefined, sort: Sort): number =>
    row?.length === width ? row.filter((each, at) => each === sort && numeric[at] === true).length : 0;
  const isClean = (row: readonly Sort[] | undefined): boolean =>
    wordsIn(row, 'number') > 0 && wordsIn(row, 'word') === 0;
  const fits = (row: readonly Sort[] | undefined): boolean =>
    wordsIn(row, 'number') > 0 && wordsIn(row, 'number') >= wordsIn(row, 'word');
  const isNames = (row: readonly Sort[] | undefined): boolean =>
    row?.length === width && row.includes('word') && !row.includes('number');
  const sure = rows.findIndex(
    (row, at) => isClean(row) && (rows[at + 1] === undefined || fits(rows[at + 1]) || isNames(rows[at - 1])),
  );
  const start = sure >= 0 ? sure : rows.findIndex(isClean);
  return start < 0 ? undefined : { width, numeric, start };
}

/** Of two widths with as much for them, the later one's: above stands the tool's preamble. */
function widthOf(rows: readonly (readonly Sort[])[]): number | undefined {
  const score = new Map<number, number>();
  const named = new Set<number>();
  for (const [at, row] of rows.entries()) {
    const numbers = row.filter((each) => each === 'number').length;
    if (numbers > 0) score.set(row.length, (score.get(row.length) ?? 0) + numbers);
    const below = rows[at + 1];
    if (numbers === 0 && row.length > 1 && below !== undefined && row.every((each) => each === 'word'))
      named.add(row.length);
  }
  let best: number | undefined;
  let most = 0;
  for (const { length } of rows) {
    const reached = (score.get(length) ?? 0) * (named.has(length) ? 2 : 1);
    if (reached < most || reached === 0) continue;
    best = length;
    most = reached;
  }
  return best;
}
